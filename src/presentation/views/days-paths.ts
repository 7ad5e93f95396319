import type { Plan, Position, Scenario } from '../../engine/index.ts';
import type { RunStop, RunTrip, VehicleRun } from './days-vehicles.ts';
import type { MapLine, MapSymbol } from './map-view.ts';

/** The way along a leg: from its site to the road, along the roads, to the next site. */
export function legPath({ delivery, places }: Plan, { depots, roads }: Scenario, leg: number): Position[] {
  const driven = delivery.legs[leg];
  if (!driven) return [];
  const site = (index: number): Position => {
    const place = index - depots.length;
    return depots[index]?.position ?? [places.placeLon[place] ?? 0, places.placeLat[place] ?? 0];
  };
  const along = driven.pieces.flatMap(([road, from, to]) => stretch(roads[road]?.positions ?? [], from, to));
  return [site(driven.fromSite), ...along, site(driven.toSite)];
}

/** A road from one place along it to another, in vertices: 2.5 is half way from vertex 2 to vertex 3. */
function stretch(road: readonly Position[], from: number, to: number): Position[] {
  const low = Math.floor(Math.min(from, to)) + 1;
  const high = Math.ceil(Math.max(from, to));
  const between = Array.from({ length: Math.max(0, high - low) }, (_, i) => vertexAt(road, low + i));
  return [vertexAt(road, from), ...(from <= to ? between : between.reverse()), vertexAt(road, to)];
}

function vertexAt(road: readonly Position[], at: number): Position {
  const below = road[Math.floor(at)] ?? [0, 0];
  return partWay(below, road[Math.ceil(at)] ?? below, at - Math.floor(at));
}

const partWay = (a: Position, b: Position, part: number): Position => [
  a[0] + (b[0] - a[0]) * part,
  a[1] + (b[1] - a[1]) * part,
];

/** Legs of a trip in the order driven, the way home last. */
const legsOf = ({ delivery }: Plan, { row, stops }: RunTrip): number[] => [
  ...stops.map((stop) => delivery.stops.leg[stop.row] ?? -1),
  delivery.trips.returnLeg[row] ?? -1,
];

/** The routes of a day. What a vehicle drives twice is drawn once, so that the way back does not fill the dashes. */
export function routesOf(plan: Plan, scenario: Scenario, runs: readonly VehicleRun[]): MapLine[] {
  return runs.flatMap(({ trips, sign: { pattern, tone } }) => {
    const paths = trips.flatMap((trip) => legsOf(plan, trip)).map((leg) => legPath(plan, scenario, leg));
    return drivenOnce(paths).map((positions) => ({ positions, pattern, tone }));
  });
}

function drivenOnce(paths: readonly (readonly Position[])[]): Position[][] {
  const seen = new Set<string>();
  const lines: Position[][] = [];
  for (const path of paths) {
    let open: Position[] | null = null;
    for (const [i, to] of path.entries()) {
      const from = path[i - 1];
      if (from === undefined || nameOf(from) === nameOf(to)) continue;
      const edge = [nameOf(from), nameOf(to)].sort().join();
      if (seen.has(edge)) {
        open = null;
        continue;
      }
      seen.add(edge);
      if (open === null) {
        open = [from];
        lines.push(open);
      }
      open.push(to);
    }
  }
  return lines;
}

/** A place to about a centimetre, as a name. */
const nameOf = ([lon, lat]: Position): string => `${lon.toFixed(7)} ${lat.toFixed(7)}`;

export type StopState = 'stop' | 'stop-now' | 'stop-done';

/** To come, there now, or handed over. */
export function stateOfStop({ arriveMinute, departMinute }: RunStop, minute: number): StopState {
  if (minute < arriveMinute) return 'stop';
  return minute < departMinute ? 'stop-now' : 'stop-done';
}

const [STOP_PIXELS, VEHICLE_PIXELS] = [17, 21];

/** Numbered stops by their state at a minute, then the vehicles where they are, so that these lie on top. */
export function marksAt(plan: Plan, scenario: Scenario, runs: readonly VehicleRun[], minute: number): MapSymbol[] {
  const stops = runs.flatMap(({ stops: own, sign }) =>
    own.map((stop): MapSymbol => {
      const position: Position = [plan.places.placeLon[stop.place] ?? 0, plan.places.placeLat[stop.place] ?? 0];
      const kind = stateOfStop(stop, minute);
      return { kind, position, text: String(stop.number), tone: sign.tone, size: STOP_PIXELS };
    }),
  );
  const vehicles = runs.map((run): MapSymbol => {
    const position = positionOf(plan, scenario, run, minute);
    return { kind: 'vehicle', position, text: run.sign.letter, tone: 'ink', size: VEHICLE_PIXELS };
  });
  return [...stops, ...vehicles];
}

/** Where a vehicle is at a minute: at a stop, at its depot, or along the leg in proportion to the time of it. */
export function positionOf(plan: Plan, scenario: Scenario, { trips }: VehicleRun, minute: number): Position {
  const trip = trips.findLast(({ leaveMinute }) => leaveMinute <= minute) ?? trips[0];
  if (!trip) return [0, 0];
  const legs = legsOf(plan, trip);
  const next = trip.stops.findIndex(({ departMinute }) => minute < departMinute);
  const stop = trip.stops[next];
  const path = legPath(plan, scenario, (stop ? legs[next] : legs.at(-1)) ?? -1);
  const left = (stop ? trip.stops[next - 1] : trip.stops.at(-1))?.departMinute ?? trip.leaveMinute;
  const arrives = stop?.arriveMinute ?? trip.returnMinute;
  return alongPath(path, Math.max(0, Math.min(1, (minute - left) / Math.max(1e-9, arrives - left))));
}

/** Lengths in degrees will do for a mark on a map of a district. */
function alongPath(path: readonly Position[], part: number): Position {
  const lengths = path
    .slice(1)
    .map(([lon, lat], i) => Math.hypot(lon - (path[i]?.[0] ?? lon), lat - (path[i]?.[1] ?? lat)));
  let left = part * lengths.reduce((all, length) => all + length, 0);
  for (const [i, length] of lengths.entries()) {
    if (left <= length && length > 0) return partWay(path[i] as Position, path[i + 1] as Position, left / length);
    left -= length;
  }
  return path.at(-1) ?? [0, 0];
}
