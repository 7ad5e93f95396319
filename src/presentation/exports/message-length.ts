/**
 * The default alphabet of short messages, seven bits a character, and the characters that take two places in it:
 * 3GPP TS 23.038 (formerly GSM 03.38), section 6.2.1, from memory; tests count against worked lengths.
 */
const DEFAULT_ALPHABET = new Set(
  '@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !"#¤%&\'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà',
);
const TWO_PLACES = new Set('^{}\\[~]|€\f');

export interface MessageLength {
  readonly alphabet: 'seven-bit' | 'sixteen-bit';
  /** Places taken in that alphabet. */
  readonly units: number;
  /** Messages that it is sent as: 160 places at once or 153 each, 70 or 67 in the wider alphabet. */
  readonly parts: number;
}

export function messageLength(text: string): MessageLength {
  const isPlain = [...text].every((one) => DEFAULT_ALPHABET.has(one) || TWO_PLACES.has(one));
  const units = isPlain ? [...text].reduce((sum, one) => sum + (TWO_PLACES.has(one) ? 2 : 1), 0) : text.length;
  const [alone, each] = isPlain ? [160, 153] : [70, 67];
  return {
    alphabet: isPlain ? 'seven-bit' : 'sixteen-bit',
    units,
    parts: units <= alone ? 1 : Math.ceil(units / each),
  };
}

/** Marks over and under letters taken off where the alphabet lacks the letter, so that a message is not cut to 70 places by one name. */
export function withoutMarks(text: string): string {
  return [...text]
    .map((one) => {
      if (DEFAULT_ALPHABET.has(one) || TWO_PLACES.has(one)) return one;
      const bare = one.normalize('NFD').replace(/\p{M}/gu, '');
      return bare !== '' && [...bare].every((letter) => DEFAULT_ALPHABET.has(letter)) ? bare : one;
    })
    .join('');
}
