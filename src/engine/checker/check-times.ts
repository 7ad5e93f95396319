import { MOTORCYCLE_SERVICE_MINUTES, SERVICE_MINUTES, UNLOADING_MINUTES_PER_T } from '../reference/service-times.ts';
import { isoWeekday } from '../vocabulary/calendar.ts';
import type { Problem } from '../vocabulary/problems.ts';
import type { Community } from '../vocabulary/scenario.ts';
import { dayNumber } from '../vocabulary/units.ts';
import { loadingMinutes, stopsOfTrips } from './check-loads.ts';
import { at, type CheckedCase, dayOf, planningDayOf } from './checked-case.ts';
import { finding } from './finding.ts';
import { type OwnSun, ownSun } from './own-air.ts';
import { isMotorcycle } from './own-roads.ts';
import { nearestStation, type OwnSeason, unsownUntil } from './own-season.ts';
import { TOLERANCE } from './tolerances.ts';

/** When things happen: shift, depot, daylight, road hours, hours of the place, closures, markets, seed before inoculant. */
export function checkTimes(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  return [...checkTripHours(c, season), ...checkClock(c), ...checkDays(c), ...checkTraining(c), ...checkSeedFirst(c)];
}

/** Earliest leaving (loading not counted) and latest return of a vehicle on a day. */
export function hoursOf(
  c: CheckedCase,
  season: OwnSeason,
  vehicle: number,
  day: number,
): { readonly leave: number; readonly back: number } {
  const { shiftStart, maxHours } = at(c.scenario.vehicles, vehicle);
  const depot = at(c.scenario.depots, at(c.depotOfVehicle, vehicle));
  const station = nearestStation(season, depot.position);
  const sun: OwnSun = ownSun(
    c.scenario.planning.from + day,
    season.stationPositions[station] ?? depot.position,
    c.scenario.utcOffsetMinutes,
  );
  const { roadHours } = c.scenario.planning;
  return {
    leave: Math.max(shiftStart, depot.opens, sun.rise, roadHours?.opens ?? 0),
    back: Math.min(shiftStart + maxHours * 60, depot.closes, sun.set, roadHours?.closes ?? 1440),
  };
}

function checkTripHours(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  const { trips } = c.plan.delivery;
  return trips.vehicle.flatMap((v, trip) => {
    const day = planningDayOf(c, at(trips.date, trip));
    const { leave, back } = hoursOf(c, season, v, day);
    const depot = at(c.scenario.depots, at(c.depotOfVehicle, v));
    const loaded = Math.max(leave, depot.opens + loadingMinutes(c, trip));
    const [leaves, returns] = [at(trips.leaveMinute, trip), at(trips.returnMinute, trip)];
    const found: Problem[] = [];
    if (leaves < loaded - TOLERANCE.sunMinutes)
      found.push(finding('E8701', 'delivery.trips.leaveMinute', trip, leaves, loaded));
    if (returns > back + TOLERANCE.sunMinutes)
      found.push(finding('E8702', 'delivery.trips.returnMinute', trip, returns, back));
    return found;
  });
}

/** Each time follows from the one before it: driving, waiting for the place to open, service. */
function checkClock(c: CheckedCase): readonly Problem[] {
  const { trips, stops, legs } = c.plan.delivery;
  const found: Problem[] = [];
  stopsOfTrips(c).forEach((rows, trip) => {
    const vehicle = at(c.scenario.vehicles, at(trips.vehicle, trip));
    let clock = at(trips.leaveMinute, trip);
    for (const stop of rows) {
      const arrive = clock + at(legs, at(stops.leg, stop)).minutes;
      const told = at(stops.arriveMinute, stop);
      if (Math.abs(told - arrive) > TOLERANCE.minutes)
        found.push(finding('E8708', 'delivery.stops.arriveMinute', stop, told, arrive));
      const start = at(stops.startMinute, stop);
      if (start < told - TOLERANCE.minutes)
        found.push(finding('E8708', 'delivery.stops.startMinute', stop, start, told));
      const least = start + serviceMinutes(c, isMotorcycle(vehicle), at(stops.loads, stop));
      clock = at(stops.departMinute, stop);
      if (clock < least - TOLERANCE.minutes)
        found.push(finding('E8708', 'delivery.stops.departMinute', stop, clock, least));
      found.push(...checkPlaceHours(c, stop));
    }
    const back = clock + at(legs, at(trips.returnLeg, trip)).minutes;
    if (Math.abs(at(trips.returnMinute, trip) - back) > TOLERANCE.minutes)
      found.push(finding('E8708', 'delivery.trips.returnMinute', trip, at(trips.returnMinute, trip), back));
  });
  return found;
}

/** Least minutes of a stop, training not counted. */
function serviceMinutes(c: CheckedCase, motorcycle: boolean, loads: readonly number[]): number {
  const { kg, inoculantKg } = c.plan.delivery.loads;
  return leastServiceMinutes(
    motorcycle,
    loads.reduce((sum, load) => sum + at(kg, load) - at(inoculantKg, load), 0),
  );
}

export function leastServiceMinutes(motorcycle: boolean, dryKg: number): number {
  const base = motorcycle ? MOTORCYCLE_SERVICE_MINUTES.value : SERVICE_MINUTES.value;
  return base + (UNLOADING_MINUTES_PER_T.value * dryKg) / 1000;
}

function checkPlaceHours(c: CheckedCase, stop: number): readonly Problem[] {
  const { stops } = c.plan.delivery;
  const place = at(stops.place, stop);
  const point = c.scenario.handoverPoints.find(({ id }) => id === at(c.plan.ids.places, place));
  if (!point || at(c.plan.places.placeGiven, place) !== 1) return [];
  const [opens, closes] = [point.opens ?? 0, point.closes ?? 1440];
  const hours = `${opens} to ${closes}`;
  const found: Problem[] = [];
  if (at(stops.startMinute, stop) < opens - TOLERANCE.minutes)
    found.push(finding('E8703', 'delivery.stops.startMinute', stop, at(stops.startMinute, stop), hours));
  if (at(stops.departMinute, stop) > closes + TOLERANCE.minutes)
    found.push(finding('E8703', 'delivery.stops.departMinute', stop, at(stops.departMinute, stop), hours));
  return found;
}

/** May a community be served on a day? Gives the code of the rule that forbids it, null where none does. */
export function dayRule(c: CheckedCase, community: number, day: number): 'E8704' | 'E8705' | null {
  const rows = at(c.zonesOf, community);
  const largest = rows.reduce((best, row) => (row.share > best.share ? row : best), { zone: -1, share: 0 });
  const owner = at(c.scenario.communities, community);
  if (isClosed(owner, day)) return 'E8704';
  const zone = c.scenario.zones[largest.zone];
  if (zone && isClosed(zone, day)) return 'E8704';
  const only = c.scenario.policy.marketDays === 'only' && owner.marketDay !== null;
  return only && owner.marketDay !== isoWeekday(dayNumber(day)) ? 'E8705' : null;
}

function isClosed({ closedFrom, closedTo }: Pick<Community, 'closedFrom' | 'closedTo'>, day: number): boolean {
  if (closedFrom === null && closedTo === null) return false;
  return (closedFrom === null || day >= closedFrom) && (closedTo === null || day <= closedTo);
}

function checkDays(c: CheckedCase): readonly Problem[] {
  const { trips, stops, loads } = c.plan.delivery;
  const { consignments } = c.plan.allocation;
  const found: Problem[] = [];
  stops.loads.forEach((rows, stop) => {
    const date = at(trips.date, at(stops.trip, stop));
    for (const load of rows) {
      const row = at(loads.consignment, load);
      const community = at(consignments.community, row);
      const rule = dayRule(c, community, dayOf(date));
      if (rule === 'E8704') found.push(finding(rule, 'delivery.stops', stop, date));
      if (rule === 'E8705')
        found.push(
          finding(
            rule,
            'delivery.stops',
            stop,
            isoWeekday(dayOf(date)),
            at(c.scenario.communities, community).marketDay,
          ),
        );
      const available = at(loads.grants, load).reduce(
        (latest, grant) =>
          Math.max(latest, c.scenario.lots[at(c.plan.allocation.grants.lot, grant)]?.availableFrom ?? 0),
        0,
      );
      if (dayOf(date) < available || date < at(consignments.earliest, row) || date > at(consignments.latest, row))
        found.push(
          finding(
            'E8707',
            'delivery.stops',
            stop,
            date,
            `${at(consignments.earliest, row)} to ${at(consignments.latest, row)}`,
          ),
        );
    }
  });
  return found;
}

/** Every community that is visited is trained once, with its inoculant where inoculant is sent and arrives. */
function checkTraining(c: CheckedCase): readonly Problem[] {
  const { trips, stops, loads } = c.plan.delivery;
  const { consignments } = c.plan.allocation;
  const { trainingMinutes } = c.scenario.policy;
  if (trainingMinutes <= 0) return [];
  const getsInoculant = new Set<number>();
  consignments.group.forEach((group, row) => {
    if (group === 'inoculant' || group === 'both') getsInoculant.add(at(consignments.community, row));
  });
  /** Communities to be trained at each stop, at most; minutes spent there beyond service. */
  const due = new Set<number>();
  const spareOf = new Map<number, number>();
  stops.loads.forEach((rows, stop) => {
    const motorcycle = isMotorcycle(at(c.scenario.vehicles, at(trips.vehicle, at(stops.trip, stop))));
    const spare = at(stops.departMinute, stop) - at(stops.startMinute, stop) - serviceMinutes(c, motorcycle, rows);
    const here = new Set<number>();
    for (const load of rows) {
      const row = at(loads.consignment, load);
      const community = at(consignments.community, row);
      const group = at(consignments.group, row);
      if (group === 'fertiliser') continue;
      if (group !== 'dry' || !getsInoculant.has(community)) here.add(community);
    }
    let left = Math.floor((spare + TOLERANCE.minutes) / trainingMinutes);
    for (const community of here) {
      due.add(community);
      if (left-- > 0) spareOf.set(community, trainingMinutes);
    }
  });
  return [...due]
    .filter((community) => !spareOf.has(community))
    .map((community) =>
      finding(
        'E8708',
        'delivery.stops.departMinute',
        null,
        'no time for training',
        at(c.scenario.communities, community).id,
      ),
    );
}

/**
 * Inoculant never comes before the seed it is for, the same day will do. Nor before the fertiliser that is put in with it, once the land
 * is usually sown.
 */
function checkSeedFirst(c: CheckedCase): readonly Problem[] {
  const { trips, stops, loads } = c.plan.delivery;
  const { consignments, grants } = c.plan.allocation;
  const dayOfLoad = new Map<number, string>();
  stops.loads.forEach((rows, stop) => {
    for (const load of rows) dayOfLoad.set(load, at(trips.date, at(stops.trip, stop)));
  });
  const cropsOf = (load: number) => new Set(at(loads.grants, load).map((grant) => at(grants.crop, grant)));
  const comesFirst = new Map<number, number[]>();
  loads.consignment.forEach((row, load) => {
    const group = at(consignments.group, row);
    if (group !== 'dry' && group !== 'fertiliser') return;
    const community = at(consignments.community, row);
    comesFirst.set(community, [...(comesFirst.get(community) ?? []), load]);
  });
  const found: Problem[] = [];
  for (const [load, date] of dayOfLoad) {
    const row = at(loads.consignment, load);
    const group = at(consignments.group, row);
    if (group !== 'inoculant' && group !== 'both') continue;
    const crops = cropsOf(load);
    for (const other of comesFirst.get(at(consignments.community, row)) ?? []) {
      const otherDate = dayOfLoad.get(other);
      const isSeed = at(consignments.group, at(loads.consignment, other)) === 'dry';
      if (otherDate === undefined || otherDate <= date || (isSeed && group === 'both')) continue;
      const unsown = isSeed ? -1 : unsownUntil(c, at(consignments.community, row), cropsOf(other));
      if (!isSeed && !(planningDayOf(c, otherDate) > unsown)) continue;
      if ([...cropsOf(other)].some((crop) => crops.has(crop)))
        found.push(finding(isSeed ? 'E8706' : 'E8710', 'delivery.loads', load, date, otherDate));
    }
  }
  return found;
}
