import type { Plan, Scenario } from '../../engine/index.ts';
import type { MapLine } from './map-view.ts';

/** How a vehicle is told apart on map, table and chart; the same on every day. Letter and pattern first, colour third. */
export interface VehicleSign {
  readonly letter: string;
  readonly pattern: MapLine['pattern'];
  /** Token of its colour. */
  readonly tone: string;
}

export interface RunStop {
  /** Row of the plan's stops. */
  readonly row: number;
  /** 1 for the vehicle's first stop of the day, counted on through its trips. */
  readonly number: number;
  readonly place: number;
  readonly communities: readonly number[];
  readonly arriveMinute: number;
  readonly departMinute: number;
  readonly loadKg: number;
  /** Null without inoculant. */
  readonly packC: number | null;
  readonly hotBandMaxC: number | null;
}

export interface RunTrip {
  /** Row of the plan's trips. */
  readonly row: number;
  readonly leaveMinute: number;
  readonly returnMinute: number;
  readonly iceKg: number;
  readonly stops: readonly RunStop[];
}

/** What a vehicle does on one day. */
export interface VehicleRun {
  readonly vehicle: number;
  readonly id: string;
  readonly sign: VehicleSign;
  readonly trips: readonly RunTrip[];
  readonly stops: readonly RunStop[];
  readonly zones: readonly string[];
  readonly leaveMinute: number;
  readonly returnMinute: number;
  readonly kilometres: number;
  readonly loadKg: number;
  /** Most litres in the box at a time. */
  readonly coolLitres: number;
  readonly boxLitres: number;
  /** Warmest packs of the day, and the same in air 2 K hotter; null without inoculant. */
  readonly packMaxC: number | null;
  readonly hotBandMaxC: number | null;
  /** Longest time of any pack above the storage limit on its label; null where none is stated. */
  readonly hoursAboveStorage: number | null;
}

const PATTERNS = ['a', 'b', 'c', 'd'] as const;

/** The first four vehicles pair pattern and colour; the next four pair them anew, so that no two of sixteen look alike. */
export function vehicleSign(vehicle: number): VehicleSign {
  const round = Math.floor(vehicle / PATTERNS.length);
  return {
    letter: String.fromCharCode(65 + (vehicle % 26)) + (vehicle < 26 ? '' : String(Math.floor(vehicle / 26) + 1)),
    pattern: PATTERNS[vehicle % 4] ?? 'a',
    tone: `vehicle-${PATTERNS[(vehicle + round) % 4]}`,
  };
}

/** The vehicles that run on a day. */
export function vehicleRuns(plan: Plan, scenario: Scenario, iso: string): VehicleRun[] {
  const { vehicle: vehicles, date } = plan.delivery.trips;
  const rows = [...date.keys()].filter((row) => date[row] === iso);
  const running = [...new Set(rows.map((row) => vehicles[row] ?? -1))].sort((a, b) => a - b);
  return running.map((vehicle) => {
    const own = rows.filter((row) => vehicles[row] === vehicle);
    return describeRun(plan, scenario, vehicle, own);
  });
}

function describeRun(plan: Plan, scenario: Scenario, vehicle: number, rows: readonly number[]): VehicleRun {
  const { trips, stops: columns } = plan.delivery;
  const own = tripsWithStops(plan, rows);
  const stops = own.flatMap((trip) => trip.stops);
  const ofTrips = (column: readonly number[]) => rows.map((row) => column[row] ?? 0);
  const most = (column: readonly (number | null)[]) => highest(stops.map(({ row }) => column[row] ?? null));
  return {
    vehicle,
    id: plan.ids.vehicles[vehicle] ?? '',
    sign: vehicleSign(vehicle),
    trips: own,
    stops,
    zones: zonesOf(scenario, stops),
    leaveMinute: Math.min(...ofTrips(trips.leaveMinute)),
    returnMinute: Math.max(...ofTrips(trips.returnMinute)),
    kilometres: sum(ofTrips(trips.kilometres)),
    loadKg: sum(ofTrips(trips.loadKg)),
    coolLitres: Math.max(...ofTrips(trips.coolLitres)),
    boxLitres: scenario.vehicles[vehicle]?.coolLitres ?? 0,
    packMaxC: most(columns.packMaxC),
    hotBandMaxC: most(columns.hotBandMaxC),
    hoursAboveStorage: most(columns.hoursAboveStorage),
  };
}

function tripsWithStops(plan: Plan, rows: readonly number[]): RunTrip[] {
  const { trips, stops } = plan.delivery;
  let number = 0;
  return rows.map((row) => ({
    row,
    leaveMinute: trips.leaveMinute[row] ?? 0,
    returnMinute: trips.returnMinute[row] ?? 0,
    iceKg: trips.iceKg[row] ?? 0,
    stops: [...stops.trip.keys()]
      .filter((stop) => stops.trip[stop] === row)
      .map((stop) => {
        number += 1;
        return {
          row: stop,
          number,
          place: stops.place[stop] ?? -1,
          communities: communitiesAt(plan, stop),
          arriveMinute: stops.arriveMinute[stop] ?? 0,
          departMinute: stops.departMinute[stop] ?? 0,
          loadKg: stops.loadKg[stop] ?? 0,
          packC: stops.packC[stop] ?? null,
          hotBandMaxC: stops.hotBandMaxC[stop] ?? null,
        };
      }),
  }));
}

/** Communities that are handed goods at a stop, each once. */
function communitiesAt({ delivery, allocation }: Plan, stop: number): number[] {
  const consignments = (delivery.stops.loads[stop] ?? []).map((load) => delivery.loads.consignment[load] ?? -1);
  return [...new Set(consignments.map((one) => allocation.consignments.community[one] ?? -1))];
}

function zonesOf({ zones, communities }: Scenario, stops: readonly RunStop[]): string[] {
  const served = new Set(stops.flatMap((stop) => stop.communities.map((one) => communities[one]?.zoneId ?? null)));
  return zones.filter(({ id }) => served.has(id)).map(({ name }) => name);
}

/** First and last full hour of a day's runs, in minutes. */
export function hoursOut(runs: readonly VehicleRun[]): readonly [from: number, to: number] {
  if (runs.length === 0) return [6 * 60, 18 * 60];
  const from = Math.min(...runs.map(({ leaveMinute }) => leaveMinute));
  const to = Math.max(...runs.map(({ returnMinute }) => returnMinute));
  return [Math.floor(from / 60) * 60, Math.ceil(to / 60) * 60];
}

/** The minute to show: the one asked for, else the middle of the morning, within the hours that vehicles are out. */
export const minuteToShow = (asked: number | null, [from, to]: readonly [number, number]): number =>
  Math.max(from, Math.min(to, asked ?? 10 * 60));

function highest(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.max(...known);
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
