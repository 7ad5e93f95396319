import type { Plan, Scenario } from '../../engine/index.ts';
import { type PlanningDay, planningDays } from './days-axis.ts';
import { SHARE_CLASSES } from './map-view.ts';

/** What a zone is handed on a day: inoculant, with or without seed, or dry goods alone. */
export type HandedOver = 'inoculant' | 'dry' | null;

export interface CalendarCell {
  /** Hectares expected alive and in time if all the zone's inoculant were handed over that day, losses on the road left out. */
  readonly hectares: number;
  /** That, as a share of the most that any day gives; null where the zone gets no inoculant. */
  readonly share: number | null;
  /** 1 below 50 %, then 50, 70, 85, 95 % and all. */
  readonly aliveClass: number | null;
  readonly handed: HandedOver;
}

export interface CalendarRow {
  /** Null outside all zones. */
  readonly zoneId: string | null;
  readonly name: string | null;
  /** Expected hectares of the plan. */
  readonly reachedHa: number;
  /** Hectares of the cells' measure on the days that the plan has chosen. */
  readonly chosenHa: number;
  /** One cell a planning day, gaps included. */
  readonly cells: readonly CalendarCell[];
}

export interface ZoneCalendar {
  readonly days: readonly PlanningDay[];
  readonly rows: readonly CalendarRow[];
}

/** A zone's part of a consignment. */
interface Part {
  readonly consignment: number;
  readonly share: number;
}

/** Zones by days, in the order of the plan's table of zones. */
export function zoneCalendar(plan: Plan, scenario: Scenario): ZoneCalendar {
  const days = planningDays(plan);
  const parts = partsByZone(plan);
  const deliveries = deliveriesByConsignment(plan, days);
  const { zones } = plan.outcomes;
  const rows = zones.zone.map((zone, row): CalendarRow => {
    const ofZone = parts.get(zone) ?? [];
    const alive = ofZone.filter(({ consignment }) => isInoculant(plan, consignment));
    const hectares = days.map(({ offset }) => sumOf(alive, (part) => expectedHa(plan, part, offset)));
    const most = Math.max(0, ...hectares.filter((_, day) => days[day]?.works));
    const handed = handedByDay(plan, days, ofZone, deliveries);
    return {
      zoneId: plan.ids.zones[zone] ?? null,
      name: scenario.zones[zone]?.name ?? null,
      reachedHa: zones.reachedHa[row] ?? 0,
      chosenHa: sumOf(alive, (part) => chosenHa(plan, part, deliveries.get(part.consignment) ?? [])),
      cells: hectares.map((ha, day) => ({ ...measured(ha, most), handed: handed[day] ?? null })),
    };
  });
  return { days, rows };
}

function measured(hectares: number, most: number): Omit<CalendarCell, 'handed'> {
  const share = most > 0 ? Math.min(1, hectares / most) : null;
  const reached = share === null ? 0 : SHARE_CLASSES.filter((least) => share * 100 >= least).length;
  return { hectares, share, aliveClass: share === null ? null : Math.max(1, reached) };
}

const isInoculant = ({ allocation }: Plan, consignment: number): boolean =>
  allocation.consignments.group[consignment] !== 'dry';

function expectedHa({ allocation: { consignments } }: Plan, { consignment, share }: Part, day: number): number {
  return share * (consignments.hectares[consignment] ?? 0) * (consignments.reachByDay[consignment]?.[day] ?? 0);
}

/** Consignments by zone: those of a community that lies in several zones are parted by its land. */
function partsByZone({ places, allocation }: Plan): ReadonlyMap<number, readonly Part[]> {
  const byCommunity = new Map<number, number[]>();
  allocation.consignments.community.forEach((community, consignment) => {
    const known = byCommunity.get(community);
    if (known) known.push(consignment);
    else byCommunity.set(community, [consignment]);
  });
  const byZone = new Map<number, Part[]>();
  places.shares.community.forEach((community, row) => {
    const zone = places.shares.zone[row] ?? -1;
    const share = places.shares.share[row] ?? 0;
    const list = byZone.get(zone) ?? [];
    for (const consignment of byCommunity.get(community) ?? []) list.push({ consignment, share });
    byZone.set(zone, list);
  });
  return byZone;
}

interface HandOver {
  readonly day: number;
  readonly hectares: number;
}

/** When each consignment is handed over, and for how many hectares. */
function deliveriesByConsignment(plan: Plan, days: readonly PlanningDay[]): ReadonlyMap<number, readonly HandOver[]> {
  const { stops, trips, loads } = plan.delivery;
  const offsets = new Map(days.map(({ iso, offset }) => [iso, offset]));
  const handOvers = new Map<number, HandOver[]>();
  stops.trip.forEach((trip, stop) => {
    const day = offsets.get(trips.date[trip] ?? '') ?? -1;
    for (const load of stops.loads[stop] ?? []) {
      const consignment = loads.consignment[load] ?? -1;
      const list = handOvers.get(consignment) ?? [];
      list.push({ day, hectares: loads.hectares[load] ?? 0 });
      handOvers.set(consignment, list);
    }
  });
  return handOvers;
}

function chosenHa({ allocation }: Plan, { consignment, share }: Part, handOvers: readonly HandOver[]): number {
  const reach = allocation.consignments.reachByDay[consignment] ?? [];
  return share * sumOf(handOvers, ({ day, hectares }) => hectares * (reach[day] ?? 0));
}

function handedByDay(
  plan: Plan,
  days: readonly PlanningDay[],
  parts: readonly Part[],
  deliveries: ReadonlyMap<number, readonly HandOver[]>,
): HandedOver[] {
  const handed: HandedOver[] = days.map(() => null);
  for (const { consignment } of parts) {
    for (const { day } of deliveries.get(consignment) ?? []) {
      if (isInoculant(plan, consignment)) handed[day] = 'inoculant';
      else handed[day] ??= 'dry';
    }
  }
  return handed;
}

const sumOf = <T>(list: readonly T[], of: (one: T) => number): number => list.reduce((sum, one) => sum + of(one), 0);
