import { ShortestPaths } from '../../numerics/shortest-paths.ts';
import { wetRoadRule } from '../../reference/speeds.ts';
import { ROAD_STATES } from '../../vocabulary/places.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Delivery } from '../../vocabulary/stage-results/delivery.ts';
import type { LegPath, Places, RoadPiece, VehicleClass } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import { openArcCosting } from './cost-arcs.ts';
import { measureRoads } from './measure-roads.ts';
import { SiteLegs } from './tabulate-travel.ts';

/** Traces legs one after another over the same roads. */
export type LegTracer = (
  vehicleClass: number,
  closureSet: number,
  roadState: number,
  fromSite: number,
  toSite: number,
) => LegPath;

/** The road pieces of one leg; see `openLegTracer`. */
export function traceLeg(
  scenario: Scenario,
  places: Places,
  vehicleClass: number,
  closureSet: number,
  roadState: number,
  fromSite: number,
  toSite: number,
): LegPath {
  return openLegTracer(scenario, places)(vehicleClass, closureSet, roadState, fromSite, toSite);
}

/** Every leg that a delivery drives, each once, in the order in which they are first driven. */
export function traceLegs(
  scenario: Scenario,
  places: Places,
  season: SeasonOutlook,
  delivery: Delivery,
): readonly LegPath[] {
  const trace = openLegTracer(scenario, places);
  const traced = new Map<string, LegPath>();
  const depotIndex = new Map(scenario.depots.map((depot, index) => [depot.id, index]));
  for (const { vehicle, day, trips } of delivery.vehicleDays) {
    const vehicleClass = places.travel.vehicleClass[vehicle] as number;
    const closureSet = places.travel.dayClosureSet[day] as number;
    const roadState = season.roadState[day] as number;
    const depot = depotIndex.get(scenario.vehicles[vehicle]?.depotId ?? '') ?? -1;
    for (const trip of trips) {
      const sites = [depot, ...trip.stops.map((stop) => stop.site), depot];
      for (let i = 1; i < sites.length; i++) {
        const leg = [vehicleClass, closureSet, roadState, sites[i - 1] as number, sites[i] as number] as const;
        const key = leg.join(' ');
        if (!traced.has(key)) traced.set(key, trace(...leg));
      }
    }
  }
  return [...traced.values()];
}

/**
 * Follows the shortest way between two sites by the same search that made the travel tables, so minutes and kilometres
 * are the table's own. Pieces follow one another along the roads; the stretches between the sites and their roads are
 * in the minutes and kilometres only.
 *
 * @throws RangeError where the vehicle class cannot drive the leg.
 */
export function openLegTracer(scenario: Scenario, places: Places): LegTracer {
  const { graph, classes, closureSets } = places.travel;
  const costing = openArcCosting(graph, measureRoads(scenario.roads), wetRoadRule(scenario.assumptions));
  const paths = new ShortestPaths({ offsets: graph.arcOffsets, to: graph.arcTo });
  const costsOf = new Map<string, Float64Array>();
  return (vehicleClass, closureSet, roadState, fromSite, toSite) => {
    const state = ROAD_STATES[roadState] ?? 'closed';
    const key = [vehicleClass, closureSet, state].join(' ');
    const costs =
      costsOf.get(key) ?? costing(classes[vehicleClass] as VehicleClass, closureSets[closureSet] ?? [], state);
    costsOf.set(key, costs);
    const legs = new SiteLegs(graph, vehicleClass, state);
    const [origin, target] = [legs.node[fromSite] ?? -1, legs.node[toSite] ?? -1];
    if (origin >= 0 && target >= 0) settle(paths, origin, target, costs, graph.arcKm);
    if (origin < 0 || target < 0 || paths.cost[target] === Number.POSITIVE_INFINITY) {
      throw new RangeError(`no way from site ${fromSite} to site ${toSite}`);
    }
    return {
      fromSite,
      toSite,
      vehicleClass,
      closureSet,
      roadState,
      minutes: legs.minutes(fromSite, toSite, paths.cost[target] as number),
      kilometres: legs.kilometres(fromSite, toSite, paths.length[target] as number),
      pieces: fromSite === toSite ? [] : followPieces(paths, graph.arcPieces, target),
    };
  };
}

function settle(paths: ShortestPaths, origin: number, target: number, costs: Float64Array, arcKm: Float64Array): void {
  paths.start(origin, costs, arcKm);
  for (let node = paths.settleNext(); node >= 0 && node !== target; node = paths.settleNext());
}

function followPieces(
  paths: ShortestPaths,
  arcPieces: readonly (readonly RoadPiece[])[],
  target: number,
): readonly RoadPiece[] {
  const arcs: number[] = [];
  for (let node = target; (paths.arcInto[node] as number) >= 0; node = paths.nodeBefore[node] as number) {
    arcs.push(paths.arcInto[node] as number);
  }
  const pieces: RoadPiece[] = [];
  for (const piece of arcs.reverse().flatMap((arc) => arcPieces[arc] ?? [])) {
    const before = pieces.at(-1);
    if (before && before.road === piece.road && before.to === piece.from && ahead(before) === ahead(piece)) {
      pieces[pieces.length - 1] = { road: piece.road, from: before.from, to: piece.to };
    } else pieces.push(piece);
  }
  return pieces;
}

function ahead({ from, to }: RoadPiece): boolean {
  return to > from;
}
