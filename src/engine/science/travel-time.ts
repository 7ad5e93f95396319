import { ROAD_SPEED_KM_PER_H, UNMADE_CLASSES, type WetRoadRule, wetRoadRule } from '../reference/speeds.ts';
import type { RoadClass, RoadState, Surface } from '../vocabulary/places.ts';

const REFERENCE_RULE = wetRoadRule({});

/**
 * Mean speed in km/h; 0 where the road is shut. By the reference rule earth roads, tracks and paths are shut in the state
 * `closed` to all but motorcycles (a motorcycle passes mud and water that stop a lorry: evidence read, the rule assumed), and
 * what stays open is as slow as in `difficult`. Motorcycles are taken to be as fast as other vehicles (assumed).
 */
export function speedKmPerHour(
  roadClass: RoadClass,
  surface: Surface,
  roadState: RoadState,
  motorcycle: boolean,
  rule: WetRoadRule = REFERENCE_RULE,
): number {
  const bed = UNMADE_CLASSES.includes(roadClass) ? 'track' : surface;
  const isBarred = !motorcycle || rule.motorcyclesToo.value > 0;
  if (roadState === 'closed' && isBarred && rule.shut[bed].value > 0) return 0;
  return ROAD_SPEED_KM_PER_H[roadClass].value * (roadState === 'passable' ? 1 : rule.speedLeft[bed].value);
}

/** Speed in km/h over the last stretch between a road and a place beside it: that of a track, never shut (assumed). */
export function accessSpeedKmPerHour(roadState: RoadState): number {
  return ROAD_SPEED_KM_PER_H.track.value * (roadState === 'passable' ? 1 : REFERENCE_RULE.speedLeft.track.value);
}
