import type { Words } from './wording/words.ts';

/** A space that no line breaks at. */
export const NO_BREAK = '\u00a0';

const formats = new Map<string, Intl.NumberFormat>();

/**
 * A number as the language writes it, its thousands set apart by a no-break space (ISO 80000-1) whatever the language does,
 * so that a comma is never a thousand to one reader and a decimal sign to another.
 */
export function localNumber(value: number, words: Pick<Words, 'language'>, decimals = 0): string {
  const code = words.language.code;
  const key = `${code} ${decimals}`;
  const format =
    formats.get(key) ??
    new Intl.NumberFormat(code, {
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
      useGrouping: 'always',
    });
  formats.set(key, format);
  const rounded = Number(value.toFixed(decimals));
  const parts = format.formatToParts(Object.is(rounded, -0) ? 0 : rounded);
  return parts.map(({ type, value: text }) => (type === 'group' ? NO_BREAK : text)).join('');
}

/** A share between 0 and 1 as whole percent, rounded down, so that it is never said to be more than it is. */
export const wholePercent = (share: number): number => Math.floor(share * 100 + 1e-7);

/** A number and its unit, never parted. */
export const withUnit = (number: string, unit: string): string => `${number}${NO_BREAK}${unit}`;

/** A text that stays on one line. */
export const noBreaks = (text: string): string => text.replaceAll(' ', NO_BREAK);
