import { pointOnSurface } from '../../numerics/point-on-surface.ts';
import type { MultiPolygon, Position } from '../../vocabulary/places.ts';
import type { Community, Scenario } from '../../vocabulary/scenario.ts';
import type { HandoverPlace } from '../../vocabulary/stage-results/places.ts';

export interface HandoverPlaces {
  readonly places: readonly HandoverPlace[];
  /** Place of each community. */
  readonly communityPlace: Int32Array;
}

/**
 * Where each community collects: the point that names it, else a point on its own surface (assumed). Given points come
 * first, in their order; intake has left each community to one point only.
 */
export function findHandoverPlaces(scenario: Scenario, polygons: readonly (MultiPolygon | null)[]): HandoverPlaces {
  const { communities, handoverPoints } = scenario;
  const communityIndex = new Map(communities.map((community, index) => [community.id, index]));
  const given = handoverPoints.map((point): HandoverPlace => {
    const served = point.communityIds.map((id) => communityIndex.get(id)).filter((index) => index !== undefined);
    return {
      pointId: point.id,
      name: point.name,
      position: point.position,
      status: 'given',
      communities: served,
      opensMinute: point.opens,
      closesMinute: point.closes,
      // Where the point names no store, the packs go home with the growers.
      store: point.store ?? communities[served[0] ?? -1]?.store ?? 'none',
    };
  });
  const served = new Set(given.flatMap((place) => place.communities));
  const derived = communities.flatMap((community, index) =>
    served.has(index) ? [] : [derivePlace(community, index, polygons[index] ?? null)],
  );
  const places = [...given, ...derived];
  const communityPlace = new Int32Array(communities.length);
  for (const [p, place] of places.entries()) for (const community of place.communities) communityPlace[community] = p;
  return { places, communityPlace };
}

function derivePlace(community: Community, index: number, polygons: MultiPolygon | null): HandoverPlace {
  return {
    pointId: null,
    name: community.name,
    position: placeOf(community, polygons),
    status: 'assumed',
    communities: [index],
    opensMinute: null,
    closesMinute: null,
    store: community.store,
  };
}

function placeOf({ geometry }: Community, polygons: MultiPolygon | null): Position {
  if (geometry.kind === 'point') return geometry.position;
  return pointOnSurface(polygons ?? geometry.polygons) ?? [0, 0];
}
