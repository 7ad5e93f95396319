/** Share of the variance of an output that an input explains alone, and with all that it does together with others. */
export interface VarianceShare {
  readonly first: number;
  readonly total: number;
}

/**
 * First-order and total sensitivity of an output to each input (Saltelli et al. 2010, Computer Physics Communications
 * 181:259-270, table 2: estimator b for the first order, that of Jansen 1999, f, for the total). The output is centred
 * before products are taken, which changes no index and lessens their error. Noughts where the output does not vary.
 *
 * @param a output at the rows of a sample A of the inputs
 * @param b output at the rows of a second sample B, drawn apart from A
 * @param ab per input: output at the rows of A whose values of that input are taken from B
 */
export function varianceShares(
  a: ArrayLike<number>,
  b: ArrayLike<number>,
  ab: readonly ArrayLike<number>[],
): VarianceShare[] {
  const n = a.length;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += (a[i] as number) + (b[i] as number);
  const mean = sum / (2 * n);
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const [u, v] = [(a[i] as number) - mean, (b[i] as number) - mean];
    squares += u * u + v * v;
  }
  const variance = squares / (2 * n);
  if (!(variance > 0)) return ab.map(() => ({ first: 0, total: 0 }));
  return ab.map((mixed) => {
    let [first, total] = [0, 0];
    for (let i = 0; i < n; i++) {
      const step = (mixed[i] as number) - (a[i] as number);
      first += ((b[i] as number) - mean) * step;
      total += step * step;
    }
    return { first: first / n / variance, total: total / (2 * n) / variance };
  });
}
