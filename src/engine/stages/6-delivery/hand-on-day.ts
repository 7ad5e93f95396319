import type { RandomStream } from '../../numerics/random-stream.ts';
import { type DispatchState, iceLeftFor, setLoad, setPlan, takeBack } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { NEVER } from './openings.ts';
import { idlePlan, planSlot, type SlotPlan, type TripWish } from './plan-slot.ts';
import { iceForTrip } from './rules/ice-stock.ts';
import { firstDayAfterSeed, lastDayBeforeInoculant } from './rules/seed-first.ts';
import type { Slot } from './vehicle-day-slots.ts';

/**
 * Gives all that one vehicle-day does to another that stands idle, whatever that costs: insertion alone seldom does, because it pays
 * for a vehicle-day with its first load, and for a whole day's promises one by one.
 *
 * @param around loads of whose vehicle-days one is taken; null: any
 * @returns whether it was done; to be called first in a step
 */
export function handOnDay(state: DispatchState, random: RandomStream, around: readonly number[] | null): boolean {
  const { task, plans } = state;
  const from = around
    ? (state.slotOf[around[random.below(around.length)] as number] as number)
    : drawSlot(state, random, (slot) => (plans[slot] as SlotPlan).version > 0);
  if (from < 0) return false;
  const { depot } = task.slots[from] as Slot;
  const to = drawSlot(
    state,
    random,
    (slot) => (plans[slot] as SlotPlan).version === 0 && (task.slots[slot] as Slot).depot === depot,
  );
  if (to < 0) return false;
  if (giveDay(state, from, to)) return true;
  takeBack(state);
  return false;
}

/** Tries a few slots for one that is as wanted; -1 where none of them is. */
function drawSlot({ task }: DispatchState, random: RandomStream, wanted: (slot: number) => boolean): number {
  for (let i = 0; i < 8 && task.slots.length > 0; i++) {
    const slot = random.below(task.slots.length);
    if (wanted(slot)) return slot;
  }
  return -1;
}

function giveDay(state: DispatchState, from: number, to: number): boolean {
  const { task, trial } = state;
  const slot = task.slots[to] as Slot;
  const { trips } = state.plans[from] as SlotPlan;
  const loads = trips.flatMap((trip) => trip.loads);
  const trainers = new Set(loads.filter((load) => trial.trainer[(task.loads[load] as TaskLoad).community] === load));
  if (loads.some((load) => state.pinned[load] === 1 || !mayCome(task.loads[load] as TaskLoad, slot))) return false;
  setPlan(state, from, idlePlan(task.slots[from] as Slot));
  for (const load of loads) setLoad(state, load, -1);
  // Who trained goes on to train: the first of a community's loads to be served does.
  for (const load of trainers) setLoad(state, load, to);
  for (const load of loads) if (!trainers.has(load)) setLoad(state, load, to);
  for (const load of loads) {
    if (slot.day < firstDayAfterSeed(task.seedLinks, load, state.dayOf)) return false;
    if (slot.day > lastDayBeforeInoculant(task.seedLinks, load, state.dayOf)) return false;
  }
  let left = iceLeftFor(state, slot);
  const wishes = trips.map((trip): TripWish => {
    const iceKg = trip.inoculantKg > 0 ? iceForTrip(slot.boxIceKg, left) : 0;
    left -= iceKg;
    return { loads: trip.loads, iceKg, readyMinute: Number.NaN };
  });
  const plan = planSlot(trial, slot, wishes, -1);
  if (!plan) return false;
  setPlan(state, to, plan);
  return true;
}

function mayCome({ dayCost, lock }: TaskLoad, slot: Slot): boolean {
  return dayCost[slot.day] !== NEVER && (lock === null || lock.vehicle === slot.vehicle);
}
