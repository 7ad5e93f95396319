import { delayFactor, lifeValue, lossBefore, type PreparedLife } from './reach.ts';

/** Where value goes between the pack as bought and the seed in the ground, in the order in which it happens. */
export const VALUE_STEPS = ['late', 'asBought', 'depotStore', 'road', 'communityStore', 'onSeed'] as const;

/** One season of a crop's sowing window; days count as the prepared life's do. */
export interface SeasonWindow {
  /** NaN where that season has no onset. */
  readonly first: number;
  readonly last: number;
  readonly delayLossPerDay: number;
  readonly delayFreeDays: number;
}

/**
 * Share of value left after each step where goods are handed over on day `h` of one season: the last entry is what
 * `reachCurve` averages. A season without onset leaves nothing from the first step on.
 *
 * @param into one entry a step, overwritten
 * @returns the day of sowing; NaN where nothing is sown
 */
export function valueAfterSteps(
  life: PreparedLife,
  { first, last, delayLossPerDay, delayFreeDays }: SeasonWindow,
  h: number,
  roadLog10: number,
  into: Float64Array,
): number {
  if (Number.isNaN(first) || Number.isNaN(last)) {
    into.fill(0);
    return Number.NaN;
  }
  const sown = Math.max(first, h + 1);
  const kept = delayFactor(sown - last, delayLossPerDay, delayFreeDays);
  let left = life.log10PerSeed;
  into[0] = kept;
  into[1] = kept * lifeValue(left, life.floorLog10);
  left -= lossBefore(life.depot, h);
  into[2] = kept * lifeValue(left, life.floorLog10);
  left -= roadLog10;
  into[3] = kept * lifeValue(left, life.floorLog10);
  left -= communityLog10(life, h, sown);
  into[4] = kept * lifeValue(left, life.floorLog10);
  into[5] = kept * lifeValue(left - life.onSeedLog10, life.floorLog10);
  return sown;
}

/** log10 lost in the community's store from the hand-over on day `h` to sowing. */
export function communityLog10(life: PreparedLife, h: number, sown: number): number {
  return lossBefore(life.community, sown) - lossBefore(life.community, h);
}
