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
  decision: LoadDecisions,
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

/** A promise is broken once, by however many loads: each load of its consignment carries a part. Nought without a promise. */
export function pricesOfBrokenPromise(
  scenario: Scenario,
  loads: readonly Load[],
  decided: readonly LoadDecisions[],
  dearestJourney: number,
): Float64Array {
  const price = scenario.policy.promisePrice ?? DEAREST_JOURNEYS_BROKEN_PROMISE.value * dearestJourney;
  const parts = new Int32Array(decided.length);
  for (const { consignment } of loads) parts[consignment] = (parts[consignment] as number) + 1;
  return Float64Array.from(loads, ({ consignment }) =>
    decided[consignment]?.promisedDay == null ? 0 : price / (parts[consignment] as number),
  );
}
