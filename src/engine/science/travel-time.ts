import { ROAD_SPEED_KM_PER_H, UNMADE_CLASSES, WET_SPEED_FACTOR, WET_TRACK_FACTOR } from '../reference/speeds.ts';
import type { RoadClass, RoadState, Surface } from '../vocabulary/places.ts';

/**
 * Mean speed in km/h; 0 where the road is shut. In the state `closed` earth roads, tracks and paths are shut to all but
 * motorcycles (a motorcycle passes mud and water that stop a lorry: evidence read, the rule assumed), and what stays open
 * is as slow as in `difficult`. Motorcycles are taken to be as fast as other vehicles (assumed).
 */
export function speedKmPerHour(
  roadClass: RoadClass,
  surface: Surface,
  roadState: RoadState,
  motorcycle: boolean,
): number {
  const unmade = UNMADE_CLASSES.includes(roadClass);
  if (roadState === 'closed' && !motorcycle && (unmade || surface === 'earth')) return 0;
  return ROAD_SPEED_KM_PER_H[roadClass].value * wetFactor(unmade, surface, roadState);
}

/** Speed in km/h over the last stretch between a road and a place beside it: that of a track, never shut (assumed). */
export function accessSpeedKmPerHour(roadState: RoadState): number {
  return ROAD_SPEED_KM_PER_H.track.value * wetFactor(true, 'earth', roadState);
}

function wetFactor(unmade: boolean, surface: Surface, roadState: RoadState): number {
  if (roadState === 'passable') return 1;
  return unmade ? WET_TRACK_FACTOR.value : WET_SPEED_FACTOR[surface].value;
}
