import { HOT_LIMIT_CELSIUS } from '../reference/boxes.ts';
import { loadingMinutesOf } from './check-loads.ts';
import { dayRule, hoursOf, leastServiceMinutes } from './check-times.ts';
import { at, type CheckedCase, dateOf, isVehicleThere } from './checked-case.ts';
import { type OwnAir, runRide } from './own-heat.ts';
import type { OwnReach } from './own-reach.ts';
import { isMotorcycle } from './own-roads.ts';
import type { OwnSeason } from './own-season.ts';
import { TOLERANCE } from './tolerances.ts';

/** Goods that were not brought, as far as a vehicle has to know them. */
export interface Parcel {
  readonly depot: number;
  readonly community: number;
  readonly kg: number;
  readonly coolLitres: number;
  readonly inoculantKg: number;
  readonly maxStorageC: number | null;
  /** First and last planning day. */
  readonly earliest: number;
  readonly latest: number;
}

/** Means to look for a vehicle that stands idle. */
export interface Yard {
  readonly c: CheckedCase;
  readonly season: OwnSeason;
  readonly reach: OwnReach;
  readonly air: OwnAir;
  /** Vehicle-days with trips, as `vehicle day`. */
  readonly busy: ReadonlySet<string>;
  /** Ice drawn, by `depot day`, kg. */
  readonly drawn: ReadonlyMap<string, number>;
}

export function openYard(c: CheckedCase, season: OwnSeason, reach: OwnReach, air: OwnAir): Yard {
  const { trips } = c.plan.delivery;
  const busy = new Set<string>();
  const drawn = new Map<string, number>();
  trips.vehicle.forEach((vehicle, trip) => {
    const date = at(trips.date, trip);
    busy.add(`${vehicle} ${date}`);
    const key = `${at(c.depotOfVehicle, vehicle)} ${date}`;
    drawn.set(key, (drawn.get(key) ?? 0) + at(trips.iceKg, trip));
  });
  return { c, season, reach, air, busy, drawn };
}

/**
 * A vehicle-day without any trip that could bring the parcel by itself, leaving at the earliest hour, with minutes and
 * kelvins to spare. Null where there is none. It names the vehicle and the day.
 */
export function findIdleVehicle(yard: Yard, parcel: Parcel): string | null {
  const { c } = yard;
  for (let day = Math.max(0, parcel.earliest); day <= Math.min(c.planningDays - 1, parcel.latest); day++) {
    if (c.plan.season.workday[day] !== 1) continue;
    if (dayRule(c, parcel.community, c.scenario.planning.from + day) !== null) continue;
    const tried = new Set<string>();
    for (let vehicle = 0; vehicle < c.scenario.vehicles.length; vehicle++) {
      if (!mayTry(yard, parcel, vehicle, day)) continue;
      const { id: _, ...alike } = at(c.scenario.vehicles, vehicle);
      const kind = JSON.stringify(alike);
      if (tried.has(kind)) continue;
      tried.add(kind);
      if (couldBring(yard, parcel, vehicle, day)) return `${at(c.scenario.vehicles, vehicle).id} on ${dateOf(c, day)}`;
    }
  }
  return null;
}

function mayTry({ c, busy }: Yard, parcel: Parcel, vehicle: number, day: number): boolean {
  const { payloadKg, coolLitres } = at(c.scenario.vehicles, vehicle);
  return (
    at(c.depotOfVehicle, vehicle) === parcel.depot &&
    parcel.kg <= payloadKg &&
    (coolLitres <= 0 || parcel.coolLitres <= coolLitres) &&
    !busy.has(`${vehicle} ${dateOf(c, day)}`) &&
    isVehicleThere(c, vehicle, day)
  );
}

function couldBring(yard: Yard, parcel: Parcel, vehicle: number, day: number): boolean {
  const { c, season, reach, air, drawn } = yard;
  const place = at(c.plan.places.communityPlace, parcel.community);
  const site = c.scenario.depots.length + place;
  const ways = reach.waysOf(vehicle, day);
  const [out, back] = [at(ways.out, site), at(ways.back, site)];
  if (out + back === Number.POSITIVE_INFINITY) return false;
  const hours = hoursOf(c, season, vehicle, day);
  const { opens } = at(c.scenario.depots, parcel.depot);
  const point = at(c.plan.places.placeGiven, place) === 1 ? pointOf(c, place) : null;
  const earliest = Math.max(hours.leave, opens + loadingMinutesOf(c, parcel.depot, parcel.kg)) + TOLERANCE.idleMinutes;
  const leave = Math.max(earliest, (point?.opens ?? 0) - out);
  const motorcycle = isMotorcycle(at(c.scenario.vehicles, vehicle));
  const service = leastServiceMinutes(motorcycle, parcel.kg - parcel.inoculantKg) + c.scenario.policy.trainingMinutes;
  const { restAfterHours, restMinutes } = c.scenario.policy;
  const mostDriving = restMinutes > 0 ? restAfterHours * 60 - TOLERANCE.idleMinutes : Number.POSITIVE_INFINITY;
  if (out > mostDriving || back > mostDriving) return false;
  const start = leave + out + (out + back > mostDriving ? restMinutes : 0);
  const depart = start + service;
  if (depart > (point?.closes ?? 1440) - TOLERANCE.idleMinutes) return false;
  if (depart + back > hours.back - TOLERANCE.idleMinutes) return false;
  if (parcel.inoculantKg === 0) return true;
  const { iceKg, coolLitres } = at(c.scenario.vehicles, vehicle);
  const left = at(c.scenario.depots, parcel.depot).iceKgPerDay - (drawn.get(`${parcel.depot} ${dateOf(c, day)}`) ?? 0);
  const stop = { place, arrive: leave + out, start, depart, handedKg: parcel.inoculantKg };
  const ice = coolLitres > 0 && iceKg <= left ? iceKg : 0;
  const ride = { vehicle, day, leave, iceKg: ice, inoculantKg: parcel.inoculantKg, stops: [stop] };
  const [state] = runRide(c, air, ride, [], [parcel.maxStorageC ?? Number.POSITIVE_INFINITY]);
  const most = c.scenario.policy.hoursAboveStorage ?? Number.POSITIVE_INFINITY;
  return (
    state !== undefined &&
    state.hotBand < HOT_LIMIT_CELSIUS.value - TOLERANCE.idleC &&
    at(state.hoursAbove, 0) < most - TOLERANCE.idleHours
  );
}

function pointOf(c: CheckedCase, place: number) {
  return c.scenario.handoverPoints.find(({ id }) => id === at(c.plan.ids.places, place)) ?? null;
}
