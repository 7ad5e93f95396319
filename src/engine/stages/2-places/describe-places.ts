import { ROAD_REACH_KM } from '../../reference/speeds.ts';
import type { FigureInput, FigureProvenance } from '../../vocabulary/provenance.ts';

const communities = (column: string, unit: string): FigureInput => ({
  name: `communities ${column}`,
  from: `communities:${column}`,
  unit,
  status: 'given',
  source: 'the programme',
});

const COMMUNITY_GROUND = communities('geometry', 'degree');
const ZONE_GROUND: FigureInput = { ...COMMUNITY_GROUND, name: 'zones geometry', from: 'zones:geometry' };
const ROADS: FigureInput = { ...COMMUNITY_GROUND, name: 'roads geometry', from: 'roads:geometry' };
const ELLIPSOID = 'WGS 84; area measure of EPSG:6933 (Snyder 1987, eq. 3-12)';
const SPEEDS: FigureInput = {
  name: 'speed by road class and state',
  from: 'reference:ROAD_SPEED_KM_PER_H',
  unit: 'km/h',
  status: 'assumed',
  source: 'observed means by class (read), wet factors and closing rule (assumed)',
};
const REACH: FigureInput = {
  name: 'distance over which a place joins a road',
  from: 'reference:ROAD_REACH_KM',
  unit: 'km',
  value: ROAD_REACH_KM.value,
  status: ROAD_REACH_KM.status,
  source: ROAD_REACH_KM.source,
};

/** How the figures of this stage were made. */
export function describePlaces(): readonly FigureProvenance[] {
  const area = 'exterior rings less holes, edges straight in longitude and latitude; invalid rings repaired first';
  return [
    figure('places.communityAreaHa', 'ha', area, [COMMUNITY_GROUND], 'derived', ELLIPSOID),
    figure('places.zoneAreaHa', 'ha', area, [ZONE_GROUND], 'derived', ELLIPSOID),
    figure(
      'places.shares.share',
      'share',
      'the zone named, whole; else area common with the zone / area of the community, parts up to 0.1 percent given to the largest; a point counts once',
      [communities('zone_id', 'id'), COMMUNITY_GROUND, ZONE_GROUND],
      'derived',
      'areal weighting (common practice, no source)',
    ),
    ...['places.placeLon', 'places.placeLat'].map((path) =>
      figure(
        path,
        'degree',
        'the hand-over point given; else the middle of the widest span through the middle of the largest part',
        [{ ...COMMUNITY_GROUND, name: 'hand-over points', from: 'handoverPoints:lat, lon' }, COMMUNITY_GROUND],
        'assumed',
        'a derived place stands in for one that the programme knows better',
      ),
    ),
    figure(
      'delivery.legs.minutes',
      'min',
      'quickest way by road: sum of length / speed over its pieces, and track speed between a place and its road',
      [ROADS, SPEEDS, REACH],
      'assumed',
      'Dijkstra 1959',
    ),
    figure(
      'delivery.legs.kilometres',
      'km',
      'length of the quickest way, and of the stretches between its ends and their roads',
      [ROADS, REACH],
      'derived',
      'lengths on WGS 84',
    ),
    figure(
      'places.unreachable.reason',
      'reason',
      'no depot of the vehicle class leads there and back on passable roads on any planning day',
      [ROADS, REACH],
      'derived',
      'weak pieces and quickest ways of the road network',
    ),
  ];
}

function figure(
  path: string,
  unit: string,
  formula: string,
  inputs: readonly FigureInput[],
  status: FigureProvenance['status'],
  source: string,
): FigureProvenance {
  return { figure: path, unit, formula, inputs, status, source };
}
