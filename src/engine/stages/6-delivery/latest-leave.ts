import { HOT_BAND_KELVIN } from '../../reference/boxes.ts';
import { type Box, boxUaWPerK, fillBox, minutesAbove, newBox, stepBox, takeFromBox } from '../../science/box.ts';
import { packStartCelsius, tripHours } from '../../science/trip-hours.ts';
import type { Plan } from '../../vocabulary/plan.ts';
import type { Depot, Scenario } from '../../vocabulary/scenario.ts';
import { openPlanAir, type PlanAir } from './plan-air.ts';
import { staysBelowHotLimit } from './rules/hot-band.ts';
import { endsBeforeClosing, serviceStart } from './rules/point-hours.ts';
import { withinStorageHours } from './rules/storage-hours.ts';

/** Clocks on a sheet are read to five minutes. */
const STEP_MINUTES = 5;
const QUARTER = 15;
const SLACK = 1e-9;

/** A trip of the plan, as it is driven again with another leaving hour. */
interface PlannedTrip {
  readonly leaveMinute: number;
  readonly latestBack: number;
  readonly iceKg: number;
  readonly packsKg: number;
  readonly uaWPerK: number;
  /** NaN: as warm as the shade at the first stop's weather place. */
  readonly startC: number;
  readonly day: number;
  readonly vehicle: Scenario['vehicles'][number];
  readonly mostStorageHours: number | null;
  readonly legMinutes: readonly number[];
  readonly homeMinutes: number;
  readonly stops: readonly {
    readonly place: number;
    readonly opens: number;
    readonly closes: number;
    readonly serviceMinutes: number;
    readonly packsKg: number;
    /** Lowest limit of the labels handed over here, °C; NaN where none states one. */
    readonly storageC: number;
  }[];
}

/**
 * For each trip of a plan the latest minute at which it may leave and still keep its rules: packs below 40 °C in the hot band
 * up to their hand-over, hours above storage, closing hours of the places, daylight, shift, and the vehicle's next trip.
 * Stepped in five minutes from the leaving hour planned, up to the first that breaks a rule; never earlier than planned.
 */
export function latestLeaves(scenario: Scenario, plan: Plan): number[] {
  const { trips } = plan.delivery;
  const air = openPlanAir(scenario, plan);
  const latest: number[] = trips.leaveMinute.map((minute) => minute);
  for (let row = trips.vehicle.length - 1; row >= 0; row--) {
    const trip = tripOf(scenario, plan, air, row, backBeforeNext(scenario, plan, latest, row));
    if (trip === null) continue;
    let minute = trip.leaveMinute;
    for (;;) {
      const later = Math.floor(minute / STEP_MINUTES + 1 + SLACK) * STEP_MINUTES;
      if (later >= 1440 || !mayLeaveAt(trip, air, later)) break;
      minute = later;
    }
    latest[row] = minute;
  }
  return latest;
}

/** When the vehicle has to be back to load its next trip of the day; infinity where there is none. */
function backBeforeNext(scenario: Scenario, plan: Plan, latest: readonly number[], row: number): number {
  const { trips } = plan.delivery;
  const next = trips.vehicle.findIndex(
    (vehicle, other) =>
      vehicle === trips.vehicle[row] &&
      trips.date[other] === trips.date[row] &&
      trips.trip[other] === (trips.trip[row] ?? 0) + 1,
  );
  if (next < 0) return Number.POSITIVE_INFINITY;
  const depot = depotOf(scenario, trips.vehicle[row] ?? -1);
  return (latest[next] ?? 0) - ((trips.loadKg[next] ?? 0) / 1000) * (depot?.loadingMinutesPerT ?? 0);
}

const depotOf = (scenario: Scenario, vehicle: number): Depot | undefined =>
  scenario.depots.find(({ id }) => id === scenario.vehicles[vehicle]?.depotId);

function tripOf(scenario: Scenario, plan: Plan, air: PlanAir, row: number, backBefore: number): PlannedTrip | null {
  const { trips, stops, legs } = plan.delivery;
  const vehicle = scenario.vehicles[trips.vehicle[row] ?? -1];
  const depot = depotOf(scenario, trips.vehicle[row] ?? -1);
  const day = air.dayOf(trips.date[row] ?? '');
  if (vehicle === undefined || depot === undefined || day === null) return null;
  const rows = stops.trip.flatMap((trip, stop) => (trip === row ? [stop] : []));
  const sun = air.sun(air.stationOfDepot(depot), day);
  const hours = tripHours(vehicle, depot, sun.sunriseMinute, sun.sunsetMinute, scenario.planning.roadHours);
  const served = rows.map((stop) => stopOf(scenario, plan, stop));
  return {
    leaveMinute: trips.leaveMinute[row] ?? 0,
    latestBack: Math.min(hours.latestBack, backBefore),
    iceKg: trips.iceKg[row] ?? 0,
    packsKg: served.reduce((sum, { packsKg }) => sum + packsKg, 0),
    uaWPerK: boxUaWPerK(vehicle.coolLitres, vehicle.coolUaWPerK),
    startC: packStartCelsius(depot),
    day,
    vehicle,
    mostStorageHours: scenario.policy.hoursAboveStorage,
    legMinutes: rows.map((stop) => legs[stops.leg[stop] ?? -1]?.minutes ?? 0),
    homeMinutes: legs[trips.returnLeg[row] ?? -1]?.minutes ?? 0,
    stops: served,
  };
}

function stopOf(scenario: Scenario, plan: Plan, stop: number): PlannedTrip['stops'][number] {
  const { delivery, allocation, ids } = plan;
  const place = delivery.stops.place[stop] ?? -1;
  const point = scenario.handoverPoints.find(({ id }) => id === ids.places[place]);
  const loads = delivery.stops.loads[stop] ?? [];
  const limits = loads.flatMap(
    (load) => allocation.consignments.maxStorageC[delivery.loads.consignment[load] ?? -1] ?? [],
  );
  return {
    place,
    opens: point?.opens ?? 0,
    closes: point?.closes ?? 1440,
    serviceMinutes: (delivery.stops.departMinute[stop] ?? 0) - (delivery.stops.startMinute[stop] ?? 0),
    packsKg: loads.reduce((sum, load) => sum + (delivery.loads.inoculantKg[load] ?? 0), 0),
    storageC: limits.length === 0 ? Number.NaN : Math.min(...limits),
  };
}

/** Drives the trip anew from another minute. */
function mayLeaveAt(trip: PlannedTrip, air: PlanAir, leaveMinute: number): boolean {
  const [box, hotBox] = [newBox(), newBox()];
  startBoxes(trip, air, leaveMinute, box, hotBox);
  const hot = { max: hotBox.celsius };
  const hoursAbove = trip.stops.map(() => 0);
  let minute = leaveMinute;
  let packsKg = trip.packsKg;
  for (const [s, stop] of trip.stops.entries()) {
    const arrive = minute + (trip.legMinutes[s] ?? 0);
    const depart = serviceStart(arrive, stop.opens) + stop.serviceMinutes;
    if (!endsBeforeClosing(depart, stop.closes)) return false;
    if (packsKg > SLACK) {
      ride(trip, air, stop.place, true, [minute, arrive], box, hotBox, hot, hoursAbove);
      ride(trip, air, stop.place, false, [arrive, depart], box, hotBox, hot, hoursAbove);
      if (!staysBelowHotLimit(hot.max)) return false;
    }
    if (stop.packsKg > 0 && !withinStorageHours(hoursAbove[s] ?? 0, trip.mostStorageHours)) return false;
    takeFromBox(box, stop.packsKg);
    takeFromBox(hotBox, stop.packsKg);
    packsKg -= stop.packsKg;
    minute = depart;
  }
  return minute + trip.homeMinutes <= trip.latestBack + SLACK;
}

function startBoxes(trip: PlannedTrip, air: PlanAir, leaveMinute: number, box: Box, hotBox: Box): void {
  const shade = air.shade(air.stationOfPlace(trip.stops[0]?.place ?? -1), trip.day);
  const outside = shade[Math.min(95, Math.floor(leaveMinute / QUARTER))] ?? 0;
  const startC = Number.isNaN(trip.startC) ? outside : trip.startC;
  const hotC = Number.isNaN(trip.startC) ? outside + HOT_BAND_KELVIN.value : trip.startC;
  fillBox(box, trip.packsKg, startC, trip.iceKg, trip.uaWPerK);
  fillBox(hotBox, trip.packsKg, hotC, trip.iceKg, trip.uaWPerK);
}

/** Runs both boxes through a stretch of time, quarter hour by quarter hour, and counts hours above each stop's storage limit. */
function ride(
  trip: PlannedTrip,
  air: PlanAir,
  place: number,
  moving: boolean,
  [from, to]: readonly [number, number],
  box: Box,
  hotBox: Box,
  hot: { max: number },
  hoursAbove: number[],
): void {
  const around = air.atBox(air.stationOfPlace(place), trip.day, trip.vehicle.carriage, moving);
  for (let minute = from; minute < to; ) {
    const quarter = Math.floor(minute / QUARTER);
    const next = Math.min(to, (quarter + 1) * QUARTER);
    const airC = around[Math.min(95, quarter)] ?? 0;
    stepBox(hotBox, airC + HOT_BAND_KELVIN.value, next - minute);
    hot.max = Math.max(hot.max, hotBox.celsius);
    stepBox(box, airC, next - minute);
    trip.stops.forEach(({ storageC }, s) => {
      if (!Number.isNaN(storageC)) hoursAbove[s] = (hoursAbove[s] ?? 0) + minutesAbove(box, storageC) / 60;
    });
    minute = next;
  }
}
