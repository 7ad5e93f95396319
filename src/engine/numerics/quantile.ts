/**
 * Sample quantile, linear between order statistics (type 7 of Hyndman & Fan 1996, The American Statistician 50:361-365).
 * NaN values are left out; NaN where none is left.
 *
 * @param values any order, not changed
 * @param p 0 to 1
 */
export function quantile(values: ArrayLike<number>, p: number): number {
  const sorted = Float64Array.from(values)
    .filter((v) => !Number.isNaN(v))
    .sort();
  if (sorted.length === 0) return Number.NaN;
  const h = (sorted.length - 1) * p;
  const below = Math.floor(h);
  const low = sorted[below] as number;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return low === high ? low : low + (h - below) * (high - low);
}
