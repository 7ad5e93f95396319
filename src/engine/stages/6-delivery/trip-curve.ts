import type { TripCurve } from '../../vocabulary/stage-results/delivery.ts';
import type { DispatchTask } from './dispatch-task.ts';
import { heatTrip, type TripHeat } from './heat-trip.ts';
import type { TripClock } from './time-trip.ts';
import type { Slot } from './vehicle-day-slots.ts';

export const NO_CURVE: TripCurve = { minute: [], packC: [], hotBandC: [], boxAirC: [], shadeC: [] };

/**
 * Runs the packs of a timed trip as heatTrip does and writes down what they feel at the start and after every step.
 *
 * @returns null where the trip breaks a rule of heat; the reason stands in `clock.fault`
 */
export function traceTrip(
  task: DispatchTask,
  slot: Slot,
  loads: readonly number[],
  iceKg: number,
  clock: TripClock,
  heat: TripHeat,
): TripCurve | null {
  const curve = { minute: [], packC: [], hotBandC: [], boxAirC: [], shadeC: [] } as Record<keyof TripCurve, number[]>;
  heat.trace = (minute, boxAirC, shadeC) => {
    curve.minute.push(minute);
    curve.packC.push(heat.box.celsius);
    curve.hotBandC.push(heat.hotBox.celsius);
    curve.boxAirC.push(boxAirC);
    curve.shadeC.push(shadeC);
  };
  const holds = heatTrip(task, slot, loads, iceKg, clock, heat);
  heat.trace = null;
  return holds ? curve : null;
}
