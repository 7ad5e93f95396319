import type { Plan, Position, Scenario } from '../../engine/index.ts';
import { alongRoad } from '../along-road.ts';
import type { DayStop, DayTrip, VehicleDay } from './days-fleet.ts';
import { districtBounds, type MapLine, type MapSymbol } from './map-view.ts';

/** Positions along one leg: from its site to the road, along the road, to the next site. */
export function legPositions(plan: Plan, scenario: Scenario, leg: number): Position[] {
  const driven = plan.delivery.legs[leg];
  if (!driven) return [];
  const site = (index: number): Position =>
    scenario.depots[index]?.position ?? placePosition(plan, index - scenario.depots.length);
  const along = driven.pieces.flatMap(([road, from, to]) => alongRoad(scenario.roads[road]?.positions ?? [], from, to));
  return withoutRepeats([site(driven.fromSite), ...along, site(driven.toSite)]);
}

export const placePosition = ({ places }: Plan, place: number): Position => [
  places.placeLon[place] ?? 0,
  places.placeLat[place] ?? 0,
];

const between = (a: Position, b: Position, part: number): Position => [
  a[0] + (b[0] - a[0]) * part,
  a[1] + (b[1] - a[1]) * part,
];

const isSame = (a: Position | undefined, b: Position | undefined): boolean => a?.[0] === b?.[0] && a?.[1] === b?.[1];

const withoutRepeats = (line: readonly Position[]): Position[] =>
  line.filter((position, i) => i === 0 || !isSame(position, line[i - 1]));

/** Legs of a trip in the order driven, the way home last. */
function legsOf({ delivery }: Plan, trip: DayTrip): number[] {
  return [...trip.stops.map(({ row }) => delivery.stops.leg[row] ?? -1), delivery.trips.returnLeg[trip.row] ?? -1];
}

/**
 * The routes of a day. What a vehicle drives twice, out and back, is drawn once, so that the way back does not fill the
 * dashes of the way out.
 */
export function routeLines(plan: Plan, scenario: Scenario, vehicles: readonly VehicleDay[]): MapLine[] {
  return vehicles.flatMap(({ trips, mark }) => {
    const legs = trips.flatMap((trip) => legsOf(plan, trip));
    const driven = legs.map((leg) => legPositions(plan, scenario, leg));
    return drawnOnce(driven).map((positions): MapLine => ({ positions, pattern: mark.pattern, tone: mark.tone }));
  });
}

function drawnOnce(ways: readonly (readonly Position[])[]): Position[][] {
  const drawn = new Set<string>();
  const lines: Position[][] = [];
  for (const way of ways) {
    let line: Position[] | null = null;
    for (let i = 1; i < way.length; i++) {
      const [from, to] = [way[i - 1] as Position, way[i] as Position];
      const key = edgeKey(from, to);
      if (drawn.has(key)) {
        line = null;
        continue;
      }
      drawn.add(key);
      // A way that goes on where the last one ended keeps its dashes running.
      if (line === null && isSame(lines.at(-1)?.at(-1), from)) line = lines.at(-1) ?? null;
      if (line === null) {
        line = [from];
        lines.push(line);
      }
      line.push(to);
    }
  }
  return lines;
}

/** About a centimetre. */
const PLACES = 1e7;

function edgeKey(from: Position, to: Position): string {
  const [a, b] = [from, to].map(([lon, lat]) => `${Math.round(lon * PLACES)} ${Math.round(lat * PLACES)}`);
  return (a ?? '') < (b ?? '') ? `${a} ${b}` : `${b} ${a}`;
}

const STOP_PIXELS = 18;
const VEHICLE_PIXELS = 22;

export type StopState = 'stop' | 'stop-now' | 'stop-done';

/** To come, there now, or handed over. */
export function stopState({ arriveMinute, departMinute }: DayStop, minute: number): StopState {
  if (minute < arriveMinute) return 'stop';
  return minute < departMinute ? 'stop-now' : 'stop-done';
}

/** Stops with their number, and each vehicle where it is at that minute. Vehicles last, so that they lie on top. */
export function dayMarks(plan: Plan, scenario: Scenario, vehicles: readonly VehicleDay[], minute: number): MapSymbol[] {
  const stops = vehicles.flatMap(({ trips, mark }) =>
    trips.flatMap((trip) =>
      trip.stops.map(
        (stop): MapSymbol => ({
          kind: stopState(stop, minute),
          position: placePosition(plan, stop.place),
          text: String(stop.number),
          tone: mark.tone,
          size: STOP_PIXELS,
        }),
      ),
    ),
  );
  const moving = vehicles.map(
    (vehicle): MapSymbol => ({
      kind: 'vehicle',
      position: vehiclePosition(plan, scenario, vehicle, minute),
      text: vehicle.mark.letter,
      tone: 'ink',
      size: VEHICLE_PIXELS,
    }),
  );
  const reach = COVERED_PART * districtWidth(scenario);
  const isCovered = (stop: MapSymbol) => moving.some(({ position }) => lengthOf(position, stop.position) < reach);
  // A number that a vehicle stands on would shine through its letter.
  return [...stops.map((stop) => (isCovered(stop) ? { ...stop, text: '' } : stop)), ...moving];
}

/** How near a vehicle covers a stop's number, as a part of the district's width. */
const COVERED_PART = 0.025;

function districtWidth(scenario: Scenario): number {
  const [west, , east] = districtBounds(scenario) ?? [0, 0, 0];
  return east - west;
}

/** Where a vehicle is: on the road in proportion to the time of the leg, at a stop, or at its depot. */
export function vehiclePosition(plan: Plan, scenario: Scenario, vehicle: VehicleDay, minute: number): Position {
  const trip = vehicle.trips.findLast(({ leaveMinute }) => leaveMinute <= minute) ?? vehicle.trips[0];
  if (!trip) return [0, 0];
  const legs = legsOf(plan, trip);
  let left = trip.leaveMinute;
  for (const [i, stop] of [...trip.stops, null].entries()) {
    const arrive = stop?.arriveMinute ?? trip.returnMinute;
    if (minute < arrive) {
      const part = Math.max(0, (minute - left) / Math.max(1e-9, arrive - left));
      return alongLine(legPositions(plan, scenario, legs[i] ?? -1), part);
    }
    if (stop && minute < stop.departMinute) return placePosition(plan, stop.place);
    left = stop?.departMinute ?? left;
  }
  return legPositions(plan, scenario, legs.at(-1) ?? -1).at(-1) ?? [0, 0];
}

/** The position a part of the way along a line. Near the equator and over tens of kilometres, lengths in degrees will do. */
function alongLine(line: readonly Position[], part: number): Position {
  const lengths = line.slice(1).map((to, i) => lengthOf(line[i] ?? to, to));
  let left = part * lengths.reduce((sum, length) => sum + length, 0);
  for (const [i, length] of lengths.entries()) {
    if (left <= length) return between(line[i] as Position, line[i + 1] as Position, length === 0 ? 0 : left / length);
    left -= length;
  }
  return line.at(-1) ?? [0, 0];
}

const RADIAN = Math.PI / 180;

const lengthOf = (a: Position, b: Position): number =>
  Math.hypot((b[0] - a[0]) * Math.cos(((a[1] + b[1]) / 2) * RADIAN), b[1] - a[1]);
