import FlatQueue from 'flatqueue';
import {
  AT_VERTEX_KM,
  ROAD_REACH_KM,
  ROAD_SPEED_KM_PER_H,
  UNMADE_CLASSES,
  WET_SPEED_FACTOR,
  WET_TRACK_FACTOR,
} from '../reference/speeds.ts';
import type { Vehicle } from '../vocabulary/fleet.ts';
import type { Position, RoadClass } from '../vocabulary/places.ts';
import type { RoadLine, Scenario } from '../vocabulary/scenario.ts';
import { at, type CheckedCase, dayOf } from './checked-case.ts';
import { nearestOnSegment, segmentKm } from './own-earth.ts';

export const isMotorcycle = (vehicle: Vehicle) => vehicle.kind.toLowerCase().includes('moto');

/** km/h on a road in a road state; 0 where it is shut to the vehicle. */
export function ownSpeed(
  { assumptions }: Scenario,
  { roadClass, surface }: RoadLine,
  state: number,
  motorcycle: boolean,
): number {
  const bed = UNMADE_CLASSES.includes(roadClass) ? 'track' : surface;
  const isShutTo = (assumptions[`road.shut.${bed}`] ?? (bed === 'earth' || bed === 'track' ? 1 : 0)) > 0;
  const motorcyclesToo = (assumptions['road.shut.motorcycles'] ?? 0) > 0;
  const dry = ROAD_SPEED_KM_PER_H[roadClass].value;
  if (state === 0) return dry;
  if (state === 2 && isShutTo && (!motorcycle || motorcyclesToo)) return 0;
  const usual = bed === 'track' ? WET_TRACK_FACTOR.value : WET_SPEED_FACTOR[bed].value;
  return dry * (assumptions[`road.wetSpeed.${bed}`] ?? usual);
}

/** km/h between a place and the road it joins: as on a track. */
export function ownAccessSpeed(state: number): number {
  return ROAD_SPEED_KM_PER_H.track.value * (state === 0 ? 1 : WET_TRACK_FACTOR.value);
}

/** Roads that a decision closes: the one nearest to its point, between its dates. */
export function closedByDecision(
  c: CheckedCase,
): readonly { readonly road: number; readonly from: number; readonly to: number }[] {
  return c.decisions.decisions.flatMap((decision) => {
    if (decision.kind !== 'road-closed') return [];
    let best = { road: -1, km: Number.POSITIVE_INFINITY };
    c.scenario.roads.forEach(({ positions }, road) => {
      for (let i = 1; i < positions.length; i++) {
        const { km } = nearestOnSegment([decision.lon, decision.lat], at(positions, i - 1), at(positions, i));
        if (km < best.km) best = { road, km };
      }
    });
    if (best.km > ROAD_REACH_KM.value) return [];
    return [{ road: best.road, from: dayOf(decision.from), to: dayOf(decision.to) }];
  });
}

/** Roads closed on a day, by the file and by the decisions. */
export function closedRoads(c: CheckedCase, day: number): ReadonlySet<number> {
  const closed = new Set<number>();
  c.scenario.roads.forEach(({ closedFrom, closedTo }, road) => {
    if (closedFrom === null && closedTo === null) return;
    if ((closedFrom === null || day >= closedFrom) && (closedTo === null || day <= closedTo)) closed.add(road);
  });
  for (const { road, from, to } of closedByDecision(c)) if (day >= from && day <= to) closed.add(road);
  return closed;
}

export interface Join {
  readonly road: number;
  /** The place lies between the vertices `vertex` and `vertex + 1`, `t` of the way. */
  readonly vertex: number;
  readonly t: number;
  readonly km: number;
}

/** Every vertex of every road as a node; sites joined to the roads that a class of vehicles may use. */
export interface OwnNetwork {
  readonly nodeCount: number;
  /** Node of each vertex of each road. */
  readonly nodes: readonly Int32Array[];
}

export function openNetwork(scenario: Scenario): OwnNetwork {
  const known = new Map<string, number>();
  const nodes = scenario.roads.map(({ positions }) =>
    Int32Array.from(positions, ([lon, lat]) => {
      const key = `${Math.round(lon * 1e7)} ${Math.round(lat * 1e7)}`;
      const node = known.get(key) ?? known.size;
      known.set(key, node);
      return node;
    }),
  );
  return { nodeCount: known.size, nodes };
}

/**
 * Where each site (depots, then places) joins the roads of a class: the nearest road, for a place on a piece of network
 * that holds a depot of the class, all closures left aside. Null where it joins none.
 */
export function joinSites(
  c: CheckedCase,
  network: OwnNetwork,
  allowed: readonly RoadClass[],
  sites: readonly Position[],
  depotsOfClass: ReadonlySet<number>,
): readonly (Join | null)[] {
  const isUsable = (road: number) => allowed.includes(at(c.scenario.roads, road).roadClass);
  const piece = piecesOf(network, isUsable);
  const pieceOf = (road: number) => piece(at(at(network.nodes, road), 0));
  const depots = c.scenario.depots.map(({ position }) => nearestJoin(c.scenario, position, isUsable));
  const served = new Set(
    depots.flatMap((join, depot) => (join && depotsOfClass.has(depot) ? [pieceOf(join.road)] : [])),
  );
  return sites.map((position, site) =>
    site < depots.length
      ? at(depots, site)
      : nearestJoin(c.scenario, position, (road) => isUsable(road) && served.has(pieceOf(road))),
  );
}

function piecesOf(network: OwnNetwork, isUsable: (road: number) => boolean): (node: number) => number {
  const parent = Int32Array.from({ length: network.nodeCount }, (_, i) => i);
  const root = (start: number): number => {
    let node = start;
    while (parent[node] !== node) {
      parent[node] = parent[parent[node] as number] as number;
      node = parent[node] as number;
    }
    return node;
  };
  network.nodes.forEach((nodes, road) => {
    if (isUsable(road)) for (const node of nodes) parent[root(node)] = root(nodes[0] as number);
  });
  return root;
}

/** A degree of latitude is at least 110.5 km long. */
const REACH_DEGREES = ROAD_REACH_KM.value / 110.5;

function nearestJoin(scenario: Scenario, position: Position, isUsable: (road: number) => boolean): Join | null {
  let best: Join | null = null;
  const [, lat] = position;
  scenario.roads.forEach(({ positions }, road) => {
    if (!isUsable(road)) return;
    for (let i = 1; i < positions.length; i++) {
      const a = at(positions, i - 1);
      const b = at(positions, i);
      if (Math.min(a[1], b[1]) > lat + REACH_DEGREES || Math.max(a[1], b[1]) < lat - REACH_DEGREES) continue;
      const { t, km } = nearestOnSegment(position, a, b);
      if (km <= ROAD_REACH_KM.value && (best === null || km < best.km))
        best = { road, vertex: i - 1, t: ontoVertex(t, segmentKm(a, b)), km };
    }
  });
  return best;
}

/** A metre from an end of a stretch is its end. */
function ontoVertex(t: number, km: number): number {
  if (Math.min(t, 1 - t) * km >= AT_VERTEX_KM.value) return t;
  return t <= 0.5 ? 0 : 1;
}

export function placeOfJoin({ scenario }: CheckedCase, { road, vertex, t }: Join): Position {
  const { positions } = at(scenario.roads, road);
  const [a, b] = [at(positions, vertex), at(positions, vertex + 1)];
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

/** Minutes from a depot to every site and back, on one day for one vehicle; infinite where there is no way. */
export interface OwnWays {
  readonly out: Float64Array;
  readonly back: Float64Array;
}

export function findWays(
  c: CheckedCase,
  network: OwnNetwork,
  joins: readonly (Join | null)[],
  depot: number,
  vehicle: Vehicle,
  closed: ReadonlySet<number>,
  state: number,
): OwnWays {
  const arcs = listArcs(c, network, joins, vehicle, closed, state);
  const nodes = network.nodeCount + joins.length;
  const start = network.nodeCount + depot;
  const toSites = (minutes: Float64Array) => minutes.slice(network.nodeCount);
  return {
    out: toSites(spread(nodes, arcs.from, arcs.to, arcs.minutes, start)),
    back: toSites(spread(nodes, arcs.to, arcs.from, arcs.minutes, start)),
  };
}

interface Arcs {
  readonly from: number[];
  readonly to: number[];
  readonly minutes: number[];
}

/** One arc for each direction of each stretch between vertices and joins; a site is a node of its own, beside its road. */
function listArcs(
  c: CheckedCase,
  network: OwnNetwork,
  joins: readonly (Join | null)[],
  vehicle: Vehicle,
  closed: ReadonlySet<number>,
  state: number,
): Arcs {
  const arcs: Arcs = { from: [], to: [], minutes: [] };
  const add = (from: number, to: number, minutes: number) => {
    arcs.from.push(from);
    arcs.to.push(to);
    arcs.minutes.push(minutes);
  };
  const joinsOf = new Map<number, { readonly site: number; readonly join: Join }[]>();
  joins.forEach((join, site) => {
    if (join) joinsOf.set(join.road, [...(joinsOf.get(join.road) ?? []), { site, join }]);
  });
  const accessMinutesPerKm = 60 / ownAccessSpeed(state);
  let extra = network.nodeCount + joins.length;
  c.scenario.roads.forEach((line, road) => {
    const usable = vehicle.roadsAllowed.includes(line.roadClass) && !closed.has(road);
    const speed = usable ? ownSpeed(c.scenario, line, state, isMotorcycle(vehicle)) : 0;
    const nodes = at(network.nodes, road);
    const access = (site: number, node: number, km: number) => {
      add(network.nodeCount + site, node, km * accessMinutesPerKm);
      add(node, network.nodeCount + site, km * accessMinutesPerKm);
    };
    // A site at a vertex stands on every road that meets there, its own shut or not.
    const own = joinsOf.get(road) ?? [];
    const isAtVertex = ({ join }: { readonly join: Join }) => Number.isInteger(join.vertex + join.t);
    for (const { site, join } of own.filter(isAtVertex)) access(site, at(nodes, join.vertex + join.t), join.km);
    if (speed === 0) return;
    const stations = line.positions.map((position, i) => ({ along: i, node: nodes[i] as number, position }));
    for (const { site, join } of own.filter((one) => !isAtVertex(one))) {
      const node = extra++;
      stations.push({ along: join.vertex + join.t, node, position: placeOfJoin(c, join) });
      access(site, node, join.km);
    }
    stations.sort((one, other) => one.along - other.along);
    for (let i = 1; i < stations.length; i++) {
      const [a, b] = [at(stations, i - 1), at(stations, i)];
      const minutes = (segmentKm(a.position, b.position) / speed) * 60;
      if (line.oneway !== 'backward') add(a.node, b.node, minutes);
      if (line.oneway !== 'forward') add(b.node, a.node, minutes);
    }
  });
  return arcs;
}

/** Least minutes from a node to every node (Dijkstra 1959). Joins stand behind the sites, hence more nodes than named. */
function spread(
  namedNodes: number,
  from: readonly number[],
  to: readonly number[],
  minutes: readonly number[],
  start: number,
): Float64Array {
  const nodes = from.reduce((most, node) => Math.max(most, node + 1), namedNodes);
  const first = new Int32Array(nodes).fill(-1);
  const next = new Int32Array(from.length);
  from.forEach((node, arc) => {
    next[arc] = first[node] as number;
    first[node] = arc;
  });
  const best = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY);
  const queue = new FlatQueue<number>();
  best[start] = 0;
  queue.push(start, 0);
  for (let node = queue.pop(); node !== undefined; node = queue.pop())
    for (let arc = first[node] as number; arc >= 0; arc = next[arc] as number) {
      const there = (best[node] as number) + (minutes[arc] as number);
      if (there >= (best[to[arc] as number] as number)) continue;
      best[to[arc] as number] = there;
      queue.push(to[arc] as number, there);
    }
  return best.slice(0, namedNodes);
}
