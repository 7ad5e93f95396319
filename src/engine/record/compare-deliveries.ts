import type { Plan, UnservedReason } from '../vocabulary/index.ts';

/** What befell the goods of one community, its own or an hour alone. The words stand in presentation. */
export type DeliveryChangeCode = 'now-served' | 'no-longer-served' | 'other-day' | 'other-vehicle' | 'other-hour';

/** Where and when a consignment is handed over; its first load speaks for the hour. */
export interface HandOver {
  readonly date: string;
  readonly vehicleId: string;
  readonly arriveMinute: number;
}

export interface DeliveryChange {
  readonly code: DeliveryChangeCode;
  /** Index of the consignment in the later plan. */
  readonly consignment: number;
  readonly communityId: string;
  readonly group: Plan['allocation']['consignments']['group'][number];
  readonly before: readonly HandOver[];
  readonly after: readonly HandOver[];
  /** Why what is left behind is. */
  readonly reasons: readonly UnservedReason[];
}

export interface DeliveryDifference {
  /** Left behind first, then other days, vehicles and hours; each by date. */
  readonly changes: readonly DeliveryChange[];
  /** Consignments that come on another day than told, or no longer: each costs a promise. */
  readonly promisesBroken: number;
  /** In the scenario's currency; null where nothing of it is priced. */
  readonly costBefore: number | null;
  readonly costAfter: number | null;
  readonly kilometresBefore: number;
  readonly kilometresAfter: number;
  readonly vehicleDaysBefore: number;
  readonly vehicleDaysAfter: number;
}

const ORDER: readonly DeliveryChangeCode[] = [
  'no-longer-served',
  'other-day',
  'other-vehicle',
  'now-served',
  'other-hour',
];
/** Hand-overs within so many minutes are the same hour. */
const SAME_HOUR_MINUTES = 30;

/** Two deliveries of the same allocation side by side: whose goods come otherwise. */
export function compareDeliveries(before: Plan, after: Plan): DeliveryDifference {
  const [was, is] = [handOvers(before), handOvers(after)];
  const changes = after.allocation.consignments.community.flatMap((community, consignment): DeliveryChange[] => {
    const [old, now] = [was.get(consignment) ?? [], is.get(consignment) ?? []];
    const reasons = reasonsOf(after, consignment);
    const code = codeOf(old, now, reasonsOf(before, consignment).length, reasons.length);
    if (code === null) return [];
    const communityId = after.ids.communities[community] ?? '';
    const group = after.allocation.consignments.group[consignment] as DeliveryChange['group'];
    return [{ code, consignment, communityId, group, before: old, after: now, reasons }];
  });
  const dateOf = ({ before: old, after: now }: DeliveryChange) => (now[0] ?? old[0])?.date ?? '';
  changes.sort(
    (a, b) =>
      ORDER.indexOf(a.code) - ORDER.indexOf(b.code) ||
      (dateOf(a) < dateOf(b) ? -1 : dateOf(a) > dateOf(b) ? 1 : a.consignment - b.consignment),
  );
  const total = ({ delivery: { trips } }: Plan) => ({
    kilometres: trips.kilometres.reduce((sum, km) => sum + km, 0),
    days: new Set(trips.vehicle.map((vehicle, i) => `${vehicle} ${trips.date[i]}`)).size,
  });
  const [sumBefore, sumAfter] = [total(before), total(after)];
  return {
    changes,
    promisesBroken: changes.filter(({ code }) => code === 'other-day' || code === 'no-longer-served').length,
    costBefore: before.delivery.cost,
    costAfter: after.delivery.cost,
    kilometresBefore: sumBefore.kilometres,
    kilometresAfter: sumAfter.kilometres,
    vehicleDaysBefore: sumBefore.days,
    vehicleDaysAfter: sumAfter.days,
  };
}

function codeOf(
  old: readonly HandOver[],
  now: readonly HandOver[],
  leftBefore: number,
  leftAfter: number,
): DeliveryChangeCode | null {
  if (leftAfter > leftBefore) return 'no-longer-served';
  if (leftAfter < leftBefore) return 'now-served';
  const differs = (key: (at: HandOver) => string) => old.map(key).sort().join() !== now.map(key).sort().join();
  if (differs(({ date }) => date)) return 'other-day';
  if (differs(({ date, vehicleId }) => `${date} ${vehicleId}`)) return 'other-vehicle';
  const moved = old.some((at, i) => Math.abs(at.arriveMinute - (now[i]?.arriveMinute ?? 0)) > SAME_HOUR_MINUTES);
  return moved ? 'other-hour' : null;
}

/** Hand-overs of each consignment, by date and hour. */
function handOvers({ ids, delivery: { loads, trips, stops } }: Plan): Map<number, HandOver[]> {
  const found = new Map<number, HandOver[]>();
  stops.loads.forEach((aboard, stop) => {
    const trip = stops.trip[stop] ?? -1;
    for (const load of aboard) {
      const consignment = loads.consignment[load] ?? -1;
      const at = {
        date: trips.date[trip] ?? '',
        vehicleId: ids.vehicles[trips.vehicle[trip] ?? -1] ?? '',
        arriveMinute: stops.arriveMinute[stop] ?? 0,
      };
      found.set(consignment, [...(found.get(consignment) ?? []), at]);
    }
  });
  const key = ({ date, arriveMinute, vehicleId }: HandOver) =>
    `${date} ${String(arriveMinute).padStart(8)} ${vehicleId}`;
  for (const list of found.values()) list.sort((a, b) => (key(a) < key(b) ? -1 : 1));
  return found;
}

function reasonsOf({ delivery: { loads, unserved } }: Plan, consignment: number): UnservedReason[] {
  return unserved.load.flatMap((load, row) =>
    loads.consignment[load] === consignment ? [unserved.reason[row] as UnservedReason] : [],
  );
}
