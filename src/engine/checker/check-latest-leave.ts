import { HOT_LIMIT_CELSIUS } from '../reference/boxes.ts';
import type { Problem } from '../vocabulary/problems.ts';
import { restsBefore } from './check-driving.ts';
import { loadingMinutes, stopsOfTrips } from './check-loads.ts';
import { hoursOf } from './check-times.ts';
import { at, type CheckedCase, planningDayOf } from './checked-case.ts';
import { finding } from './finding.ts';
import { type OwnAir, type RideStop, runRide } from './own-heat.ts';
import type { OwnSeason } from './own-season.ts';
import { TOLERANCE } from './tolerances.ts';

/** A trip that left at the latest hour told would still keep the hours of the places, come home in time and stay cool. */
export function checkLatestLeave(c: CheckedCase, season: OwnSeason, air: OwnAir): readonly Problem[] {
  const { trips } = c.plan.delivery;
  const rests = restsBefore(c);
  return stopsOfTrips(c).flatMap((rows, trip) => {
    const [leave, latest] = [at(trips.leaveMinute, trip), at(trips.latestLeaveMinute, trip)];
    const tell = (due: string) => [finding('E8709', 'delivery.trips.latestLeaveMinute', trip, latest, due)];
    if (latest < leave - TOLERANCE.minutes) return tell('leaving as planned');
    const stops = delayedStops(c, rows, latest);
    const last = rows.at(-1);
    const returnLeg = at(c.plan.delivery.legs, at(trips.returnLeg, trip)).minutes;
    const back = (stops.at(-1)?.depart ?? latest) + returnLeg;
    if (last === undefined || back > backBy(c, season, rests, trip) + TOLERANCE.sunMinutes)
      return tell('coming home in time');
    if (rows.some((row, i) => at(stops, i).depart > closesAt(c, row) + TOLERANCE.minutes))
      return tell('the hours of a place');
    return staysCool(c, air, trip, latest, stops) ? [] : tell('40 degrees in the hot band');
  });
}

/** When the vehicle has to be back: for the crew's rest and the loading of its next trip of the day, else by the end of its hours. */
function backBy(c: CheckedCase, season: OwnSeason, rests: readonly number[], trip: number): number {
  const { trips } = c.plan.delivery;
  const next = trip + 1;
  const follows =
    trips.vehicle[next] === trips.vehicle[trip] && trips.date[next] === trips.date[trip] && next < trips.trip.length;
  const home = hoursOf(c, season, at(trips.vehicle, trip), planningDayOf(c, at(trips.date, trip))).back;
  if (!follows) return home;
  return at(trips.leaveMinute, next) - loadingMinutes(c, next) - at(rests, next);
}

/** The stops with the same driving, rests and service, each waiting for its place to open. */
function delayedStops(c: CheckedCase, rows: readonly number[], leave: number): readonly RideStop[] {
  const { stops, legs, loads } = c.plan.delivery;
  let clock = leave;
  return rows.map((row) => {
    const arrive = clock + at(legs, at(stops.leg, row)).minutes;
    const start = Math.max(arrive + at(stops.restMinutes, row), opensAt(c, row));
    clock = start + at(stops.departMinute, row) - at(stops.startMinute, row);
    const handedKg = at(stops.loads, row).reduce((sum, load) => sum + at(loads.inoculantKg, load), 0);
    return { place: at(stops.place, row), arrive, start, depart: clock, handedKg };
  });
}

function pointOf(c: CheckedCase, row: number) {
  const place = at(c.plan.delivery.stops.place, row);
  if (at(c.plan.places.placeGiven, place) !== 1) return null;
  return c.scenario.handoverPoints.find(({ id }) => id === at(c.plan.ids.places, place)) ?? null;
}
const opensAt = (c: CheckedCase, row: number): number => pointOf(c, row)?.opens ?? 0;
const closesAt = (c: CheckedCase, row: number): number => pointOf(c, row)?.closes ?? 1440;

function staysCool(c: CheckedCase, air: OwnAir, trip: number, leave: number, stops: readonly RideStop[]): boolean {
  const { trips } = c.plan.delivery;
  const last = stops.findLastIndex(({ handedKg }) => handedKg > 0);
  if (last < 0) return true;
  const carrying = stops.slice(0, last + 1);
  const ride = {
    vehicle: at(trips.vehicle, trip),
    day: planningDayOf(c, at(trips.date, trip)),
    leave,
    iceKg: at(trips.iceKg, trip),
    inoculantKg: carrying.reduce((sum, { handedKg }) => sum + handedKg, 0),
    stops: carrying,
  };
  const hottest = Math.max(...runRide(c, air, ride, [], []).map(({ hotBand }) => hotBand));
  return hottest < HOT_LIMIT_CELSIUS.value + TOLERANCE.hotBandC;
}
