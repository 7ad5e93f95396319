import { type DispatchState, iceLeftFor } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { planSlot, type SlotPlan, type TripPlan, type TripWish } from './plan-slot.ts';
import { fitsColdBox } from './rules/cold-box.ts';
import { iceForTrip } from './rules/ice-stock.ts';
import { fitsPayload } from './rules/payload.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** One way to put a load into a slot's day. Trips and positions count from 0; `fresh` starts a trip of its own there. */
export interface Opening {
  trip: number;
  position: number;
  bound: number;
}

/** Price of what no rule allows. */
export const NEVER = Number.POSITIVE_INFINITY;
/** Positions within a trip, and one for a trip of its own. */
export const PLACES = 4096;
const FRESH = PLACES - 2;
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
  const { loads, trainingMinutes } = state.task;
  const load = loads[index] as TaskLoad;
  const { at, size, minutes, kilometres } = slot.legs;
  if (!fitsPayload(load.kg, slot.payloadKg) || !fitsColdBox(load.coolLitres, slot.coolLitres)) return NEVER;
  const x = load.place;
  const out = at[x] as number;
  const home = at[x * size] as number;
  const dayCost = load.dayCost[slot.day] as number;
  const handling =
    load.kg * slot.loadingMinutesPerKg + load.unloadingMinutes + (wouldTrain(state, load) ? trainingMinutes : 0);
  let least = NEVER;
  if (out >= 0 && home >= 0) {
    const journey = (minutes[out] as number) + (minutes[home] as number) + slot.serviceMinutes + handling;
    if (journey <= plan.spareMinutes + SLACK_MINUTES) {
      const km = (kilometres[out] as number) + (kilometres[home] as number);
      least = km * slot.kmCost + dayCost + (plan.trips.length === 0 ? slot.dayCost : 0);
      for (let trip = plan.trips.length; openings !== null && trip >= 0; trip--) {
        openings.push({ trip, position: FRESH, bound: least });
      }
    }
  }
  for (let t = 0; t < plan.trips.length; t++) {
    const trip = plan.trips[t] as TripPlan;
    if (!fitsPayload(trip.kg + load.kg, slot.payloadKg)) continue;
    if (!fitsColdBox(trip.coolLitres + load.coolLitres, slot.coolLitres)) continue;
    let before = 0;
    for (let position = 0; position <= trip.loads.length; position++) {
      const place = before;
      const after = position < trip.loads.length ? (loads[trip.loads[position] as number] as TaskLoad).place : 0;
      before = after;
      if (after === x || (place === after && position > 0 && place !== x)) continue;
      let bound = dayCost;
      let extra = handling;
      if (place !== x) {
        const there = at[place * size + x] as number;
        const on = at[x * size + after] as number;
        if (there < 0 || on < 0) continue;
        const direct = at[place * size + after] as number;
        extra +=
          slot.serviceMinutes + (minutes[there] as number) + (minutes[on] as number) - (minutes[direct] as number);
        bound +=
          ((kilometres[there] as number) + (kilometres[on] as number) - (kilometres[direct] as number)) * slot.kmCost;
      }
      if (extra > plan.spareMinutes + SLACK_MINUTES) continue;
      if (bound < least) least = bound;
      openings?.push({ trip: t, position, bound });
    }
  }
  return least;
}

/** The slot's plan with the load put in at a place. */
export function planAt(state: DispatchState, index: number, slotIndex: number, where: number): SlotPlan | null {
  const slot = state.task.slots[slotIndex] as Slot;
  const load = state.task.loads[index] as TaskLoad;
  const { trips } = state.plans[slotIndex] as SlotPlan;
  const trip = Math.floor(where / PLACES);
  const position = where % PLACES;
  const host = position === FRESH ? null : (trips[trip] as TripPlan);
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
