import type { DispatchTask, TaskLoad } from './dispatch-task.ts';
import { heatTrip, newTripHeat, type TripHeat } from './heat-trip.ts';
import { fitsColdBox } from './rules/cold-box.ts';
import { fitsPayload } from './rules/payload.ts';
import { newTripClock, type TripClock, timeTrip } from './time-trip.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Loads of a trip in the order of hand-over, and the ice it takes. */
export interface TripWish {
  readonly loads: readonly number[];
  readonly iceKg: number;
  /** When the vehicle stands ready to be loaded; NaN while not yet timed. */
  readonly readyMinute: number;
}

/** A trip that keeps every rule that concerns one trip alone. Never changed. */
export interface TripPlan extends TripWish {
  readonly returnMinute: number;
  readonly idleMinutes: number;
  readonly kg: number;
  readonly coolLitres: number;
  readonly inoculantKg: number;
  /** Kilometres, ice, and value not reached, in the scenario's currency. */
  readonly cost: number;
}

/** What one vehicle does on one day. Never changed: another plan takes its place. */
export interface SlotPlan {
  readonly trips: readonly TripPlan[];
  /** Equal versions mean equal plans. 0: stands idle. */
  readonly version: number;
  readonly iceKg: number;
  readonly cost: number;
  /** When the last trip is back; the start of loading while idle. */
  readonly readyMinute: number;
  /** Most minutes that more work could take without coming home too late. */
  readonly spareMinutes: number;
}

/** What trying out a plan needs: the task, who carries training, and room for one trip's clock and heat. */
export interface Trial {
  readonly task: DispatchTask;
  /** Load that carries the training of each community; -1 while nobody does. */
  readonly trainer: Int32Array;
  readonly clock: TripClock;
  readonly heat: TripHeat;
  versions: number;
}

export function newTrial(task: DispatchTask, communities: number): Trial {
  const mostLoads = task.loads.length;
  return {
    task,
    trainer: new Int32Array(communities).fill(-1),
    clock: newTripClock(mostLoads),
    heat: newTripHeat(mostLoads, task.survivalRates.length, task.storageLimits.length),
    versions: 0,
  };
}

export function idlePlan(slot: Slot): SlotPlan {
  const spareMinutes = Math.max(0, slot.latestBack - slot.loadsFrom);
  return { trips: [], version: 0, iceKg: 0, cost: 0, readyMinute: slot.loadsFrom, spareMinutes };
}

/**
 * Plans a vehicle-day from trips in order. Trips that are ready at the minute they were timed for are taken over as they are.
 *
 * @param guest load on trial that would carry its community's training; -1 where none
 * @returns null where a rule forbids it; the reason stands in `trial.clock.fault`, which is `none` for weight and volume
 */
export function planSlot(trial: Trial, slot: Slot, wishes: readonly TripWish[], guest: number): SlotPlan | null {
  const trips: TripPlan[] = [];
  let ready = slot.loadsFrom;
  let [cost, iceKg, idle] = [slot.dayCost, 0, 0];
  for (const wish of wishes) {
    if (wish.loads.length === 0) continue;
    const trip = wish.readyMinute === ready ? (wish as TripPlan) : planTrip(trial, slot, wish, ready, guest);
    if (!trip) return null;
    trips.push(trip);
    ready = trip.returnMinute;
    cost += trip.cost;
    iceKg += trip.iceKg;
    idle += trip.idleMinutes;
  }
  if (trips.length === 0) return idlePlan(slot);
  trial.versions++;
  const spareMinutes = slot.latestBack - ready + idle;
  return { trips, version: trial.versions, iceKg, cost, readyMinute: ready, spareMinutes };
}

function planTrip(trial: Trial, slot: Slot, wish: TripWish, readyMinute: number, guest: number): TripPlan | null {
  const { task, trainer, clock, heat } = trial;
  const { loads, iceKg } = wish;
  if (!timeTrip(task, slot, loads, readyMinute, trainer, guest, clock)) return null;
  if (!fitsPayload(clock.kg, slot.payloadKg) || !fitsColdBox(clock.coolLitres, slot.coolLitres)) return null;
  let cost = clock.kilometres * slot.kmCost + iceKg * slot.icePerKg;
  if (clock.inoculantKg > 0) {
    if (!heatTrip(task, slot, loads, iceKg, clock, heat)) return null;
    cost += heat.valueLost;
  }
  for (const load of loads) cost += (task.loads[load] as TaskLoad).dayCost[slot.day] as number;
  return {
    loads,
    iceKg,
    readyMinute,
    returnMinute: clock.returnMinute,
    idleMinutes: clock.idleMinutes,
    kg: clock.kg,
    coolLitres: clock.coolLitres,
    inoculantKg: clock.inoculantKg,
    cost,
  };
}
