import type { Plan, Scenario } from '../../engine/index.ts';
import type { PeriodDay } from './days-period.ts';

/** What a zone is handed on a day. */
export type Handed = 'inoculant' | 'dry' | null;

/** One zone's row of the calendar. Arrays run over all planning days. */
export interface ZoneSkyline {
  /** Null outside all zones. */
  readonly zoneId: string | null;
  readonly name: string | null;
  /** Hectares that the plan expects to reach. */
  readonly expectedHa: number;
  /** Hectares for which the zone is given inoculant. */
  readonly inoculatedHa: number;
  /** Part of those that would be served alive and in time if all were handed over that day, road losses left out. */
  readonly shares: readonly (number | null)[];
  readonly handed: readonly Handed[];
}

/** A consignment's part that falls to a zone: a community over two zones is parted by its land. */
interface ZonePart {
  readonly consignment: number;
  readonly share: number;
}

export function zoneSkylines(plan: Plan, scenario: Scenario, days: readonly PeriodDay[]): ZoneSkyline[] {
  const { zone: zones, reachedHa } = plan.outcomes.zones;
  const { group, hectares, reachByDay } = plan.allocation.consignments;
  const handOvers = handOverDays(plan, days);
  return zones.map((zone, row) => {
    const parts = partsOfZone(plan, zone);
    const alive = parts.filter(({ consignment }) => group[consignment] !== 'dry');
    const weight = ({ consignment, share }: ZonePart) => share * (hectares[consignment] ?? 0);
    const all = sum(alive.map(weight));
    const reach = (offset: number) =>
      sum(alive.map((part) => weight(part) * (reachByDay[part.consignment]?.[offset] ?? 0)));
    const handed = (offset: number): Handed => {
      const there = parts.filter(({ consignment }) => handOvers.get(consignment)?.has(offset));
      if (there.length === 0) return null;
      return there.some(({ consignment }) => group[consignment] !== 'dry') ? 'inoculant' : 'dry';
    };
    return {
      zoneId: plan.ids.zones[zone] ?? null,
      name: scenario.zones[zone]?.name ?? null,
      expectedHa: reachedHa[row] ?? 0,
      inoculatedHa: all,
      shares: days.map(({ offset }) => (all > 0 ? reach(offset) / all : null)),
      handed: days.map(({ offset }) => handed(offset)),
    };
  });
}

function partsOfZone({ places: { shares }, allocation: { consignments } }: Plan, zone: number): ZonePart[] {
  const ofCommunity = new Map<number, number>();
  shares.community.forEach((community, row) => {
    if (shares.zone[row] === zone) ofCommunity.set(community, shares.share[row] ?? 0);
  });
  return consignments.community.flatMap((community, consignment) => {
    const share = ofCommunity.get(community);
    return share === undefined ? [] : [{ consignment, share }];
  });
}

/** Offsets of the days on which each consignment, or a part of it, is handed over. */
function handOverDays({ delivery }: Plan, days: readonly PeriodDay[]): Map<number, Set<number>> {
  const offsets = new Map(days.map(({ iso, offset }) => [iso, offset]));
  const found = new Map<number, Set<number>>();
  delivery.stops.trip.forEach((trip, stop) => {
    const offset = offsets.get(delivery.trips.date[trip] ?? '');
    if (offset === undefined) return;
    for (const load of delivery.stops.loads[stop] ?? []) {
      const consignment = delivery.loads.consignment[load] ?? -1;
      found.set(consignment, (found.get(consignment) ?? new Set()).add(offset));
    }
  });
  return found;
}

/** Class of `--alive-1` … `--alive-6` by sixths of the share. */
export const aliveClass = (share: number): number => Math.max(1, Math.min(6, Math.floor(share * 6) + 1));

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
