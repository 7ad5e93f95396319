import type { Plan, Scenario, SeasonCalendar } from '../../engine/index.ts';
import { type PlanningDay, planningDays } from './days-axis.ts';
import { SHARE_CLASSES } from './map-view.ts';

/** What a zone is handed on a day: inoculant, with or without seed, or dry goods alone. */
export type HandedOver = 'inoculant' | 'dry' | null;

export interface CalendarCell {
  /** Expected share of value kept if the zone's inoculant were handed over that day; null while it is being weighed. */
  readonly kept: number | null;
  /** That times the hectares the zone's packs inoculate. */
  readonly hectares: number;
  /** As a share of the zone's best day; null where nothing is kept on any, or it is being weighed. */
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

/**
 * Zones by days, in the order of the plan's table of zones.
 *
 * @param worth what each day keeps by the reference trip; null while it is being weighed
 */
export function zoneCalendar(plan: Plan, scenario: Scenario, worth: SeasonCalendar | null): ZoneCalendar {
  const days = planningDays(plan);
  const parts = partsByZone(plan);
  const deliveries = deliveriesByConsignment(plan, days);
  const { zones } = plan.outcomes;
  const rows = zones.zone.map((zone, row): CalendarRow => {
    const ofZone = parts.get(zone) ?? [];
    const alive = ofZone.filter(({ consignment }) => isInoculant(plan, consignment));
    const kept = days.map(({ offset }) => keptOn(worth, zone, offset));
    const most = Math.max(0, ...kept.filter((_, day) => days[day]?.works).map((share) => share ?? 0));
    const inoculatedHa = sumOf(alive, ({ consignment, share }) => share * hectaresOf(plan, consignment));
    const handed = handedByDay(plan, days, ofZone, deliveries);
    return {
      zoneId: plan.ids.zones[zone] ?? null,
      name: scenario.zones[zone]?.name ?? null,
      reachedHa: zones.reachedHa[row] ?? 0,
      chosenHa: sumOf(alive, ({ consignment, share }) => share * chosenHa(kept, deliveries.get(consignment) ?? [])),
      cells: kept.map((share, day) => ({ ...measured(share, most, inoculatedHa), handed: handed[day] ?? null })),
    };
  });
  return { days, rows };
}

/** Rows of the calendar are zones in the scenario's order; the last is the land outside all of them. */
export const worthRow = (worth: SeasonCalendar, zone: number): number => (zone < 0 ? worth.plannedHa.length - 1 : zone);

function keptOn(worth: SeasonCalendar | null, zone: number, day: number): number | null {
  const kept = worth?.value[worthRow(worth, zone) * worth.planningDays + day];
  return kept === undefined || Number.isNaN(kept) ? null : kept;
}

function measured(kept: number | null, most: number, inoculatedHa: number): Omit<CalendarCell, 'handed'> {
  const share = kept !== null && most > 0 ? Math.min(1, kept / most) : null;
  const reached = share === null ? 0 : SHARE_CLASSES.filter((least) => share * 100 >= least - 1e-9).length;
  return {
    kept,
    hectares: (kept ?? 0) * inoculatedHa,
    share,
    aliveClass: share === null ? null : Math.max(1, reached),
  };
}

const isInoculant = ({ allocation }: Plan, consignment: number): boolean =>
  ['inoculant', 'both'].includes(allocation.consignments.group[consignment] ?? '');

const hectaresOf = ({ allocation }: Plan, consignment: number): number =>
  allocation.consignments.hectares[consignment] ?? 0;

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

const chosenHa = (kept: readonly (number | null)[], handOvers: readonly HandOver[]): number =>
  sumOf(handOvers, ({ day, hectares }) => hectares * (kept[day] ?? 0));

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
      else if (plan.allocation.consignments.group[consignment] === 'dry') handed[day] ??= 'dry';
    }
  }
  return handed;
}

const sumOf = <T>(list: readonly T[], of: (one: T) => number): number => list.reduce((sum, one) => sum + of(one), 0);
