import { measureExposure } from '../../science/exposure.ts';
import type { Load, Stop, Trip, VehicleDay } from '../../vocabulary/stage-results/delivery.ts';
import { type DispatchState, type PlannedTrip, tripsOf } from './dispatch-state.ts';
import type { TripHeat } from './heat-trip.ts';
import { latestLeave } from './latest-leave.ts';
import { type TripClock, timeTrip } from './time-trip.ts';
import { NO_CURVE, traceTrip } from './trip-curve.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Runs every trip of the final plan once more and writes down its clock and its temperatures. Sorted by day and vehicle. */
export function scheduleTrips(state: DispatchState, loads: readonly Load[]): VehicleDay[] {
  return state.task.slots
    .map((slot, i) => ({ slot, trips: tripsOf(state, i) }))
    .filter(({ trips }) => trips.length > 0)
    .sort((a, b) => a.slot.day - b.slot.day || a.slot.vehicle - b.slot.vehicle)
    .map(({ slot, trips }) => ({
      vehicle: slot.vehicle,
      day: slot.day,
      trips: trips.map((trip, n) => {
        const next = trips[n + 1];
        const backBy = next ? leavesLoading(state, slot, next) : slot.latestBack;
        return scheduleTrip(state, slot, trip, loads, latestLeave(state, slot, trip, backBy));
      }),
    }));
}

/** When the vehicle must be back for a trip to be loaded, after the crew's rest where one is owed, and leave as planned. */
function leavesLoading({ task, trial }: DispatchState, slot: Slot, trip: PlannedTrip): number {
  timeTrip(task, slot, trip.loads, trip.readyMinute, trip.drivenMinutes, trial.trainer, -1, trial.clock);
  return trial.clock.leaveMinute - trip.kg * slot.loadingMinutesPerKg - trip.restBefore;
}

function scheduleTrip(
  state: DispatchState,
  slot: Slot,
  trip: PlannedTrip,
  loads: readonly Load[],
  latestLeaveMinute: number,
): Trip {
  const { task, trial } = state;
  const { clock, heat } = trial;
  const timed = timeTrip(task, slot, trip.loads, trip.readyMinute, trip.drivenMinutes, trial.trainer, -1, clock);
  const cold = clock.inoculantKg > 0;
  const curve = cold && timed ? traceTrip(task, slot, trip.loads, trip.iceKg, clock, heat) : NO_CURVE;
  if (!timed || curve === null) {
    throw new Error(`a planned trip breaks the rule ${clock.fault}`);
  }
  let loadKg = clock.kg;
  const stops: Stop[] = [];
  for (let s = 0; s < clock.stops; s++) {
    const aboard = trip.loads.slice(clock.firstLoad[s], clock.firstLoad[s + 1]);
    stops.push(scheduleStop(slot, clock, cold ? heat : null, s, aboard, loadKg));
    for (const load of aboard) loadKg -= loads[load]?.kg ?? 0;
  }
  return {
    leaveMinute: clock.leaveMinute,
    latestLeaveMinute,
    returnMinute: clock.returnMinute,
    iceKg: trip.iceKg,
    loadKg: clock.kg,
    coolLitres: clock.coolLitres,
    stops,
    kilometres: clock.kilometres,
    curve,
    exposure: curve.minute.length > 0 ? measureExposure(curve.minute, curve.packC) : null,
    returnLegMinutes: slot.legs.minutes[clock.returnLeg] as number,
    returnLegKm: slot.legs.kilometres[clock.returnLeg] as number,
  };
}

function scheduleStop(
  slot: Slot,
  clock: TripClock,
  heat: TripHeat | null,
  s: number,
  loads: readonly number[],
  loadKg: number,
): Stop {
  const leg = clock.leg[s] as number;
  const felt = (column: Float64Array | undefined) => (column ? (column[s] as number) : Number.NaN);
  return {
    site: slot.round.sites[clock.place[s] as number] as number,
    loads,
    arriveMinute: clock.arriveMinute[s] as number,
    startMinute: clock.startMinute[s] as number,
    departMinute: clock.departMinute[s] as number,
    restMinutes: clock.restMinutes[s] as number,
    legMinutes: slot.legs.minutes[leg] as number,
    legKm: slot.legs.kilometres[leg] as number,
    loadKg,
    packC: felt(heat?.packC),
    packMaxC: felt(heat?.packMaxC),
    hotBandMaxC: felt(heat?.hotBandMaxC),
    log10Loss: felt(heat?.log10Loss),
    hoursAboveStorage: felt(heat?.hoursAboveStorage),
  };
}
