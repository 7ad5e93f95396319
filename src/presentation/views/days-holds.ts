import type { Decision, Plan } from '../../engine/index.ts';

/** The `lock` decisions that hold all that is handed over at a stop on this vehicle and day. */
export function locksAt(
  { delivery, allocation, ids }: Plan,
  stop: number,
  vehicleId: string,
  date: string,
): Decision[] {
  const { community, group } = allocation.consignments;
  const locks = new Map<string, Decision>();
  for (const load of delivery.stops.loads[stop] ?? []) {
    const consignment = delivery.loads.consignment[load] ?? -1;
    const communityId = ids.communities[community[consignment] ?? -1];
    if (communityId === undefined) continue;
    const commodities = ({ dry: ['seed'], inoculant: ['inoculant'], both: ['seed', 'inoculant'] } as const)[
      group[consignment] ?? 'both'
    ];
    for (const commodity of commodities)
      locks.set(`${communityId} ${commodity}`, { kind: 'lock', communityId, commodity, vehicleId, date });
  }
  return [...locks.values()];
}

/** Whether the decisions hold all of these. */
export const areHeld = (decisions: readonly Decision[], locks: readonly Decision[]): boolean =>
  locks.length > 0 && locks.every((lock) => decisions.some((one) => isSameLock(one, lock)));

const isSameLock = (a: Decision, b: Decision): boolean =>
  a.kind === 'lock' &&
  b.kind === 'lock' &&
  a.communityId === b.communityId &&
  a.commodity === b.commodity &&
  a.vehicleId === b.vehicleId &&
  a.date === b.date;

/** Whether the decisions keep a vehicle away on a day. */
export const staysAway = (decisions: readonly Decision[], id: string, date: string): boolean =>
  decisions.some((one) => one.kind === 'vehicle-away' && one.vehicleId === id && one.from <= date && date <= one.to);
