import type { Scenario } from '../../../vocabulary/scenario.ts';
import type { ReferenceTrip } from '../../../vocabulary/stage-results/calendar.ts';
import type { Needs } from '../../../vocabulary/stage-results/needs.ts';
import type { Places, TravelTable } from '../../../vocabulary/stage-results/places.ts';

/** How the reference vehicle's class gets to each zone's hand-over places, each from its nearest depot. */
export interface ZoneWays {
  /** Depot that most of the zone's hectares are nearest to on passable roads; -1: none reaches it. */
  readonly depot: Int32Array;
  /**
   * On a planning day in a road state: share of the zone's hectares with a way there and back within the day's hours, and
   * their mean minutes there.
   */
  on(zone: number, day: number, roadState: number): ZoneWay;
}

export interface ZoneWay {
  readonly share: number;
  /** NaN where the share is nought. */
  readonly minutes: number;
}

const NO_WAY: ZoneWay = { share: 0, minutes: Number.NaN };

/**
 * @param roomMinutes what the day leaves for the drive there and back, from a depot, in quarter hours so that few differ
 */
export function findZoneWays(
  scenario: Scenario,
  places: Places,
  needs: Needs,
  trip: ReferenceTrip,
  roomMinutes: (depot: number, day: number) => number,
): ZoneWays {
  const zones = scenario.zones.length + 1;
  const { travel } = places;
  const vehicleClass = travel.vehicleClass[trip.vehicle] ?? -1;
  const depots = depotsOfClass(scenario, places, vehicleClass);
  const land = hectaresByPlace(scenario, places, needs);
  const known = new Map<string, ZoneWay[]>();
  const waysOn = (day: number, state: number): ZoneWay[] => {
    const closures = travel.dayClosureSet[day] ?? 0;
    const room = Float64Array.from(scenario.depots, (_, depot) => roomMinutes(depot, day));
    const key = `${closures} ${state} ${room.join()}`;
    const found = known.get(key);
    if (found) return found;
    const table = travel.tables[vehicleClass]?.[closures]?.[state];
    const made = land.map((byPlace) => (table ? wayOf(scenario, table, depots, room, byPlace) : NO_WAY));
    known.set(key, made);
    return made;
  };
  const passable = travel.tables[vehicleClass]?.[0]?.[0];
  return {
    depot: Int32Array.from({ length: zones }, (_, zone) =>
      passable ? mainDepot(scenario, passable, depots, land[zone] ?? new Map()) : -1,
    ),
    on: (zone, day, state) => waysOn(day, state)[zone] ?? NO_WAY,
  };
}

/** Depots that have a vehicle of the class. */
function depotsOfClass({ depots, vehicles }: Scenario, { travel }: Places, vehicleClass: number): number[] {
  const ids = new Set(vehicles.flatMap(({ depotId }, v) => (travel.vehicleClass[v] === vehicleClass ? [depotId] : [])));
  return depots.flatMap(({ id }, depot) => (ids.has(id) ? [depot] : []));
}

/** Per zone, planned hectares of each hand-over place. */
function hectaresByPlace(scenario: Scenario, places: Places, needs: Needs): Map<number, number>[] {
  const land = Array.from({ length: scenario.zones.length + 1 }, () => new Map<number, number>());
  needs.community.forEach((community, row) => {
    const zone = needs.zone[row] as number;
    const byPlace = land[zone < 0 ? scenario.zones.length : zone] as Map<number, number>;
    const place = places.communityPlace[community] as number;
    byPlace.set(place, (byPlace.get(place) ?? 0) + (needs.plannedHa[row] as number));
  });
  return land;
}

function wayOf(
  { depots }: Scenario,
  table: TravelTable,
  from: readonly number[],
  room: Float64Array,
  byPlace: ReadonlyMap<number, number>,
): ZoneWay {
  let [total, reached, minutes] = [0, 0, 0];
  for (const [place, hectares] of byPlace) {
    total += hectares;
    const { depot, there, back } = nearestDepot(table, from, depots.length + place);
    if (depot < 0 || there + back > (room[depot] as number)) continue;
    reached += hectares;
    minutes += hectares * there;
  }
  return reached > 0 ? { share: reached / total, minutes: minutes / reached } : NO_WAY;
}

function mainDepot(
  { depots }: Scenario,
  table: TravelTable,
  from: readonly number[],
  byPlace: ReadonlyMap<number, number>,
): number {
  const served = new Float64Array(depots.length);
  for (const [place, hectares] of byPlace) {
    const { depot } = nearestDepot(table, from, depots.length + place);
    if (depot >= 0) served[depot] = (served[depot] as number) + hectares;
  }
  const most = Math.max(0, ...served);
  return most > 0 ? served.indexOf(most) : -1;
}

interface NearestDepot {
  /** -1: none has a way there and back. */
  readonly depot: number;
  readonly there: number;
  readonly back: number;
}

function nearestDepot(table: TravelTable, from: readonly number[], site: number): NearestDepot {
  let nearest: NearestDepot = { depot: -1, there: Number.POSITIVE_INFINITY, back: Number.POSITIVE_INFINITY };
  for (const depot of from) {
    const there = legMinutes(table, depot, site);
    if (there >= nearest.there) continue;
    const back = legMinutes(table, site, depot);
    if (back < Number.POSITIVE_INFINITY) nearest = { depot, there, back };
  }
  return nearest;
}

function legMinutes(table: TravelTable, from: number, to: number): number {
  const row = table.destinations.subarray(table.offsets[from] as number, table.offsets[from + 1] as number);
  const at = row.indexOf(to);
  return at < 0 ? Number.POSITIVE_INFINITY : (table.minutes[(table.offsets[from] as number) + at] as number);
}
