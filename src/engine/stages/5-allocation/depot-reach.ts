import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Places, TravelTable } from '../../vocabulary/stage-results/places.ts';

/** Depots that reach each hand-over place: those of place p stand at offsets[p] to offsets[p + 1], depots ascending. */
export interface DepotReach {
  readonly offsets: Int32Array;
  readonly depots: Int32Array;
  /** Shortest drive there among the depot's vehicle classes. */
  readonly minutes: Float64Array;
}

/**
 * A depot reaches a place where one of its vehicles can drive there and back on passable roads, before any closure that
 * comes later. Which day and whether it fits a shift is the delivery's question.
 */
export function depotsThatReach(scenario: Scenario, places: Places): DepotReach {
  const siteOfPlace = new Int32Array(places.handoverPlaces.length);
  places.sites.forEach((site, s) => {
    if (site.kind === 'handover') siteOfPlace[site.index] = s;
  });
  const classesOfDepot = vehicleClassesByDepot(scenario, places);
  const offsets = new Int32Array(siteOfPlace.length + 1);
  const depots: number[] = [];
  const minutes: number[] = [];
  siteOfPlace.forEach((site, p) => {
    classesOfDepot.forEach((classes, depot) => {
      const least = leastMinutes(places, classes, depot, site);
      if (least === Number.POSITIVE_INFINITY) return;
      depots.push(depot);
      minutes.push(least);
    });
    offsets[p + 1] = depots.length;
  });
  return { offsets, depots: Int32Array.from(depots), minutes: Float64Array.from(minutes) };
}

/** The nearest depot of a place, -1 where none reaches it; for goods to be kept cool the nearest with a cool store, if there is one. */
export function nearestDepot({ depots }: Scenario, reach: DepotReach, place: number, mustBeCool: boolean): number {
  const nearest = (mayStore: (depot: number) => boolean) => {
    let [best, least] = [-1, Number.POSITIVE_INFINITY];
    for (let k = reach.offsets[place] as number; k < (reach.offsets[place + 1] as number); k++) {
      const depot = reach.depots[k] as number;
      if ((reach.minutes[k] as number) < least && mayStore(depot)) [best, least] = [depot, reach.minutes[k] as number];
    }
    return best;
  };
  const cool = mustBeCool ? nearest((depot) => (depots[depot]?.coolStoreLitres ?? 0) > 0) : -1;
  return cool >= 0 ? cool : nearest(() => true);
}

function vehicleClassesByDepot(scenario: Scenario, places: Places): number[][] {
  const depotIndex = new Map(scenario.depots.map((depot, d) => [depot.id, d]));
  const classes: number[][] = scenario.depots.map(() => []);
  scenario.vehicles.forEach((vehicle, v) => {
    const own = classes[depotIndex.get(vehicle.depotId) ?? -1];
    const vehicleClass = places.travel.vehicleClass[v] as number;
    if (own && vehicle.payloadKg > 0 && !own.includes(vehicleClass)) own.push(vehicleClass);
  });
  return classes;
}

/** Depots are the first sites, in the order of scenario.depots. */
function leastMinutes(places: Places, classes: readonly number[], depotSite: number, site: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const vehicleClass of classes) {
    const passable = places.travel.tables[vehicleClass]?.[0]?.[0];
    if (!passable || legMinutes(passable, site, depotSite) === Number.POSITIVE_INFINITY) continue;
    least = Math.min(least, legMinutes(passable, depotSite, site));
  }
  return least;
}

/** Infinity where the leg cannot be driven. */
function legMinutes(table: TravelTable, from: number, to: number): number {
  let low = table.offsets[from] as number;
  let high = (table.offsets[from + 1] as number) - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const destination = table.destinations[middle] as number;
    if (destination === to) return table.minutes[middle] as number;
    if (destination < to) low = middle + 1;
    else high = middle - 1;
  }
  return Number.POSITIVE_INFINITY;
}
