/** A value for the facts of a problem: people read it, nothing is computed from it. */
export function rounded(value: number, decimals: 0 | 1 | 2 | 3): number {
  const steps = [1, 10, 100, 1000][decimals] as number;
  return Math.round(value * steps) / steps;
}
