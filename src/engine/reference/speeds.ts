import type { RoadClass, Surface } from '../vocabulary/places.ts';
import { type Sourced, sourced } from '../vocabulary/provenance.ts';

const OBSERVED = 'OpenStreetMapSpeeds default_speeds.json (MIT), 2021-2022, world default, rural: means along segments';
const UNSOURCED = 'no published figure by road class found';

/** km/h on a passable road, by class. Means with traffic and stops in them, not legal limits. */
export const ROAD_SPEED_KM_PER_H: Readonly<Record<RoadClass, Sourced<number>>> = {
  trunk: sourced(62, 'read', OBSERVED),
  primary: sourced(51, 'read', OBSERVED),
  secondary: sourced(44, 'read', OBSERVED),
  tertiary: sourced(33, 'read', OBSERVED),
  unclassified: sourced(23, 'read', OBSERVED),
  track: sourced(15, 'memory', UNSOURCED),
  path: sourced(15, 'memory', `${UNSOURCED}; a motorcycle on a path`),
};

const WET =
  'planning choice, bracketed by walking speeds dry to wet in Blanford et al. 2012 (Int. J. Health Geogr. 11:24)';

/** Part of the speed that is left on difficult roads, by surface. */
export const WET_SPEED_FACTOR: Readonly<Record<Surface, Sourced<number>>> = {
  paved: sourced(0.9, 'assumed', WET),
  gravel: sourced(0.75, 'assumed', WET),
  earth: sourced(0.6, 'assumed', WET),
};

/** The same for tracks and paths, whatever their surface. */
export const WET_TRACK_FACTOR: Sourced<number> = sourced(0.5, 'assumed', WET);

/** Classes without a made road bed: slowed and shut as tracks, not by surface. */
export const UNMADE_CLASSES: readonly RoadClass[] = ['track', 'path'];

/** What a road is to the rain: its surface, or a track whatever its surface. */
export type RoadBed = Surface | 'track';

/** What heavy rain does: part of the speed left on difficult roads, and which are shut to whom while roads are closed. */
export interface WetRoadRule {
  readonly speedLeft: Readonly<Record<RoadBed, Sourced<number>>>;
  /** 1: shut in the state `closed`; 0: stays open, as slow as in `difficult`. */
  readonly shut: Readonly<Record<RoadBed, Sourced<number>>>;
  /** 1: what is shut is shut to motorcycles as well. */
  readonly motorcyclesToo: Sourced<number>;
}

const SHUT = 'rain barriers on earth roads (kept in Cameroon, read); hours and surfaces are a first rule';

/**
 * The rule in force: each figure the programme's own where its assumptions name it, as `road.wetSpeed.gravel`,
 * `road.shut.gravel` (1 or 0), `road.shut.motorcycles`.
 */
export function wetRoadRule(assumptions: Readonly<Record<string, number>>): WetRoadRule {
  const own = (name: string, otherwise: Sourced<number>): Sourced<number> => {
    const value = assumptions[`road.${name}`];
    return value === undefined ? otherwise : sourced(value, 'given', `scenario.json:assumptions.road.${name}`);
  };
  const open = sourced(0, 'assumed', SHUT);
  const shut = sourced(1, 'assumed', SHUT);
  return {
    speedLeft: {
      paved: own('wetSpeed.paved', WET_SPEED_FACTOR.paved),
      gravel: own('wetSpeed.gravel', WET_SPEED_FACTOR.gravel),
      earth: own('wetSpeed.earth', WET_SPEED_FACTOR.earth),
      track: own('wetSpeed.track', WET_TRACK_FACTOR),
    },
    shut: {
      paved: own('shut.paved', open),
      gravel: own('shut.gravel', open),
      earth: own('shut.earth', shut),
      track: own('shut.track', shut),
    },
    motorcyclesToo: own(
      'shut.motorcycles',
      sourced(0, 'assumed', 'a motorcycle passes mud and water that stop a lorry'),
    ),
  };
}

/** A join closer to a vertex of its road than this is at the vertex, and so on every road that meets there. */
export const AT_VERTEX_KM: Sourced<number> = sourced(0.001, 'assumed', 'a metre: nearer than any map is true');

/** A place that stands off the road joins it over at most this distance, at track speed. */
export const ROAD_REACH_KM: Sourced<number> = sourced(2, 'assumed', 'planning choice');
