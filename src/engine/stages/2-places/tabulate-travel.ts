import { ShortestPaths } from '../../numerics/shortest-paths.ts';
import { accessSpeedKmPerHour } from '../../science/travel-time.ts';
import { ROAD_STATES, type RoadState } from '../../vocabulary/places.ts';
import type { RoadGraph, TravelTable, VehicleClass } from '../../vocabulary/stage-results/places.ts';
import type { ArcCosting } from './cost-arcs.ts';

/** Up to this many sites every leg is kept; beyond it, the nearest of each site and the legs to and from depots. */
const DENSE_SITES = 700;
const NEAREST_SITES = 64;

/** Tables of all classes, closure sets and road states: tables[class][closureSet][roadState]. Equal ones are one object. */
export function tabulateTravel(
  graph: RoadGraph,
  classes: readonly VehicleClass[],
  closureSets: readonly (readonly number[])[],
  depotCount: number,
  costing: ArcCosting,
): readonly (readonly (readonly TravelTable[])[])[] {
  const paths = new ShortestPaths({ offsets: graph.arcOffsets, to: graph.arcTo });
  return classes.map((vehicleClass, classIndex) => {
    const search = new SiteSearch(graph, classIndex, depotCount, paths);
    const made: { readonly costs: Float64Array; readonly accessKmPerHour: number; readonly table: TravelTable }[] = [];
    return closureSets.map((closed) =>
      ROAD_STATES.map((roadState) => {
        const costs = costing(vehicleClass, closed, roadState);
        const accessKmPerHour = accessSpeedKmPerHour(roadState);
        const same = made.find((one) => one.accessKmPerHour === accessKmPerHour && equalColumns(one.costs, costs));
        if (same) return same.table;
        const table = search.tabulate(costs, new SiteLegs(graph, classIndex, roadState));
        made.push({ costs, accessKmPerHour, table });
        return table;
      }),
    );
  });
}

/** What a leg adds to the way between two nodes: the stretch between each site and its road. */
export class SiteLegs {
  readonly node: Int32Array;
  readonly accessKm: Float64Array;
  private readonly accessKmPerHour: number;

  constructor(graph: RoadGraph, classIndex: number, roadState: RoadState) {
    this.node = graph.siteNode[classIndex] as Int32Array;
    this.accessKm = graph.siteAccessKm[classIndex] as Float64Array;
    this.accessKmPerHour = accessSpeedKmPerHour(roadState);
  }

  minutes(from: number, to: number, roadMinutes: number): number {
    return from === to ? 0 : roadMinutes + (this.offRoadKm(from, to) / this.accessKmPerHour) * 60;
  }

  kilometres(from: number, to: number, roadKm: number): number {
    return from === to ? 0 : roadKm + this.offRoadKm(from, to);
  }

  private offRoadKm(from: number, to: number): number {
    return (this.accessKm[from] as number) + (this.accessKm[to] as number);
  }
}

/** One vehicle class's sites on the graph, with the memory of the search. */
class SiteSearch {
  private readonly paths: ShortestPaths;
  private readonly arcKm: Float64Array;
  private readonly siteNode: Int32Array;
  private readonly sitesAtNode: readonly (readonly number[])[];
  private readonly depotCount: number;
  private readonly depotsOnRoads: number;
  private readonly sitesOnRoads: number;

  constructor(graph: RoadGraph, classIndex: number, depotCount: number, paths: ShortestPaths) {
    this.paths = paths;
    this.arcKm = graph.arcKm;
    this.siteNode = graph.siteNode[classIndex] as Int32Array;
    this.depotCount = depotCount;
    this.sitesOnRoads = this.siteNode.filter((node) => node >= 0).length;
    this.depotsOnRoads = this.siteNode.subarray(0, depotCount).filter((node) => node >= 0).length;
    const sitesAtNode: number[][] = Array.from({ length: graph.nodeCount }, () => []);
    for (const [site, node] of this.siteNode.entries()) sitesAtNode[node]?.push(site);
    this.sitesAtNode = sitesAtNode;
  }

  tabulate(costs: Float64Array, legs: SiteLegs): TravelTable {
    const offsets = [0];
    const destinations: number[] = [];
    const minutes: number[] = [];
    const kilometres: number[] = [];
    for (const from of this.siteNode.keys()) {
      for (const to of this.reach(from, costs)) {
        const node = this.siteNode[to] as number;
        destinations.push(to);
        minutes.push(legs.minutes(from, to, this.paths.cost[node] as number));
        kilometres.push(legs.kilometres(from, to, this.paths.length[node] as number));
      }
      offsets.push(destinations.length);
    }
    return {
      offsets: Int32Array.from(offsets),
      destinations: Int32Array.from(destinations),
      minutes: Float64Array.from(minutes),
      kilometres: Float64Array.from(kilometres),
    };
  }

  /** Sites to keep legs to, ascending: all that can be reached, or where there are many the nearest and the depots. */
  private reach(from: number, costs: Float64Array): readonly number[] {
    const origin = this.siteNode[from] as number;
    if (origin < 0) return [];
    const all = this.siteNode.length <= DENSE_SITES || from < this.depotCount;
    const kept: number[] = [];
    let found = 0;
    let depotsLeft = this.depotsOnRoads;
    this.paths.start(origin, costs, this.arcKm);
    for (let node = this.paths.settleNext(); node >= 0; node = this.paths.settleNext()) {
      for (const site of this.sitesAtNode[node] ?? []) {
        found++;
        if (site < this.depotCount) depotsLeft--;
        if (all || site < this.depotCount || found <= NEAREST_SITES) kept.push(site);
      }
      if (found === this.sitesOnRoads || (!all && found >= NEAREST_SITES && depotsLeft === 0)) break;
    }
    return kept.sort((a, b) => a - b);
  }
}

function equalColumns(a: Float64Array, b: Float64Array): boolean {
  return a.every((value, i) => value === b[i]);
}
