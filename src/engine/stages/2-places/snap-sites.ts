import { geodesicKm } from '../../numerics/geodesic-length.ts';
import { AT_VERTEX_KM, ROAD_REACH_KM } from '../../reference/speeds.ts';
import type { Position } from '../../vocabulary/places.ts';
import type { UnreachableReason } from '../../vocabulary/reasons.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Site, VehicleClass } from '../../vocabulary/stage-results/places.ts';
import { findRoadPieces } from './find-road-pieces.ts';
import type { MeasuredRoads } from './measure-roads.ts';
import type { NearestPlace, RoadFinder } from './road-finder.ts';

/** Where a site joins the roads: a place along a road line, counted in vertices, and how far off it stands. */
export interface RoadJoin {
  readonly road: number;
  readonly along: number;
  readonly accessKm: number;
}

/** Joins of one vehicle class, site by site, or the reason why there is none. */
export type SiteJoin = RoadJoin | UnreachableReason;

/**
 * Joins the sites to the roads that a vehicle class may use: depots to the nearest, places to the nearest on a piece of
 * network that holds a depot of the class, both at most 2 km away. Closures are left aside, so that a site keeps its
 * road when it is closed for a time.
 */
export function snapSites(
  scenario: Scenario,
  sites: readonly Site[],
  vehicleClass: VehicleClass,
  measured: MeasuredRoads,
  finder: RoadFinder,
): readonly SiteJoin[] {
  const allows = (road: number) => {
    const roadClass = measured.roads[road]?.roadClass;
    return roadClass !== undefined && vehicleClass.roadsAllowed.includes(roadClass);
  };
  const { pieceOfVertex } = findRoadPieces(measured, allows);
  const pieceOf = (road: number) => pieceOfVertex[measured.vertex[measured.first[road] as number] as number] as number;
  const depotsOfClass = new Set(vehicleClass.vehicles.map((vehicle) => scenario.vehicles[vehicle]?.depotId));
  const join = (site: Site, accepts: (road: number) => boolean) =>
    joinRoad(site.position, finder.nearest(site.position, ROAD_REACH_KM.value, accepts), measured);

  const depotJoins = sites.map((site) => (site.kind === 'depot' ? join(site, allows) : null));
  const depotPieces = new Set<number>();
  for (const [s, found] of depotJoins.entries()) {
    const id = scenario.depots[sites[s]?.index ?? -1]?.id;
    if (found && depotsOfClass.has(id)) depotPieces.add(pieceOf(found.road));
  }
  return sites.map((site, s) => {
    if (site.kind === 'depot') return depotJoins[s] ?? 'no-road-within-reach';
    const found = join(site, (road) => allows(road) && depotPieces.has(pieceOf(road)));
    if (found) return found;
    if (depotPieces.size === 0) return 'no-vehicle';
    return join(site, allows) ? 'road-piece-without-depot' : 'no-road-within-reach';
  });
}

function joinRoad(position: Position, nearest: NearestPlace | null, { roads }: MeasuredRoads): RoadJoin | null {
  if (!nearest) return null;
  const { road, segment, fraction } = nearest;
  const from = roads[road]?.positions[segment] as Position;
  const to = roads[road]?.positions[segment + 1] as Position;
  const segmentKm = geodesicKm(from, to);
  const [beforeKm, afterKm] = [fraction * segmentKm, (1 - fraction) * segmentKm];
  if (Math.min(beforeKm, afterKm) < AT_VERTEX_KM.value) {
    const [vertex, along] = beforeKm <= afterKm ? [from, segment] : [to, segment + 1];
    return { road, along, accessKm: geodesicKm(position, vertex) };
  }
  const foot: Position = [from[0] + fraction * (to[0] - from[0]), from[1] + fraction * (to[1] - from[1])];
  return { road, along: segment + fraction, accessKm: geodesicKm(position, foot) };
}
