import { cos, exp, log } from '../../numerics/elementary.ts';
import { RandomStream } from '../../numerics/random-stream.ts';
import { type Sourced, sourced } from '../../vocabulary/index.ts';

/** How many draws of the parameters every season of the record is played with, and the seed of their stream. */
export const DRAWS = 200;
export const DRAW_SEED = 1;

export const UNCERTAINTY = {
  /** Relative standard deviation of a district's yield around the yield reckoned with. */
  yieldRelativeSd: sourced(
    0.2,
    'assumed',
    'the mean of a continent varies by 7-8 % from year to year (derived from FAOSTAT Africa 2009-2018); one district varies more',
  ),
  /**
   * Nine draws in ten lose between half and twice as fast as the survival set: "a factor of 2 either way" is read as the 5th and
   * the 95th percentile, not as one standard deviation, and not as the 10th and the 90th.
   */
  lossRateFactor: sourced(
    2,
    'assumed',
    'rate in packs halved and doubled: D40 14 to 56 d, where bounds of the trials drawn at random give 28 to 51 d as their 5 and 95 %; loss on seed is known to a factor of 2 either way; read as 5 to 95 %',
  ),
  /** Part of the variance of the response to inoculation that a whole district shares; the rest differs by community. */
  responseSharedByDistrict: sourced(
    0.5,
    'assumed',
    'fields differ more than districts do; 2082 trials found the difference not explained by environment',
  ),
} as const satisfies Readonly<Record<string, Sourced<number>>>;

/** 95 % quantile of the standard normal distribution. */
const NORMAL_P95 = 1.6448536269514722;
const LOG_RATE_SD = log(UNCERTAINTY.lossRateFactor.value) / NORMAL_P95;

/**
 * A draw is a column of standard normal numbers; nought throughout is the central case. Places in it: nitrogen method,
 * yield, loss in packs, loss on seed, then the response of each crop, then of each community.
 */
export const DRAW = { nitrogen: 0, yield: 1, packLoss: 2, seedLoss: 3, crops: 4 } as const;

/** How much faster than its set inoculant dies, from its number in a draw. */
export function lossRate(normal: number): number {
  return normal === 0 ? 1 : exp(LOG_RATE_SD * normal);
}

/** The same draws everywhere: `count` columns of `width` standard normal numbers (Box & Muller 1958). */
export function drawParameters(count: number, width: number, seed: number): Float64Array[] {
  const stream = new RandomStream(seed);
  return Array.from({ length: count }, () => Float64Array.from({ length: width }, () => standardNormal(stream)));
}

function standardNormal(stream: RandomStream): number {
  const radius = Math.sqrt(-2 * log(1 - stream.next()));
  return radius * cos(2 * Math.PI * stream.next());
}
