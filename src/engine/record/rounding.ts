/**
 * Decimals of each kind of figure in a plan document: finer than anything measured, coarse enough that the last bits of
 * the arithmetic do not show. Sums of rounded figures differ from rounded sums by at most half a step for each term.
 */
const DECIMALS = {
  hectares: 6,
  kilograms: 4,
  /** Seed coated, grams and packs asked for: fractions are allowed before packs are made whole. */
  packs: 4,
  grams: 2,
  litres: 3,
  share: 7,
  /** Rhizobia: whole ones. */
  counts: 0,
  /** About a centimetre. */
  degrees: 7,
  celsius: 3,
  hours: 3,
  minutes: 3,
  kilometres: 4,
  log10: 5,
  money: 2,
  ratio: 4,
  people: 2,
  tonnes: 4,
  /** Places along a road line, in vertices. */
  vertices: 7,
} as const;

export type FigureKind = keyof typeof DECIMALS;

/** Prices of a proof carry no unit of their own: digits that count, not decimals. */
const PRICE_DIGITS = 12;

/** @throws RangeError on NaN or infinity, which a plan cannot hold where a number is due */
export function round(value: number, kind: FigureKind): number {
  if (!Number.isFinite(value)) throw new RangeError(`a figure in ${kind} is ${value}`);
  const steps = Number(`1e${DECIMALS[kind]}`);
  return Math.round(value * steps) / steps + 0;
}

/** Rounded; null stands for NaN, "not known or not meant". */
export function roundOrNull(value: number, kind: FigureKind): number | null {
  return Number.isNaN(value) ? null : round(value, kind);
}

export function roundAll(values: Iterable<number>, kind: FigureKind): number[] {
  return Array.from(values, (value) => round(value, kind));
}

export function roundAllOrNull(values: Iterable<number>, kind: FigureKind): (number | null)[] {
  return Array.from(values, (value) => roundOrNull(value, kind));
}

export function roundPrices(values: Iterable<number>): number[] {
  return Array.from(values, (value) => Number(value.toPrecision(PRICE_DIGITS)) + 0);
}
