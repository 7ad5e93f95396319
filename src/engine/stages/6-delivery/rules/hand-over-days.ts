import { isoWeekday } from '../../../vocabulary/calendar.ts';
import type { Community, MarketDays, Zone } from '../../../vocabulary/scenario.ts';
import { type DayNumber, dayNumber } from '../../../vocabulary/units.ts';

/** Whether a community may be visited on a day, or the rule that forbids it. */
export type DayVerdict = 'allowed' | 'point-closed' | 'market-day-only';

/** Closed communities and zones are not visited; where the rule is `only`, no day but market day is. */
export function judgeDay(community: Community, zone: Zone | null, marketDays: MarketDays, day: number): DayVerdict {
  const today = dayNumber(day);
  if (isClosed(community, today) || (zone !== null && isClosed(zone, today))) return 'point-closed';
  if (marketDays === 'only' && isOffMarket(community, today)) return 'market-day-only';
  return 'allowed';
}

/** A day that is not the community's market day; false where it has none. */
export function isOffMarket(community: Community, day: number): boolean {
  return community.marketDay !== null && community.marketDay !== isoWeekday(dayNumber(day));
}

function isClosed(place: Pick<Community | Zone, 'closedFrom' | 'closedTo'>, day: DayNumber): boolean {
  if (place.closedFrom === null && place.closedTo === null) return false;
  return day >= (place.closedFrom ?? Number.NEGATIVE_INFINITY) && day <= (place.closedTo ?? Number.POSITIVE_INFINITY);
}
