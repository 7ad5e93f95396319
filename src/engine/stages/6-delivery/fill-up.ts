import { type DispatchState, slotOf } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { beginStep, takeBack } from './search/change-rows.ts';
import { NEVER } from './search/find-place.ts';
import { judgePrice, putAt, takeOut } from './search/judge-places.ts';
import { renewPrice } from './search/price-insertion.ts';
import { insertCheapest } from './search/put-back.ts';
import { removeLoads as removeFromRows } from './search/remove-strings.ts';
import { setWork, wouldTrain } from './search/ties.ts';

/** Below any price: the price is wanted, and nothing put in place. */
const NO_PRICE = Number.NEGATIVE_INFINITY;
/** So many slots are looked at before one is passed over: more than there ever are. */
const NO_BLINK = 1 << 30;

/** Serves whatever still fits without moving anything, narrowest window first, then the dearest to leave behind, until nothing does. */
export function fillUp(state: DispatchState, hopeful: Uint8Array): void {
  const { loads, seedLinks } = state.task;
  const waits = (index: number) => ((seedLinks.dryOf[index] as readonly number[]).length > 0 ? 1 : 0);
  const window = (index: number) => (loads[index] as TaskLoad).latest - (loads[index] as TaskLoad).earliest;
  const cost = (index: number) => (loads[index] as TaskLoad).unservedCost;
  for (let served = -1; served !== 0; ) {
    served = 0;
    beginStep(state.rows);
    const absent = absentLoads(state, hopeful).sort(
      (a, b) => waits(a) - waits(b) || window(a) - window(b) || cost(b) - cost(a) || a - b,
    );
    for (const load of absent) if (insertLoad(state, load)) served++;
  }
}

/** Loads left behind that some vehicle-day could bring on its own. */
export function absentLoads(state: DispatchState, hopeful: Uint8Array): number[] {
  return [...state.task.loads.keys()].filter((load) => slotOf(state, load) === -1 && hopeful[load] === 1);
}

/** Serves a load where it is cheapest, if anywhere for less than leaving it behind. */
export function insertLoad({ rows, search }: DispatchState, load: number): boolean {
  search.blinks.slotsLeft = NO_BLINK;
  const served = insertCheapest(rows, search.memory, search.blinks, load, search.random);
  search.blinks.slotsLeft = 0;
  return served;
}

/** Puts a load into one vehicle-day at its cheapest place, whatever that costs; false where every place breaks a rule. */
export function insertInto({ rows, search, ties, judge }: DispatchState, load: number, slot: number): boolean {
  const { memory } = search;
  setWork(rows, ties, load, wouldTrain(ties, load));
  const mark = judge.markOf(rows, load, rows.shelfOf[slot] as number);
  const entry = (memory.base[load] as number) + slot;
  memory.price[entry] = NEVER;
  renewPrice(rows, memory, entry, load, slot, (rows.version[slot] as number) + mark);
  judgePrice(rows, memory, load, slot, NO_PRICE);
  if (memory.price[entry] === NEVER) return false;
  if (putAt(rows, load, slot, memory.where[entry] as number)) return true;
  takeOut(rows, load, slot);
  return false;
}

/** Takes loads off their vehicle-days, and whatever may not stay without them; takes the step back where that cannot be done. */
export function removeLoads({ rows, search }: DispatchState, loads: readonly number[]): void {
  search.ruins.count = 0;
  if (!removeFromRows(rows, search.ruins, loads)) takeBack(rows);
}
