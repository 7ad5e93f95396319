import { type DispatchState, iceLeftFor } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { planSlot, type SlotPlan, type TripPlan, type TripWish } from './plan-slot.ts';
import { fitsColdBox } from './rules/cold-box.ts';
import { iceForTrip } from './rules/ice-stock.ts';
import { fitsPayload } from './rules/payload.ts';
import type { Slot } from './vehicle-day-slots.ts';

/**
 * One way to put a load into a slot's day: before the load at `position` of a trip, or on a trip of its own before that trip.
 * `bound`: what it costs at least.
 */
export interface Opening {
  readonly trip: number;
  readonly position: number;
  readonly bound: number;
}

/** Price of what no rule allows. */
export const NEVER = Number.POSITIVE_INFINITY;
/** Trip and position in one number: trip * POSITIONS + position. The last position means a trip of its own. */
export const POSITIONS = 4096;
const ALONE = POSITIONS - 1;
/** Minutes added up in another order may differ by so much. */
const SLACK_MINUTES = 1e-6;

/** Goes through every opening that weight, volume and a glance at the time do not rule out; the least bound. */
export function listOpenings(
  state: DispatchState,
  index: number,
  slot: Slot,
  plan: SlotPlan,
  openings: Opening[] | null,
): number {
  const load = state.task.loads[index] as TaskLoad;
  if (!fitsPayload(load.kg, slot.payloadKg) || !fitsColdBox(load.coolLitres, slot.coolLitres)) return NEVER;
  const training = wouldTrain(state, load) ? state.task.trainingMinutes : 0;
  const handling = load.kg * slot.loadingMinutesPerKg + load.unloadingMinutes + training;
  let least = openTripOfItsOwn(load, slot, plan, handling, openings);
  for (let t = 0; t < plan.trips.length; t++) {
    const trip = plan.trips[t] as TripPlan;
    if (!fitsPayload(trip.kg + load.kg, slot.payloadKg)) continue;
    if (!fitsColdBox(trip.coolLitres + load.coolLitres, slot.coolLitres)) continue;
    least = Math.min(least, openTrip(state, load, slot, plan, t, handling, openings));
  }
  return least;
}

function openTripOfItsOwn(
  load: TaskLoad,
  slot: Slot,
  plan: SlotPlan,
  handlingMinutes: number,
  openings: Opening[] | null,
): number {
  const { at, size, minutes, kilometres } = slot.legs;
  const out = at[load.place] as number;
  const home = at[load.place * size] as number;
  if (out < 0 || home < 0) return NEVER;
  const journey = (minutes[out] as number) + (minutes[home] as number) + slot.serviceMinutes + handlingMinutes;
  if (journey > plan.spareMinutes + SLACK_MINUTES) return NEVER;
  const km = (kilometres[out] as number) + (kilometres[home] as number);
  const day = plan.trips.length === 0 ? slot.dayCost : 0;
  const bound = km * slot.kmCost + day + (load.dayCost[slot.day] as number);
  if (openings) for (let trip = 0; trip <= plan.trips.length; trip++) openings.push({ trip, position: ALONE, bound });
  return bound;
}

/** Openings between the stops of one trip. Loads to one place stay together, the new one last. */
function openTrip(
  state: DispatchState,
  load: TaskLoad,
  slot: Slot,
  plan: SlotPlan,
  trip: number,
  handlingMinutes: number,
  openings: Opening[] | null,
): number {
  const { at, size, minutes, kilometres } = slot.legs;
  const aboard = (plan.trips[trip] as TripPlan).loads;
  const here = load.place;
  const dayCost = load.dayCost[slot.day] as number;
  let least = NEVER;
  let after = 0;
  for (let position = 0; position <= aboard.length; position++) {
    const before = after;
    after = position < aboard.length ? (state.task.loads[aboard[position] as number] as TaskLoad).place : 0;
    const splitsStop = before === after && position > 0;
    if (after === here || (splitsStop && before !== here)) continue;
    let bound = dayCost;
    let extra = handlingMinutes;
    if (before !== here) {
      const there = at[before * size + here] as number;
      const on = at[here * size + after] as number;
      if (there < 0 || on < 0) continue;
      const direct = at[before * size + after] as number;
      extra += slot.serviceMinutes + (minutes[there] as number) + (minutes[on] as number) - (minutes[direct] as number);
      const km = (kilometres[there] as number) + (kilometres[on] as number) - (kilometres[direct] as number);
      bound += km * slot.kmCost;
    }
    if (extra > plan.spareMinutes + SLACK_MINUTES) continue;
    if (bound < least) least = bound;
    openings?.push({ trip, position, bound });
  }
  return least;
}

/** The slot's plan with the load put in at a place. */
export function planAt(state: DispatchState, index: number, slotIndex: number, where: number): SlotPlan | null {
  const slot = state.task.slots[slotIndex] as Slot;
  const load = state.task.loads[index] as TaskLoad;
  const { trips } = state.plans[slotIndex] as SlotPlan;
  const trip = Math.floor(where / POSITIONS);
  const position = where % POSITIONS;
  const host = position === ALONE ? null : (trips[trip] as TripPlan);
  const loads = host ? [...host.loads.slice(0, position), index, ...host.loads.slice(position)] : [index];
  const needsIce = load.inoculantKg > 0 && (host === null || host.inoculantKg === 0);
  const iceKg = needsIce ? iceForTrip(slot.boxIceKg, iceLeftFor(state, slot)) : (host?.iceKg ?? 0);
  const wishes: TripWish[] = [...trips];
  wishes.splice(trip, host ? 1 : 0, { loads, iceKg, readyMinute: Number.NaN });
  return planSlot(state.trial, slot, wishes, wouldTrain(state, load) ? index : -1);
}

/** Would the load carry its community's training, if it came? */
export function wouldTrain(state: DispatchState, load: TaskLoad): boolean {
  return load.mayTrain && (state.trial.trainer[load.community] as number) < 0;
}
