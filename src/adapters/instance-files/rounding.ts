/**
 * How a published set turns coordinates into lengths. `scale` is by what times are multiplied beside them, and what the cost is
 * divided by when it is told.
 */
export interface Rounding {
  readonly scale: number;
  readonly length: (dx: number, dy: number) => number;
}

const straight = (dx: number, dy: number) => Math.sqrt(dx * dx + dy * dy);

/** TSPLIB EUC_2D: to the nearest whole number. */
export const NEAREST: Rounding = { scale: 1, length: (dx, dy) => Math.floor(straight(dx, dy) + 0.5) };
/** Whole tenths, cut off: the convention of the DIMACS challenge for sets with hours. */
export const TENTHS: Rounding = { scale: 10, length: (dx, dy) => Math.floor(10 * straight(dx, dy)) };
/** Thousandths, to the nearest. */
export const THOUSANDTHS: Rounding = { scale: 1000, length: (dx, dy) => Math.floor(1000 * straight(dx, dy) + 0.5) };
export const UNROUNDED: Rounding = { scale: 1, length: straight };

/** All lengths between points, row by row. */
export function lengthsBetween(x: readonly number[], y: readonly number[], { length }: Rounding): Float64Array {
  const count = x.length;
  const lengths = new Float64Array(count * count);
  for (let a = 0; a < count; a++) {
    for (let b = 0; b < count; b++) {
      if (a !== b)
        lengths[a * count + b] = length((x[a] as number) - (x[b] as number), (y[a] as number) - (y[b] as number));
    }
  }
  return lengths;
}
