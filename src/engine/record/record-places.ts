import type { Places, Plan } from '../vocabulary/index.ts';
import { roundAll, roundAllOrNull } from './rounding.ts';

export function recordPlaces(places: Places): Plan['places'] {
  const { shares, handoverPlaces, unreachable, travel } = places;
  return {
    communityAreaHa: roundAllOrNull(places.communityAreaHa, 'hectares'),
    zoneAreaHa: roundAllOrNull(places.zoneAreaHa, 'hectares'),
    shares: {
      community: Array.from(shares.community),
      zone: Array.from(shares.zone),
      share: roundAll(shares.share, 'share'),
    },
    placeLon: roundAll(
      handoverPlaces.map(({ position }) => position[0]),
      'degrees',
    ),
    placeLat: roundAll(
      handoverPlaces.map(({ position }) => position[1]),
      'degrees',
    ),
    placeGiven: handoverPlaces.map(({ pointId }) => (pointId === null ? 0 : 1)),
    communityPlace: Array.from(places.communityPlace),
    unreachable: {
      place: unreachable.map(({ place }) => place),
      vehicle: unreachable.map(({ vehicleClass }) => travel.classes[vehicleClass]?.vehicles[0] ?? -1),
      reason: unreachable.map(({ reason }) => reason),
    },
  };
}
