import type { ReachCurve } from '../../vocabulary/stage-results/allocation.ts';

/** Share of its hectares' value that goods handed over on a day still have, after a log10 loss on the road. */
export function reachAt(reach: ReachCurve, day: number, log10Loss: number): number {
  const { lossBreaks, value } = reach;
  const count = lossBreaks.length;
  const row = day * count;
  let k = 1;
  while (k < count && (lossBreaks[k] as number) < log10Loss) k++;
  if (k >= count) return value[row + count - 1] as number;
  const [low, high] = [lossBreaks[k - 1] as number, lossBreaks[k] as number];
  const [atLow, atHigh] = [value[row + k - 1] as number, value[row + k] as number];
  return log10Loss <= low ? atLow : atLow + ((log10Loss - low) / (high - low)) * (atHigh - atLow);
}
