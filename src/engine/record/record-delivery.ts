import {
  dayNumber,
  type Exposure,
  isoDate,
  type Plan,
  type Scenario,
  type Trip,
  type VehicleDay,
} from '../vocabulary/index.ts';
import { LegTable } from './leg-table.ts';
import type { PlanParts } from './plan-parts.ts';
import { type FigureKind, round, roundAll, roundAllOrNull } from './rounding.ts';

type Recorded = Plan['delivery'];

/** A trip with the vehicle-day it belongs to. */
interface DatedTrip {
  readonly vehicle: number;
  readonly day: number;
  /** 1 first trip of the day. */
  readonly number: number;
  readonly depotSite: number;
  readonly trip: Trip;
}

/** Trips by day, vehicle and hour; their stops in the same order; every leg driven once, in the order first driven. */
export function recordDelivery(scenario: Scenario, parts: PlanParts): Recorded {
  const { delivery } = parts;
  const trips = datedTrips(scenario, delivery.vehicleDays);
  const legs = new LegTable(parts);
  const stopLegs = trips.map(({ vehicle, day, depotSite, trip }) =>
    trip.stops.map(({ site }, i) => legs.add(vehicle, day, trip.stops[i - 1]?.site ?? depotSite, site)),
  );
  const returnLegs = trips.map(({ vehicle, day, depotSite, trip }) =>
    legs.add(vehicle, day, trip.stops.at(-1)?.site ?? depotSite, depotSite),
  );
  return {
    loads: recordLoads(parts),
    trips: recordTrips(scenario, trips, returnLegs),
    stops: recordStops(trips, stopLegs, scenario.depots.length),
    legs: legs.recorded(),
    curves: trips.map(({ trip }) => recordCurve(trip)),
    unserved: {
      load: delivery.unserved.map(({ load }) => load),
      reason: delivery.unserved.map(({ reason }) => reason),
      hectares: delivery.unserved.map(({ hectares }) => round(hectares, 'hectares')),
    },
    cost: delivery.cost === null ? null : round(delivery.cost, 'money'),
    promisePrice: round(delivery.promisePrice, 'money'),
  };
}

function datedTrips(scenario: Scenario, vehicleDays: readonly VehicleDay[]): DatedTrip[] {
  const depotSites = new Map(scenario.depots.map(({ id }, depot) => [id, depot]));
  const ordered = [...vehicleDays].sort((a, b) => a.day - b.day || a.vehicle - b.vehicle);
  return ordered.flatMap(({ vehicle, day, trips }) => {
    const depotSite = depotSites.get(scenario.vehicles[vehicle]?.depotId ?? '') ?? -1;
    return trips.map((trip, i) => ({ vehicle, day, number: i + 1, depotSite, trip }));
  });
}

function recordLoads({ delivery: { loads } }: PlanParts): Recorded['loads'] {
  return {
    consignment: loads.map(({ consignment }) => consignment),
    grants: loads.map(({ grants }) => grants),
    packs: loads.map(({ packs }) => packs),
    kg: loads.map(({ kg }) => round(kg, 'kilograms')),
    coolLitres: loads.map(({ coolLitres }) => round(coolLitres, 'litres')),
    inoculantKg: loads.map(({ inoculantKg }) => round(inoculantKg, 'kilograms')),
    hectares: loads.map(({ hectares }) => round(hectares, 'hectares')),
  };
}

function recordTrips(scenario: Scenario, trips: readonly DatedTrip[], returnLeg: readonly number[]): Recorded['trips'] {
  const met = (figure: keyof Exposure, kind: FigureKind) =>
    roundAllOrNull(
      trips.map(({ trip }) => trip.exposure?.[figure] ?? Number.NaN),
      kind,
    );
  return {
    vehicle: trips.map(({ vehicle }) => vehicle),
    date: trips.map(({ day }) => isoDate(dayNumber(scenario.planning.from + day))),
    trip: trips.map(({ number }) => number),
    leaveMinute: trips.map(({ trip }) => round(trip.leaveMinute, 'minutes')),
    latestLeaveMinute: trips.map(({ trip }) => round(trip.latestLeaveMinute, 'minutes')),
    returnMinute: trips.map(({ trip }) => round(trip.returnMinute, 'minutes')),
    iceKg: trips.map(({ trip }) => round(trip.iceKg, 'kilograms')),
    loadKg: trips.map(({ trip }) => round(trip.loadKg, 'kilograms')),
    coolLitres: trips.map(({ trip }) => round(trip.coolLitres, 'litres')),
    kilometres: trips.map(({ trip }) => round(trip.kilometres, 'kilometres')),
    meanKineticC: met('meanKineticC', 'celsius'),
    degreeHours30: met('degreeHours30', 'hours'),
    hoursAbove30: met('hoursAbove30', 'hours'),
    hoursAbove35: met('hoursAbove35', 'hours'),
    hoursAbove40: met('hoursAbove40', 'hours'),
    returnLeg,
  };
}

function recordCurve({ curve }: Trip): Recorded['curves'][number] {
  return {
    minute: roundAll(curve.minute, 'minutes'),
    packC: roundAll(curve.packC, 'celsius'),
    hotBandC: roundAll(curve.hotBandC, 'celsius'),
    boxAirC: roundAll(curve.boxAirC, 'celsius'),
    shadeC: roundAll(curve.shadeC, 'celsius'),
  };
}

function recordStops(
  trips: readonly DatedTrip[],
  stopLegs: readonly (readonly number[])[],
  depots: number,
): Recorded['stops'] {
  const stops = trips.flatMap(({ trip }) => trip.stops);
  return {
    trip: trips.flatMap(({ trip }, row) => trip.stops.map(() => row)),
    place: stops.map(({ site }) => site - depots),
    loads: stops.map(({ loads }) => loads),
    arriveMinute: stops.map(({ arriveMinute }) => round(arriveMinute, 'minutes')),
    startMinute: stops.map(({ startMinute }) => round(startMinute, 'minutes')),
    departMinute: stops.map(({ departMinute }) => round(departMinute, 'minutes')),
    restMinutes: stops.map(({ restMinutes }) => round(restMinutes, 'minutes')),
    leg: stopLegs.flat(),
    loadKg: roundAll(
      stops.map(({ loadKg }) => loadKg),
      'kilograms',
    ),
    packC: roundAllOrNull(
      stops.map(({ packC }) => packC),
      'celsius',
    ),
    packMaxC: roundAllOrNull(
      stops.map(({ packMaxC }) => packMaxC),
      'celsius',
    ),
    hotBandMaxC: roundAllOrNull(
      stops.map(({ hotBandMaxC }) => hotBandMaxC),
      'celsius',
    ),
    log10Loss: roundAllOrNull(
      stops.map(({ log10Loss }) => log10Loss),
      'log10',
    ),
    hoursAboveStorage: roundAllOrNull(
      stops.map(({ hoursAboveStorage }) => hoursAboveStorage),
      'hours',
    ),
  };
}
