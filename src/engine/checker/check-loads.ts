import type { Problem } from '../vocabulary/problems.ts';
import { at, type CheckedCase, dayOf, isVehicleThere, planningDayOf } from './checked-case.ts';
import { finding } from './finding.ts';
import { TOLERANCE } from './tolerances.ts';

/** What rides: payload, litres, ice, the right depot, a vehicle that is there, a day that is worked, locks. */
export function checkLoads(c: CheckedCase): readonly Problem[] {
  return [...checkTrips(c), ...checkIce(c), ...checkTripOrder(c), ...checkLocks(c)];
}

/** Stops of each trip, in order. */
export function stopsOfTrips(c: CheckedCase): readonly (readonly number[])[] {
  const rows = c.plan.delivery.trips.vehicle.map((): number[] => []);
  c.plan.delivery.stops.trip.forEach((trip, stop) => {
    rows[trip]?.push(stop);
  });
  return rows;
}

function checkTrips(c: CheckedCase): readonly Problem[] {
  const { trips, stops, loads, legs } = c.plan.delivery;
  const found: Problem[] = [];
  stopsOfTrips(c).forEach((rows, trip) => {
    const v = at(trips.vehicle, trip);
    const vehicle = at(c.scenario.vehicles, v);
    const date = at(trips.date, trip);
    const day = planningDayOf(c, date);
    const aboard = rows.flatMap((stop) => at(stops.loads, stop));
    const sum = (column: readonly number[]) => aboard.reduce((total, load) => total + at(column, load), 0);
    const [kg, litres] = [sum(loads.kg), sum(loads.coolLitres)];
    for (const load of aboard) {
      const depot = at(c.plan.allocation.consignments.depot, at(loads.consignment, load));
      if (depot !== at(c.depotOfVehicle, v))
        found.push(finding('E8601', 'delivery.trips.vehicle', trip, vehicle.id, at(c.scenario.depots, depot).id));
    }
    if (day < 0 || day >= c.planningDays || !isVehicleThere(c, v, day))
      found.push(finding('E8602', 'delivery.trips.vehicle', trip, date));
    if (at(c.plan.season.workday, day) !== 1) found.push(finding('E8603', 'delivery.trips.date', trip, date));
    const slack = TOLERANCE.kilograms * (aboard.length + 1);
    if (kg > vehicle.payloadKg + slack)
      found.push(finding('E8604', 'delivery.trips.loadKg', trip, kg, vehicle.payloadKg));
    if (vehicle.coolLitres > 0 && litres > vehicle.coolLitres + slack)
      found.push(finding('E8605', 'delivery.trips.coolLitres', trip, litres, vehicle.coolLitres));
    if (Math.abs(at(trips.loadKg, trip) - kg) > slack)
      found.push(finding('E8607', 'delivery.trips.loadKg', trip, at(trips.loadKg, trip), kg));
    if (Math.abs(at(trips.coolLitres, trip) - litres) > slack)
      found.push(finding('E8607', 'delivery.trips.coolLitres', trip, at(trips.coolLitres, trip), litres));
    const driven = [...rows.map((stop) => at(stops.leg, stop)), at(trips.returnLeg, trip)];
    const km = driven.reduce((total, leg) => total + at(legs, leg).kilometres, 0);
    if (Math.abs(at(trips.kilometres, trip) - km) > TOLERANCE.kilograms * (driven.length + 1))
      found.push(finding('E8607', 'delivery.trips.kilometres', trip, at(trips.kilometres, trip), km));
    let left = kg;
    for (const stop of rows) {
      if (Math.abs(at(stops.loadKg, stop) - left) > slack)
        found.push(finding('E8607', 'delivery.stops.loadKg', stop, at(stops.loadKg, stop), left));
      left -= at(stops.loads, stop).reduce((total, load) => total + at(loads.kg, load), 0);
    }
    if (rows.length === 0) found.push(finding('E8607', 'delivery.trips', trip, 'no stop', 'at least one'));
  });
  return found;
}

/** Ice of a day and depot: no more than it makes; of a trip: no more than the box takes. */
function checkIce(c: CheckedCase): readonly Problem[] {
  const { trips } = c.plan.delivery;
  const found: Problem[] = [];
  const drawn = new Map<string, number>();
  trips.vehicle.forEach((v, trip) => {
    const iceKg = at(trips.iceKg, trip);
    const vehicle = at(c.scenario.vehicles, v);
    if (iceKg > vehicle.iceKg + TOLERANCE.kilograms)
      found.push(finding('E8606', 'delivery.trips.iceKg', trip, iceKg, vehicle.iceKg));
    const key = `${at(c.depotOfVehicle, v)} ${at(trips.date, trip)}`;
    const before = drawn.get(key) ?? 0;
    drawn.set(key, before + iceKg);
    const makes = c.scenario.depots[at(c.depotOfVehicle, v)]?.iceKgPerDay ?? 0;
    if (iceKg > 0 && before + iceKg > makes + TOLERANCE.kilograms)
      found.push(finding('E8606', 'delivery.trips.iceKg', trip, before + iceKg, makes));
  });
  return found;
}

/** Trips of a vehicle-day are numbered from 1 and follow each other; loading lies between them. */
function checkTripOrder(c: CheckedCase): readonly Problem[] {
  const { trips } = c.plan.delivery;
  const found: Problem[] = [];
  const days = new Map<string, number[]>();
  trips.vehicle.forEach((v, trip) => {
    const key = `${v} ${at(trips.date, trip)}`;
    days.set(key, [...(days.get(key) ?? []), trip]);
  });
  for (const rows of days.values()) {
    rows.sort((a, b) => at(trips.leaveMinute, a) - at(trips.leaveMinute, b) || a - b);
    rows.forEach((trip, i) => {
      if (at(trips.trip, trip) !== i + 1)
        found.push(finding('E8608', 'delivery.trips.trip', trip, at(trips.trip, trip), i + 1));
      if (i === 0) return;
      const ready = at(trips.returnMinute, at(rows, i - 1)) + loadingMinutes(c, trip);
      if (at(trips.leaveMinute, trip) < ready - TOLERANCE.minutes)
        found.push(finding('E8608', 'delivery.trips.leaveMinute', trip, at(trips.leaveMinute, trip), ready));
    });
  }
  return found;
}

/** Loading takes its time before every trip, by the tonne. */
export function loadingMinutes(c: CheckedCase, trip: number): number {
  const { trips } = c.plan.delivery;
  return loadingMinutesOf(c, at(c.depotOfVehicle, at(trips.vehicle, trip)), at(trips.loadKg, trip));
}

export function loadingMinutesOf(c: CheckedCase, depot: number, kg: number): number {
  return ((c.scenario.depots[depot]?.loadingMinutesPerT ?? 0) * kg) / 1000;
}

/** A locked hand-over takes place on its vehicle and day, or is shown as unserved. */
function checkLocks(c: CheckedCase): readonly Problem[] {
  const { trips, stops, loads } = c.plan.delivery;
  const { consignments } = c.plan.allocation;
  const last = new Map<string, Extract<(typeof c.decisions.decisions)[number], { kind: 'lock' }>>();
  for (const decision of c.decisions.decisions)
    if (decision.kind === 'lock') last.set(`${decision.communityId} ${decision.commodity}`, decision);
  const found: Problem[] = [];
  stops.loads.forEach((rows, stop) => {
    const trip = at(stops.trip, stop);
    for (const load of rows) {
      const consignment = at(loads.consignment, load);
      const group = at(consignments.group, consignment);
      const community = at(c.scenario.communities, at(consignments.community, consignment)).id;
      const goods = { dry: ['seed'], inoculant: ['inoculant'], both: ['seed', 'inoculant'], fertiliser: [] }[group];
      for (const commodity of goods) {
        const lock = last.get(`${community} ${commodity}`);
        if (!lock) continue;
        const told = `${at(c.scenario.vehicles, at(trips.vehicle, trip)).id} on ${at(trips.date, trip)}`;
        const due = `${lock.vehicleId} on ${lock.date}`;
        if (told !== due && dayOf(lock.date) >= c.scenario.planning.from)
          found.push(finding('E8609', 'delivery.stops.trip', stop, told, due));
      }
    }
  });
  return found;
}
