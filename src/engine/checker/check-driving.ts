import type { Problem } from '../vocabulary/problems.ts';
import { loadingMinutes, stopsOfTrips } from './check-loads.ts';
import { at, type CheckedCase } from './checked-case.ts';
import { finding } from './finding.ts';
import { TOLERANCE } from './tolerances.ts';

/** Driving of a crew from one rest to the next, trip by trip of a vehicle-day. */
interface Driving {
  /** Whether the crew must rest at the depot before the trip. */
  readonly restOwed: boolean;
  readonly found: readonly Problem[];
}

/**
 * No crew drives longer than the programme allows from one rest to the next. A rest is any time of that length in one go in which it
 * neither drives nor works: between arriving and beginning at a place, or at the depot beside loading.
 */
export function checkDriving(c: CheckedCase): readonly Problem[] {
  return followCrews(c).flatMap(({ found }) => found);
}

/** Minutes that a crew must rest at the depot before each trip. */
export function restsBefore(c: CheckedCase): readonly number[] {
  return followCrews(c).map(({ restOwed }) => (restOwed ? c.scenario.policy.restMinutes : 0));
}

function followCrews(c: CheckedCase): readonly Driving[] {
  const { restAfterHours, restMinutes } = c.scenario.policy;
  const { trips, stops, legs } = c.plan.delivery;
  const most = restAfterHours * 60 + TOLERANCE.minutes;
  const isRest = (minutes: number) => minutes >= restMinutes - TOLERANCE.minutes;
  const isAsAsked = (minutes: number) =>
    minutes === 0 || (restMinutes > 0 && Math.abs(minutes - restMinutes) <= TOLERANCE.minutes);
  const restFinding = (stop: number) =>
    finding('E8708', 'delivery.stops.restMinutes', stop, at(stops.restMinutes, stop), restMinutes);
  const before = new Map<string, { readonly driven: number; readonly back: number }>();
  return stopsOfTrips(c).map((rows, trip): Driving => {
    const found = rows.filter((stop) => !isAsAsked(at(stops.restMinutes, stop))).map(restFinding);
    if (restMinutes <= 0) return { restOwed: false, found };
    const vehicleDay = `${at(trips.vehicle, trip)} ${at(trips.date, trip)}`;
    const { driven: drivenBefore, back } = before.get(vehicleDay) ?? { driven: 0, back: Number.NEGATIVE_INFINITY };
    const firstLeg = rows.length > 0 ? at(legs, at(stops.leg, at(rows, 0))).minutes : 0;
    let driven = isRest(at(trips.leaveMinute, trip) - loadingMinutes(c, trip) - back) ? 0 : drivenBefore;
    const drive = (leg: number, column: string, row: number) => {
      driven += at(legs, leg).minutes;
      if (driven > most) found.push(finding('E8711', column, row, driven, restAfterHours * 60));
    };
    for (const stop of rows) {
      drive(at(stops.leg, stop), 'delivery.stops.leg', stop);
      const waits = at(stops.startMinute, stop) - at(stops.arriveMinute, stop);
      if (at(stops.restMinutes, stop) > waits + TOLERANCE.minutes) found.push(restFinding(stop));
      if (isRest(waits)) driven = 0;
    }
    drive(at(trips.returnLeg, trip), 'delivery.trips.returnLeg', trip);
    before.set(vehicleDay, { driven, back: at(trips.returnMinute, trip) });
    return { restOwed: drivenBefore + firstLeg > most, found };
  });
}
