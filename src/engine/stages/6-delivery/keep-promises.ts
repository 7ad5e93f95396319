import { type DispatchState, takeBack } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { insertInto, insertLoad } from './insertion.ts';
import { never, type Recreator } from './recreate.ts';
import { removeLoads } from './ruin.ts';
import { firstDayAfterSeed, lastDayBeforeInoculant } from './rules/seed-first.ts';

const TINY = 1e-7;
/** Rounds over all broken promises: each round can only lower the cost, and most end after one. */
const MOST_ROUNDS = 5;

/**
 * Brings goods back to the day their community was told wherever that costs less than the promise: what the search left
 * broken by chance is mended, what it broke for a reason stays.
 */
export function keepPromises(recreator: Recreator): void {
  const { state } = recreator;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const mended = brokenConsignments(state).filter((loads) => mend(recreator, loads));
    if (mended.length === 0) return;
  }
}

/** Loads of each consignment that has some on another day than told, or none served. */
function brokenConsignments({ task, dayOf, pinned }: DispatchState): number[][] {
  const byConsignment = new Map<number, number[]>();
  task.loads.forEach(({ consignment, promisedDay }, load) => {
    if (promisedDay === null || pinned[load] === 1) return;
    byConsignment.set(consignment, [...(byConsignment.get(consignment) ?? []), load]);
  });
  return [...byConsignment.values()].filter((loads) =>
    loads.some((load) => dayOf[load] !== (task.loads[load] as TaskLoad).promisedDay),
  );
}

/** Tries each vehicle-day of the day told, the whole consignment together; keeps the cheapest that is cheaper than now. */
function mend({ state, memory, candidates }: Recreator, loads: readonly number[]): boolean {
  const { task } = state;
  const { depot, promisedDay } = task.loads[loads[0] as number] as TaskLoad;
  const row = depot * (task.planningDays + 1) + (promisedDay ?? 0);
  const before = state.cost;
  const attempt = (slot: number): number => {
    const served = [...state.slotOf.keys()].filter((load) => state.slotOf[load] !== -1);
    state.log.length = 0;
    removeLoads(state, loads);
    const fits = loads.every((load) => mayCome(state, load, slot) && insertInto(state, memory, load, slot));
    if (!fits) return Number.POSITIVE_INFINITY;
    for (const load of served) {
      if (state.slotOf[load] === -1) insertLoad(state, memory, candidates, load, never);
    }
    return state.cost;
  };
  const undo = () => {
    takeBack(state);
    state.cost = before;
  };
  let [best, bestCost] = [-1, before - TINY];
  for (let slot = task.slotOffsets[row] as number; slot < (task.slotOffsets[row + 1] as number); slot++) {
    const cost = attempt(slot);
    undo();
    if (cost < bestCost) [best, bestCost] = [slot, cost];
  }
  if (best < 0) return false;
  attempt(best);
  state.log.length = 0;
  return true;
}

function mayCome({ task, dayOf }: DispatchState, load: number, slot: number): boolean {
  const day = task.slots[slot]?.day ?? -1;
  const { dayCost, lock } = task.loads[load] as TaskLoad;
  if (lock !== null && lock.vehicle !== task.slots[slot]?.vehicle) return false;
  const inOrder =
    day >= firstDayAfterSeed(task.seedLinks, load, dayOf) && day <= lastDayBeforeInoculant(task.seedLinks, load, dayOf);
  return inOrder && (dayCost[day] as number) < Number.POSITIVE_INFINITY;
}
