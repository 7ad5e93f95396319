import type { Decision, Plan, Scenario } from '../../engine/index.ts';
import { alongRoad } from '../along-road.ts';
import { placeName } from '../place-name.ts';
import { communitiesOfStop, type DayStop } from './days-fleet.ts';

/** What is handed over at a stop, and the decisions that would hold it there. */
export interface StopGoods {
  readonly place: string;
  readonly communities: readonly string[];
  readonly seedKg: number;
  readonly inoculantPacks: number;
  readonly fertiliserKg: number;
  /** `lock` entries that hold every hand-over of this stop on this vehicle and day; none for fertiliser, which nothing holds. */
  readonly locks: readonly Decision[];
}

export function stopGoods(plan: Plan, scenario: Scenario, stop: DayStop, vehicleId: string, date: string): StopGoods {
  const communities = communitiesOfStop(plan, stop.row);
  const lots = handedLots(plan, scenario, stop.row);
  return {
    place: placeName(plan, scenario, stop.place),
    communities: communities.map((community) => scenario.communities[community]?.name ?? ''),
    seedKg: sum(lots.filter(({ kind }) => kind === 'seed').map(({ kg }) => kg)),
    inoculantPacks: sum(lots.filter(({ kind }) => kind === 'inoculant').map(({ packs }) => packs)),
    fertiliserKg: sum(lots.filter(({ kind }) => kind === 'fertiliser').map(({ kg }) => kg)),
    locks: locksOf(plan, stop.row, vehicleId, date),
  };
}

interface HandedLot {
  readonly kind: string;
  readonly packs: number;
  readonly kg: number;
}

/** Consignments handed over at a stop that a decision can move. */
export function consignmentsOfStop({ delivery, allocation }: Plan, stop: DayStop): number[] {
  const loads = delivery.stops.loads[stop.row] ?? [];
  const all = new Set(loads.map((load) => delivery.loads.consignment[load] ?? -1));
  return [...all].filter((consignment) => allocation.consignments.group[consignment] !== 'fertiliser');
}

/** Closes the last road on the way to a stop from a day to the end of planning; null where no road is driven. */
export function closeWay(plan: Plan, scenario: Scenario, stop: DayStop, date: string): Decision | null {
  const leg = plan.delivery.legs[plan.delivery.stops.leg[stop.row] ?? -1];
  const last = leg?.pieces.at(-1);
  if (last === undefined) return null;
  const [road, from, to] = last;
  const [position] = alongRoad(scenario.roads[road]?.positions ?? [], (from + to) / 2, to);
  if (position === undefined) return null;
  return { kind: 'road-closed', lon: position[0], lat: position[1], from: date, to: plan.scenario.planningTo };
}

function handedLots({ delivery, allocation, ids }: Plan, scenario: Scenario, stop: number): HandedLot[] {
  const products = new Map(scenario.products.map((product) => [product.id, product]));
  return (delivery.stops.loads[stop] ?? []).flatMap((load) =>
    (delivery.loads.grants[load] ?? []).map((grant, i) => {
      const lot = scenario.lots.find(({ id }) => id === ids.lots[allocation.grants.lot[grant] ?? -1]);
      const product = lot && products.get(lot.productId);
      const packs = delivery.loads.packs[load]?.[i] ?? 0;
      return { kind: product?.kind ?? '', packs, kg: (packs * (product?.packG ?? 0)) / 1000 };
    }),
  );
}

/** What a lock names of each group; fertiliser comes where there is room and is locked by nobody. */
const LOCKED_BY = {
  dry: ['seed'],
  inoculant: ['inoculant'],
  both: ['seed', 'inoculant'],
  fertiliser: [],
} as const;

function locksOf({ delivery, allocation, ids }: Plan, stop: number, vehicleId: string, date: string): Decision[] {
  const locks = new Map<string, Decision>();
  for (const load of delivery.stops.loads[stop] ?? []) {
    const consignment = delivery.loads.consignment[load] ?? -1;
    const communityId = ids.communities[allocation.consignments.community[consignment] ?? -1];
    if (communityId === undefined) continue;
    for (const commodity of LOCKED_BY[allocation.consignments.group[consignment] ?? 'fertiliser']) {
      locks.set(`${communityId} ${commodity}`, { kind: 'lock', communityId, commodity, vehicleId, date });
    }
  }
  return [...locks.values()];
}

/** Whether decisions keep a vehicle away on a day. */
export const isAway = (decisions: readonly Decision[], vehicleId: string, date: string): boolean =>
  decisions.some(
    (one) => one.kind === 'vehicle-away' && one.vehicleId === vehicleId && one.from <= date && date <= one.to,
  );

/** Whether each of the locks stands among the decisions. */
export const isHeld = (decisions: readonly Decision[], locks: readonly Decision[]): boolean =>
  locks.length > 0 &&
  locks.every((lock) =>
    decisions.some(
      (one) =>
        one.kind === 'lock' &&
        lock.kind === 'lock' &&
        one.communityId === lock.communityId &&
        one.commodity === lock.commodity &&
        one.vehicleId === lock.vehicleId &&
        one.date === lock.date,
    ),
  );

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
