import { type DispatchState, iceLeftFor, setLoad, setPlan } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { listOpenings, NEVER, type Opening, POSITIONS, planAt, wouldTrain } from './openings.ts';
import type { SlotPlan } from './plan-slot.ts';
import { iceForTrip } from './rules/ice-stock.ts';
import { firstDayAfterSeed, lastDayBeforeInoculant } from './rules/seed-first.ts';
import type { Slot } from './vehicle-day-slots.ts';

/**
 * The one place where the price of bringing a load with a vehicle-day is made. First a bound, from kilometres, the worth of the
 * day and a glance at weight and time, kept per load and slot as long as the slot's plan is the same; then, only for the slots
 * whose bound is best, the exact price with the clock and the heat of the whole day.
 */
export interface InsertionMemory {
  /** First entry of each load; then one entry for each slot of its depot. */
  readonly base: Int32Array;
  /** First slot of each depot. */
  readonly firstSlot: Int32Array;
  readonly price: Float64Array;
  /** What the price was made for: the plan's version, whether ice was left, whether the load would train. 0: nothing yet. */
  readonly stamp: Float64Array;
  /** Where the exact price stands: trip * POSITIONS + position + 1; 0 while `price` is only a bound. */
  readonly where: Int32Array;
}

export function newMemory(state: DispatchState): InsertionMemory {
  const { task } = state;
  const firstSlot = Int32Array.from(task.rounds, (_, depot) => task.slotOffsets[depot * (task.planningDays + 1)] ?? 0);
  const slotsOf = (depot: number) =>
    (task.slotOffsets[(depot + 1) * (task.planningDays + 1)] as number) - (firstSlot[depot] as number);
  const base = new Int32Array(task.loads.length);
  let size = 0;
  task.loads.forEach((load, i) => {
    base[i] = size;
    size += slotsOf(load.depot);
  });
  return {
    base,
    firstSlot,
    price: new Float64Array(size),
    stamp: new Float64Array(size),
    where: new Int32Array(size),
  };
}

/** Slots met while a load looks for its place; reused. */
export interface Candidates {
  count: number;
  readonly slot: Int32Array;
  readonly price: Float64Array;
}

export function newCandidates(slots: number): Candidates {
  return { count: 0, slot: new Int32Array(slots), price: new Float64Array(slots) };
}

/**
 * Serves a load where it is cheapest, if anywhere for less than leaving it behind.
 *
 * @param skip asked for each slot; true leaves it out this time (a blink)
 */
export function insertLoad(
  state: DispatchState,
  memory: InsertionMemory,
  candidates: Candidates,
  index: number,
  skip: () => boolean,
): boolean {
  gatherCandidates(state, memory, candidates, index, skip);
  const load = state.task.loads[index] as TaskLoad;
  let tried = -1;
  let plan: SlotPlan | null = null;
  for (;;) {
    let best = -1;
    let bestPrice = load.unservedCost;
    for (let i = 0; i < candidates.count; i++) {
      if ((candidates.price[i] as number) < bestPrice) {
        best = i;
        bestPrice = candidates.price[i] as number;
      }
    }
    if (best < 0) return false;
    const slot = candidates.slot[best] as number;
    const entry = entryOf(memory, load, index, slot);
    const known = memory.where[entry] as number;
    if (known === 0) plan = findBest(state, memory, index, slot);
    else if (slot !== tried) plan = planAt(state, index, slot, known - 1);
    tried = slot;
    const exact = memory.price[entry] as number;
    if (plan && exact <= bestPrice) {
      setPlan(state, slot, plan);
      setLoad(state, index, slot);
      return true;
    }
    candidates.price[best] = plan ? exact : NEVER;
  }
}

/** Puts a load into one vehicle-day at its cheapest place, whatever that costs; false where every place breaks a rule. */
export function insertInto(state: DispatchState, memory: InsertionMemory, index: number, slot: number): boolean {
  priceOf(state, memory, index, slot);
  const plan = findBest(state, memory, index, slot);
  if (!plan) return false;
  setPlan(state, slot, plan);
  setLoad(state, index, slot);
  return true;
}

function gatherCandidates(
  state: DispatchState,
  memory: InsertionMemory,
  candidates: Candidates,
  index: number,
  skip: () => boolean,
): void {
  const { task, plans } = state;
  const load = task.loads[index] as TaskLoad;
  const from = Math.max(load.earliest, firstDayAfterSeed(task.seedLinks, index, state.dayOf));
  const to = Math.min(load.latest, lastDayBeforeInoculant(task.seedLinks, index, state.dayOf), task.planningDays - 1);
  candidates.count = 0;
  const row = load.depot * (task.planningDays + 1);
  for (let day = from; day <= to; day++) {
    if (load.dayCost[day] === NEVER) continue;
    let idleGroup = -1;
    const end = task.slotOffsets[row + day + 1] as number;
    for (let slot = task.slotOffsets[row + day] as number; slot < end; slot++) {
      const { group, vehicle } = task.slots[slot] as Slot;
      if (load.lock !== null && load.lock.vehicle !== vehicle) continue;
      if ((plans[slot] as SlotPlan).version === 0) {
        if (group === idleGroup) continue;
        idleGroup = group;
      }
      if (skip()) continue;
      const price = priceOf(state, memory, index, slot);
      if (price >= load.unservedCost) continue;
      candidates.slot[candidates.count] = slot;
      candidates.price[candidates.count++] = price;
    }
  }
}

function entryOf(memory: InsertionMemory, load: TaskLoad, index: number, slot: number): number {
  return (memory.base[index] as number) + slot - (memory.firstSlot[load.depot] as number);
}

/** The price kept for a load and slot, or a new bound where the slot's plan has changed. */
function priceOf(state: DispatchState, memory: InsertionMemory, index: number, slotIndex: number): number {
  const load = state.task.loads[index] as TaskLoad;
  const slot = state.task.slots[slotIndex] as Slot;
  const plan = state.plans[slotIndex] as SlotPlan;
  const ice = load.inoculantKg > 0 && iceForTrip(slot.boxIceKg, iceLeftFor(state, slot)) > 0 ? 1 : 0;
  const stamp = plan.version * 4 + ice * 2 + (wouldTrain(state, load) ? 1 : 0) + 1;
  const entry = entryOf(memory, load, index, slotIndex);
  if (memory.stamp[entry] !== stamp) {
    memory.stamp[entry] = stamp;
    memory.where[entry] = 0;
    memory.price[entry] = listOpenings(state, index, slot, plan, null);
  }
  return memory.price[entry] as number;
}

/** Exact best price of a slot, written into the memory; the plan that has it, null where every opening breaks a rule. */
function findBest(state: DispatchState, memory: InsertionMemory, index: number, slotIndex: number): SlotPlan | null {
  const slot = state.task.slots[slotIndex] as Slot;
  const before = state.plans[slotIndex] as SlotPlan;
  const entry = entryOf(memory, state.task.loads[index] as TaskLoad, index, slotIndex);
  const openings: Opening[] = [];
  listOpenings(state, index, slot, before, openings);
  openings.sort((a, b) => a.bound - b.bound || a.trip - b.trip || a.position - b.position);
  let best: SlotPlan | null = null;
  let bestPrice = NEVER;
  for (const { trip, position, bound } of openings) {
    if (bound >= bestPrice) break;
    const plan = planAt(state, index, slotIndex, trip * POSITIONS + position);
    if (!plan || plan.cost - before.cost >= bestPrice) continue;
    best = plan;
    bestPrice = plan.cost - before.cost;
    memory.where[entry] = trip * POSITIONS + position + 1;
  }
  memory.price[entry] = bestPrice;
  return best;
}
