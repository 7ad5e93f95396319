import { quantile } from './quantile.ts';
import { RandomStream } from './random-stream.ts';

export interface BootstrapInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * Percentile interval of a quantile by resampling whole groups of values with replacement (Efron & Tibshirani 1993, An
 * Introduction to the Bootstrap, chapters 8 and 13): values of one group, such as the seasons played with one draw, stay
 * together. Sorted once; each resample is one walk over the values.
 *
 * @param values by group: `values[group * perGroup + i]`
 * @param p quantile wanted, 0 to 1
 * @param level of the interval, such as 0.95
 */
export function bootstrapQuantile(
  values: ArrayLike<number>,
  perGroup: number,
  p: number,
  level: number,
  resamples: number,
  seed: number,
): BootstrapInterval {
  const groups = values.length / perGroup;
  const stream = new RandomStream(seed);
  const order = Int32Array.from({ length: values.length }, (_, i) => i).sort(
    (i, j) => (values[i] as number) - (values[j] as number) || i - j,
  );
  const times = new Int32Array(groups);
  const found = new Float64Array(resamples);
  for (let r = 0; r < resamples; r++) {
    times.fill(0);
    for (let g = 0; g < groups; g++) {
      const drawn = stream.below(groups);
      times[drawn] = (times[drawn] as number) + 1;
    }
    found[r] = resampledQuantile(values, order, times, perGroup, p);
  }
  const outside = (1 - level) / 2;
  return { low: quantile(found, outside), high: quantile(found, 1 - outside) };
}

/** Quantile, as `quantile` takes it, of the values each counted as often as its group was drawn. */
function resampledQuantile(
  values: ArrayLike<number>,
  order: Int32Array,
  times: Int32Array,
  perGroup: number,
  p: number,
): number {
  const h = (values.length - 1) * p;
  const below = Math.floor(h);
  let counted = 0;
  let low = Number.NaN;
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number;
    counted += times[Math.floor(i / perGroup)] as number;
    if (Number.isNaN(low) && counted > below) low = values[i] as number;
    if (counted > below + 1 || (counted > below && h === below))
      return low + (h - below) * ((values[i] as number) - low);
  }
  return low;
}
