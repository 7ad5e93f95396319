import type { DispatchState, PlannedTrip } from './dispatch-state.ts';
import { heatTrip } from './heat-trip.ts';
import { timeTrip } from './time-trip.ts';
import type { Slot } from './vehicle-day-slots.ts';

const STEP_MINUTES = 5;
/** What sums of minutes leave of nothing. */
const ROUNDING_MINUTES = 1e-6;

/**
 * Latest minute at which a planned trip may leave: every five minutes later, up to the first at which a rule would break: hours
 * of the places, back in time, packs below 40 °C in the hot band, hours above storage where they are limited.
 *
 * @param backBy when the vehicle has to be back: in time for its next trip, or for the end of its day
 */
export function latestLeave(state: DispatchState, slot: Slot, trip: PlannedTrip, backBy: number): number {
  const { task, trial } = state;
  const { clock, heat, trainer } = trial;
  let latest = Number.NaN;
  for (let later = 0; later < 1440; later += STEP_MINUTES) {
    const ready = Number.isNaN(latest) ? trip.readyMinute : latest + STEP_MINUTES - trip.kg * slot.loadingMinutesPerKg;
    const holds =
      timeTrip(task, slot, trip.loads, ready, trip.drivenMinutes, trainer, -1, clock) &&
      clock.returnMinute <= backBy + ROUNDING_MINUTES &&
      (clock.inoculantKg === 0 || heatTrip(task, slot, trip.loads, trip.iceKg, clock, heat));
    if (!holds) return latest;
    latest = clock.leaveMinute;
  }
  return latest;
}
