import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Consignment } from '../../vocabulary/stage-results/allocation.ts';
import type { Load } from '../../vocabulary/stage-results/delivery.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import { DEAREST_JOURNEYS_BROKEN_PROMISE, OFF_MARKET_SHARE } from './assumptions.ts';
import { reachAt } from './reach-value.ts';
import type { LoadDecisions } from './rules/decisions-on-loads.ts';
import { type DayVerdict, isOffMarket, judgeDay } from './rules/hand-over-days.ts';

/** Whether each planning day allows a hand-over of a consignment, and if not, by what rule. */
export function judgeDays(
  scenario: Scenario,
  places: Places,
  season: SeasonOutlook,
  consignment: Consignment,
): DayVerdict[] {
  const community = scenario.communities[consignment.community] as Scenario['communities'][number];
  const zone = scenario.zones[zoneOfMost(places, consignment.community)] ?? null;
  return Array.from({ length: season.planningDays }, (_, day) =>
    judgeDay(community, zone, scenario.policy.marketDays, season.firstDay + day),
  );
}

/** Zone with the largest part of a community, -1 outside all. */
function zoneOfMost({ shares }: Places, community: number): number {
  let best = -1;
  let most = 0;
  for (let row = 0; row < shares.community.length; row++) {
    if (shares.community[row] !== community || (shares.share[row] as number) <= most) continue;
    most = shares.share[row] as number;
    best = shares.zone[row] as number;
  }
  return best;
}

/** What a load loses by the day alone: value by lateness, off-market and broken-promise costs. Infinity: not allowed. */
export function costOfDays(
  scenario: Scenario,
  season: SeasonOutlook,
  consignment: Consignment,
  decision: Pick<LoadDecisions, 'lock' | 'promisedDay'>,
  verdicts: readonly DayVerdict[],
  { worth, brokenPromise }: { readonly worth: number; readonly brokenPromise: number },
): Float64Array {
  const community = scenario.communities[consignment.community] as Scenario['communities'][number];
  return Float64Array.from(verdicts, (verdict, day) => {
    if (verdict !== 'allowed' || day < consignment.earliest || day > consignment.latest)
      return Number.POSITIVE_INFINITY;
    if (decision.lock !== null && decision.lock.day !== day) return Number.POSITIVE_INFINITY;
    const late = worth * (1 - reachAt(consignment.reach, day, 0));
    const market = isOffMarket(community, season.firstDay + day) ? OFF_MARKET_SHARE.value * worth : 0;
    return late + market + (decision.promisedDay !== day ? brokenPromise : 0);
  });
}

/** What a broken promise costs, in the scenario's currency. */
export function priceOfPromise(scenario: Scenario, dearestJourney: number): number {
  return scenario.policy.promisePrice ?? DEAREST_JOURNEYS_BROKEN_PROMISE.value * dearestJourney;
}

/**
 * A promise is broken once, by however many loads: each load of its consignment carries a part. Nought without a promise.
 *
 * @param promisedDays planning day told for each load; null: none
 */
export function pricesOfBrokenPromise(
  loads: readonly Load[],
  promisedDays: readonly (number | null)[],
  promisePrice: number,
): Float64Array {
  const parts = new Map<number, number>();
  for (const { consignment } of loads) parts.set(consignment, (parts.get(consignment) ?? 0) + 1);
  return Float64Array.from(loads, ({ consignment }, i) =>
    promisedDays[i] === null ? 0 : promisePrice / (parts.get(consignment) as number),
  );
}
