import type { Plan, UnservedReason } from '../vocabulary/index.ts';

/** What befell the goods of one community, its own or an hour alone. The words stand in presentation. */
export type DeliveryChangeCode =
  | 'now-served'
  | 'no-longer-served'
  | 'no-longer-given'
  | 'other-day'
  | 'other-vehicle'
  | 'other-amount'
  | 'other-hour';

/** Where and when goods of one kind are handed over. */
export interface HandOver {
  readonly date: string;
  readonly vehicleId: string;
  readonly arriveMinute: number;
  readonly packs: number;
}

export interface DeliveryChange {
  readonly code: DeliveryChangeCode;
  readonly communityId: string;
  readonly group: Plan['allocation']['consignments']['group'][number];
  readonly before: readonly HandOver[];
  readonly after: readonly HandOver[];
  /** Why what is left behind is. */
  readonly reasons: readonly UnservedReason[];
}

export interface DeliveryDifference {
  /** Left behind first, then other days, vehicles, amounts and hours; each by date. */
  readonly changes: readonly DeliveryChange[];
  /** Goods that come on another day than told, or no longer. */
  readonly promisesBroken: number;
  /** What these promises were reckoned to cost together, in the scenario's currency. */
  readonly promisesPrice: number;
  /** In the scenario's currency; null where nothing of it is priced, or where days have gone by in between. */
  readonly costBefore: number | null;
  readonly costAfter: number | null;
  readonly kilometresBefore: number;
  readonly kilometresAfter: number;
  readonly vehicleDaysBefore: number;
  readonly vehicleDaysAfter: number;
}

const ORDER: readonly DeliveryChangeCode[] = [
  'no-longer-served',
  'no-longer-given',
  'other-day',
  'other-vehicle',
  'now-served',
  'other-amount',
  'other-hour',
];
const BROKEN: readonly DeliveryChangeCode[] = ['no-longer-served', 'no-longer-given', 'other-day'];
/** Hand-overs within so many minutes are the same hour. */
const SAME_HOUR_MINUTES = 30;

/**
 * What people know beside what is planned now: whose goods come otherwise. What was handed over in between is no change; what was
 * due and did not come is one.
 */
export function compareDeliveries(before: Plan, after: Plan): DeliveryDifference {
  const since = handedSince(before, after);
  const isDone = (communityId: string, lots: readonly string[], date: string) =>
    date < after.scenario.planningFrom && lots.some((lot) => (since.get(`${communityId} ${lot}`) ?? 0) > 0);
  const [was, is] = [gatherGoods(before, isDone), gatherGoods(after, () => false)];
  const changes = [...new Set([...was.keys(), ...is.keys()])].flatMap((key): DeliveryChange[] => {
    const [old, now] = [was.get(key) ?? NOTHING, is.get(key) ?? NOTHING];
    const code = codeOf(old, now);
    if (code === null) return [];
    const [communityId = '', group] = key.split('\n') as [string, DeliveryChange['group']];
    return [{ code, communityId, group, before: old.handOvers, after: now.handOvers, reasons: now.left }];
  });
  const dateOf = ({ before: old, after: now }: DeliveryChange) => (now[0] ?? old[0])?.date ?? '';
  const key = (change: DeliveryChange) => `${dateOf(change)} ${change.communityId} ${change.group}`;
  changes.sort((a, b) => ORDER.indexOf(a.code) - ORDER.indexOf(b.code) || (key(a) < key(b) ? -1 : 1));
  const promisesBroken = changes.filter(({ code, before: told }) => BROKEN.includes(code) && told.length > 0).length;
  const [sumBefore, sumAfter] = [before, after].map((plan) => totalsFrom(plan, after.scenario.planningFrom));
  const isSameSpan = before.scenario.planningFrom === after.scenario.planningFrom;
  return {
    changes,
    promisesBroken,
    promisesPrice: promisesBroken * after.delivery.promisePrice,
    costBefore: isSameSpan ? before.delivery.cost : null,
    costAfter: isSameSpan ? after.delivery.cost : null,
    kilometresBefore: sumBefore?.kilometres ?? 0,
    kilometresAfter: sumAfter?.kilometres ?? 0,
    vehicleDaysBefore: sumBefore?.days ?? 0,
    vehicleDaysAfter: sumAfter?.days ?? 0,
  };
}

function totalsFrom({ delivery: { trips } }: Plan, from: string) {
  const rows = [...trips.date.keys()].filter((trip) => (trips.date[trip] ?? '') >= from);
  return {
    kilometres: rows.reduce((sum, trip) => sum + (trips.kilometres[trip] ?? 0), 0),
    days: new Set(rows.map((trip) => `${trips.vehicle[trip]} ${trips.date[trip]}`)).size,
  };
}

function codeOf(old: Goods, now: Goods): DeliveryChangeCode | null {
  if (old.handOvers.length === 0 && now.handOvers.length === 0) return null;
  if (now.handOvers.length === 0) return now.left.length > 0 ? 'no-longer-served' : 'no-longer-given';
  // What comes is what people know: packs added since that find no vehicle break no promise.
  const more = packsOf(now) - packsOf(old);
  if (more < 0 && now.left.length > old.left.length) return 'no-longer-served';
  if (old.handOvers.length === 0 || (more > 0 && now.left.length < old.left.length)) return 'now-served';
  const differs = (keyOf: (at: HandOver) => string) => distinct(old, keyOf) !== distinct(now, keyOf);
  if (differs(({ date }) => date)) return 'other-day';
  if (differs(({ date, vehicleId }) => `${date} ${vehicleId}`)) return 'other-vehicle';
  if (more !== 0) return 'other-amount';
  const [told, planned] = [old.handOvers[0], now.handOvers[0]];
  return Math.abs((told?.arriveMinute ?? 0) - (planned?.arriveMinute ?? 0)) > SAME_HOUR_MINUTES ? 'other-hour' : null;
}

const packsOf = ({ handOvers }: Goods): number => handOvers.reduce((sum, one) => sum + one.packs, 0);
const distinct = ({ handOvers }: Goods, keyOf: (at: HandOver) => string): string =>
  [...new Set(handOvers.map(keyOf))].sort().join();

/** Goods of one kind for one community: hand-overs by date and hour, one a visit, and why what is left behind is. */
interface Goods {
  readonly handOvers: HandOver[];
  readonly left: UnservedReason[];
}

const NOTHING: Goods = { handOvers: [], left: [] };

function gatherGoods(
  { ids, allocation, delivery: { loads, trips, stops, unserved } }: Plan,
  isDone: (communityId: string, lots: readonly string[], date: string) => boolean,
): Map<string, Goods> {
  const found = new Map<string, Goods>();
  const goodsOf = (load: number): { readonly communityId: string; readonly goods: Goods } => {
    const consignment = loads.consignment[load] ?? -1;
    const communityId = ids.communities[allocation.consignments.community[consignment] ?? -1] ?? '';
    const key = `${communityId}\n${allocation.consignments.group[consignment]}`;
    const goods = found.get(key) ?? { handOvers: [], left: [] };
    found.set(key, goods);
    return { communityId, goods };
  };
  stops.loads.forEach((aboard, stop) => {
    const trip = stops.trip[stop] ?? -1;
    for (const load of aboard) {
      const { communityId, goods } = goodsOf(load);
      const lots = (loads.grants[load] ?? []).map((grant) => ids.lots[allocation.grants.lot[grant] ?? -1] ?? '');
      const date = trips.date[trip] ?? '';
      if (isDone(communityId, lots, date)) continue;
      const at = { date, vehicleId: ids.vehicles[trips.vehicle[trip] ?? -1] ?? '' };
      const packs = (loads.packs[load] ?? []).reduce((sum, count) => sum + count, 0);
      addVisit(goods.handOvers, { ...at, arriveMinute: stops.arriveMinute[stop] ?? 0, packs });
    }
  });
  unserved.load.forEach((load, row) => {
    goodsOf(load).goods.left.push(unserved.reason[row] as UnservedReason);
  });
  const key = ({ date, arriveMinute, vehicleId }: HandOver) =>
    `${date} ${String(arriveMinute).padStart(8)} ${vehicleId}`;
  for (const { handOvers } of found.values()) handOvers.sort((a, b) => (key(a) < key(b) ? -1 : 1));
  return found;
}

/** Loads that come with one vehicle on one day are one visit, at the hour of the first. */
function addVisit(visits: HandOver[], visit: HandOver): void {
  const at = visits.findIndex(({ date, vehicleId }) => date === visit.date && vehicleId === visit.vehicleId);
  const known = visits[at];
  if (!known) visits.push(visit);
  else {
    const arriveMinute = Math.min(known.arriveMinute, visit.arriveMinute);
    visits[at] = { ...known, arriveMinute, packs: known.packs + visit.packs };
  }
}

/** Packs kept by community and lot, by the later plan's records less those of the earlier. */
function handedSince(before: Plan, after: Plan): Map<string, number> {
  const since = new Map<string, number>();
  const add = ({ ids, handovers }: Plan, sign: number) =>
    handovers.date.forEach((_, i) => {
      const key = `${ids.communities[handovers.community[i] ?? -1]} ${ids.lots[handovers.lot[i] ?? -1]}`;
      since.set(key, (since.get(key) ?? 0) + sign * (handovers.packs[i] ?? 0));
    });
  add(after, 1);
  add(before, -1);
  return since;
}
