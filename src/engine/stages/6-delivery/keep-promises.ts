import { type DispatchState, dayOfLoad, slotOf } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { insertInto, insertLoad, removeLoads } from './fill-up.ts';
import { beginStep, takeBack } from './search/change-rows.ts';
import { firstDay, lastDay } from './search/ties.ts';

const TINY = 1e-7;
/** Rounds over all broken promises: each round can only lower the cost, and most end after one. */
const MOST_ROUNDS = 5;

/**
 * Brings goods back to the day their community was told wherever that costs less than the promise: what the search left
 * broken by chance is mended, what it broke for a reason stays.
 */
export function keepPromises(state: DispatchState): void {
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const mended = brokenConsignments(state).filter((loads) => mend(state, loads));
    if (mended.length === 0) return;
  }
}

/** Loads of each consignment that has some on another day than told, or none served. */
function brokenConsignments(state: DispatchState): number[][] {
  const { task, ties } = state;
  const byConsignment = new Map<number, number[]>();
  task.loads.forEach(({ consignment, promisedDay }, load) => {
    if (promisedDay === null || ties.pinned[load] === 1) return;
    byConsignment.set(consignment, [...(byConsignment.get(consignment) ?? []), load]);
  });
  return [...byConsignment.values()].filter((loads) =>
    loads.some((load) => dayOfLoad(state, load) !== (task.loads[load] as TaskLoad).promisedDay),
  );
}

/** Tries each vehicle-day of the day told, the whole consignment together; keeps the cheapest that is cheaper than now. */
function mend(state: DispatchState, loads: readonly number[]): boolean {
  const { task, rows } = state;
  const { depot, promisedDay } = task.loads[loads[0] as number] as TaskLoad;
  const row = depot * (task.planningDays + 1) + (promisedDay ?? 0);
  const served = [...task.loads.keys()].filter((load) => slotOf(state, load) !== -1);
  const attempt = (slot: number): number => {
    beginStep(rows);
    removeLoads(state, loads);
    const isOff = loads.every((load) => slotOf(state, load) === -1);
    if (!isOff || !loads.every((load) => mayCome(state, load, slot) && insertInto(state, load, slot)))
      return Number.POSITIVE_INFINITY;
    for (const load of served) if (slotOf(state, load) === -1) insertLoad(state, load);
    return rows.cost;
  };
  let [best, bestCost] = [-1, rows.cost - TINY];
  for (let slot = task.slotOffsets[row] as number; slot < (task.slotOffsets[row + 1] as number); slot++) {
    const cost = attempt(slot);
    takeBack(rows);
    if (cost < bestCost) [best, bestCost] = [slot, cost];
  }
  if (best < 0) return false;
  attempt(best);
  return true;
}

function mayCome({ task, rows, ties }: DispatchState, load: number, slot: number): boolean {
  const day = task.slots[slot]?.day ?? -1;
  const { dayCost, lock } = task.loads[load] as TaskLoad;
  if (lock !== null && lock.vehicle !== task.slots[slot]?.vehicle) return false;
  const inOrder = day >= firstDay(rows, ties, load) && day <= lastDay(rows, ties, load);
  return inOrder && (dayCost[day] as number) < Number.POSITIVE_INFINITY;
}
