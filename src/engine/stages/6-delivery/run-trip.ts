import type { DispatchTask } from './dispatch-task.ts';
import { heatTrip, newTripHeat, type TripHeat } from './heat-trip.ts';
import { fitsColdBox } from './rules/cold-box.ts';
import { fitsPayload } from './rules/payload.ts';
import { newTripClock, type TripClock, timeTrip } from './time-trip.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** What running a trip on trial needs: the task, who carries training, and room for one trip's clock and heat. */
export interface Trial {
  readonly task: DispatchTask;
  /** Load that carries the training of each community; -1 while nobody does. */
  readonly trainer: Int32Array;
  readonly clock: TripClock;
  readonly heat: TripHeat;
}

export function newTrial(task: DispatchTask, trainer: Int32Array): Trial {
  const mostLoads = task.loads.length;
  return {
    task,
    trainer,
    clock: newTripClock(mostLoads),
    heat: newTripHeat(mostLoads, task.survivalRates.length, task.storageLimits.length),
  };
}

/**
 * Runs the clock and the heat of one trip.
 *
 * @param readyMinute when the vehicle stands ready to be loaded
 * @param drivenMinutes driving since the crew's last rest, before the trip
 * @param guest load on trial that would carry its community's training; -1 where none
 * @returns what its loads lose on the road, in the scenario's currency; Infinity where a rule forbids the trip: the reason stands in
 * `trial.clock.fault`, which is `none` for weight and volume
 */
export function runTrip(
  trial: Trial,
  slot: Slot,
  loads: readonly number[],
  iceKg: number,
  readyMinute: number,
  drivenMinutes: number,
  guest: number,
): number {
  const { task, trainer, clock, heat } = trial;
  if (!timeTrip(task, slot, loads, readyMinute, drivenMinutes, trainer, guest, clock)) return Number.POSITIVE_INFINITY;
  if (!fitsPayload(clock.kg, slot.payloadKg) || !fitsColdBox(clock.coolLitres, slot.coolLitres))
    return Number.POSITIVE_INFINITY;
  if (clock.inoculantKg === 0) return 0;
  return heatTrip(task, slot, loads, iceKg, clock, heat) ? heat.valueLost : Number.POSITIVE_INFINITY;
}
