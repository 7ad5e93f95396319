import { english, type Words } from './words.ts';

const ACCENTED: Readonly<Record<string, string>> = {
  a: 'á',
  e: 'é',
  i: 'í',
  o: 'ó',
  u: 'ú',
  y: 'ý',
  c: 'ç',
  n: 'ñ',
  s: 'š',
  z: 'ž',
  A: 'Á',
  E: 'É',
  I: 'Í',
  O: 'Ó',
  U: 'Ú',
  Y: 'Ý',
  C: 'Ç',
  N: 'Ñ',
  S: 'Š',
  Z: 'Ž',
}; // prettier-ignore

/** Part by which text grows, as translations from English commonly do (common practice, no source). */
const GROWTH = 0.4;
const VOWEL = /[aeiouáéíóú]/i;

/**
 * Lengthens a text by about 40 percent, doubling vowels first, and puts accents on its letters, so that a screen shows
 * what another language would do to it. Digits, marks and places for values stay.
 */
export function pseudoText(text: string): string {
  const letters = [...text];
  let owed = Math.ceil(letters.filter((letter) => /[a-z]/i.test(letter)).length * GROWTH);
  const vowels = letters.filter((letter) => VOWEL.test(letter)).length;
  const repeats = vowels === 0 ? 0 : Math.ceil(owed / vowels);
  return letters
    .map((letter) => {
      const shown = ACCENTED[letter] ?? letter;
      if (!VOWEL.test(letter) || owed <= 0) return shown;
      const more = Math.min(owed, repeats);
      owed -= more;
      return shown + shown.toLowerCase().repeat(more);
    })
    .join('');
}

/** The dictionary of a language that does not exist, made from the English one. */
export function pseudoWords(): Words {
  const words = spokenPseudo(english) as Words;
  return { ...words, language: { code: 'en-XA', name: pseudoText('Pseudo') } };
}

/** Any part of a dictionary, spoken in that language. */
export function spokenPseudo(part: unknown): unknown {
  if (typeof part === 'string') return pseudoText(part);
  if (typeof part === 'function') return (...values: unknown[]) => pseudoText(String(part(...values)));
  if (Array.isArray(part)) return part.map(spokenPseudo);
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([name, inner]) => [name, spokenPseudo(inner)]));
}
