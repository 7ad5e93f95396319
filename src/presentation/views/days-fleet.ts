import type { Plan, Scenario } from '../../engine/index.ts';
import { zonesOfCommunities } from './days-land.ts';
import type { MapLine } from './map-view.ts';

export type LinePattern = MapLine['pattern'];

/**
 * How a vehicle is told apart on map, table and chart: letter and line first, colour third. The letter is the vehicle's own on
 * every day; line and colour go by the vehicles of the day, so that the first four share neither.
 */
export interface VehicleMark {
  readonly letter: string;
  readonly pattern: LinePattern;
  /** Token of its colour. */
  readonly tone: string;
}

const PATTERNS: readonly LinePattern[] = ['a', 'b', 'c', 'd'];

/** @param nth place among the vehicles of the day; from the fifth on, patterns meet other colours */
function markOf(vehicle: number, nth: number): VehicleMark {
  const pattern = PATTERNS[nth % 4] ?? 'a';
  const tone = PATTERNS[(nth + Math.floor(nth / 4)) % 4] ?? 'a';
  return { letter: letterOf(vehicle), pattern, tone: `vehicle-${tone}` };
}

/** A to Z, then A2 to Z2, and so on. */
export function letterOf(index: number): string {
  const round = Math.floor(index / 26);
  return String.fromCharCode(65 + (index % 26)) + (round === 0 ? '' : String(round + 1));
}

/** One hand-over stop of a vehicle's day. */
export interface DayStop {
  /** Row of the plan's stops. */
  readonly row: number;
  /** 1 first of the vehicle's day, through all its trips. */
  readonly number: number;
  readonly place: number;
  readonly arriveMinute: number;
  readonly startMinute: number;
  readonly departMinute: number;
  /** Rest of the crew on arrival; 0 where none is owed. */
  readonly restMinutes: number;
  /** Warmest so far at the hand-over, and in air 2 K hotter; null without inoculant. */
  readonly packC: number | null;
  readonly hotBandMaxC: number | null;
  readonly hoursAboveStorage: number | null;
}

export interface DayTrip {
  /** Row of the plan's trips. */
  readonly row: number;
  readonly number: number;
  readonly leaveMinute: number;
  readonly returnMinute: number;
  readonly iceKg: number;
  readonly stops: readonly DayStop[];
}

/** What one vehicle does on one day. */
export interface VehicleDay {
  readonly vehicle: number;
  readonly id: string;
  readonly mark: VehicleMark;
  readonly trips: readonly DayTrip[];
  readonly stopCount: number;
  readonly zones: readonly string[];
  readonly leaveMinute: number;
  readonly returnMinute: number;
  readonly kilometres: number;
  readonly loadKg: number;
  /** Most litres of packs in the box at once, and what the box takes; 0 without a box. */
  readonly coolLitres: number;
  readonly coolCapacityLitres: number;
  /** Warmest packs of the day up to their hand-over; null without inoculant. */
  readonly packMaxC: number | null;
  readonly hotBandMaxC: number | null;
  /** Most hours of any pack above the storage limit of its label; null where no label states one. */
  readonly hoursAboveStorage: number | null;
}

/** The vehicles that run on a day, in the order of the plan. */
export function vehiclesOfDay(plan: Plan, scenario: Scenario, iso: string): readonly VehicleDay[] {
  const { trips } = plan.delivery;
  const rows = trips.date.flatMap((date, row) => (date === iso ? [row] : []));
  const vehicles = [...new Set(rows.map((row) => trips.vehicle[row] ?? -1))];
  return vehicles.map((vehicle, nth) => {
    const own = tripsOf(
      plan,
      rows.filter((row) => trips.vehicle[row] === vehicle),
    );
    return vehicleDay(plan, scenario, vehicle, markOf(vehicle, nth), own);
  });
}

function vehicleDay(
  plan: Plan,
  scenario: Scenario,
  vehicle: number,
  mark: VehicleMark,
  own: readonly DayTrip[],
): VehicleDay {
  const { trips } = plan.delivery;
  const stops = own.flatMap((trip) => trip.stops);
  const over = (column: readonly number[]) => own.map(({ row }) => column[row] ?? 0);
  return {
    vehicle,
    id: plan.ids.vehicles[vehicle] ?? '',
    mark,
    trips: own,
    stopCount: stops.length,
    zones: zonesOfCommunities(
      plan,
      scenario,
      stops.flatMap(({ row }) => communitiesOfStop(plan, row)),
    ),
    leaveMinute: Math.min(...own.map(({ leaveMinute }) => leaveMinute)),
    returnMinute: Math.max(...own.map(({ returnMinute }) => returnMinute)),
    kilometres: sum(over(trips.kilometres)),
    loadKg: sum(over(trips.loadKg)),
    coolLitres: Math.max(...over(trips.coolLitres)),
    coolCapacityLitres: scenario.vehicles[vehicle]?.coolLitres ?? 0,
    packMaxC: warmest(stops.map(({ row }) => plan.delivery.stops.packMaxC[row] ?? null)),
    hotBandMaxC: warmest(stops.map(({ hotBandMaxC }) => hotBandMaxC)),
    hoursAboveStorage: warmest(stops.map(({ hoursAboveStorage }) => hoursAboveStorage)),
  };
}

/** Trips with their stops, which count on through the day. */
function tripsOf({ delivery: { trips, stops } }: Plan, rows: readonly number[]): DayTrip[] {
  let number = 0;
  return rows.map((row) => ({
    row,
    number: trips.trip[row] ?? 1,
    leaveMinute: trips.leaveMinute[row] ?? 0,
    returnMinute: trips.returnMinute[row] ?? 0,
    iceKg: trips.iceKg[row] ?? 0,
    stops: stops.trip.flatMap((trip, stop): DayStop[] => {
      if (trip !== row) return [];
      number += 1;
      return [
        {
          row: stop,
          number,
          place: stops.place[stop] ?? -1,
          arriveMinute: stops.arriveMinute[stop] ?? 0,
          startMinute: stops.startMinute[stop] ?? 0,
          departMinute: stops.departMinute[stop] ?? 0,
          restMinutes: stops.restMinutes[stop] ?? 0,
          packC: stops.packC[stop] ?? null,
          hotBandMaxC: stops.hotBandMaxC[stop] ?? null,
          hoursAboveStorage: stops.hoursAboveStorage[stop] ?? null,
        },
      ];
    }),
  }));
}

/** Communities (indexes of the plan) that are handed goods at a stop, each once. */
export function communitiesOfStop({ delivery, allocation }: Plan, stop: number): readonly number[] {
  const loads = delivery.stops.loads[stop] ?? [];
  return [
    ...new Set(loads.map((load) => allocation.consignments.community[delivery.loads.consignment[load] ?? -1] ?? -1)),
  ];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function warmest(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.max(...known);
}

/** First and last full hour between which a day's vehicles are out, in minutes. */
export function hoursOfDay(vehicles: readonly VehicleDay[]): { readonly from: number; readonly to: number } {
  if (vehicles.length === 0) return { from: 360, to: 1080 };
  const from = Math.min(...vehicles.map(({ leaveMinute }) => leaveMinute));
  const to = Math.max(...vehicles.map(({ returnMinute }) => returnMinute));
  return { from: Math.floor(from / 60) * 60, to: Math.ceil(to / 60) * 60 };
}

const USUAL_HOUR = 600;

/** The hour that the view shows: the one asked for, else ten o'clock, within the day's hours. */
export function shownHour(asked: number | null, { from, to }: { readonly from: number; readonly to: number }): number {
  return Math.max(from, Math.min(to, asked ?? USUAL_HOUR));
}
