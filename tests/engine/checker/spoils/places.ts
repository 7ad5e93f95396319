import { at, onFirst, type Spoil, scale, set } from './spoil.ts';

export const PLACES_SPOILS: readonly Spoil[] = [
  {
    name: 'area 1 % too large',
    code: 'E8101',
    spoil: (p) =>
      onFirst(
        p.places.communityAreaHa,
        (ha) => ha !== null,
        (i) => set(p.places.communityAreaHa, i, (at(p.places.communityAreaHa, i) ?? 0) * 1.01),
      ),
  },
  {
    name: 'zone shares that sum to 0.9',
    code: 'E8102',
    spoil: (p) =>
      onFirst(
        p.places.shares.share,
        () => true,
        (i) => scale(p.places.shares.share, i, 0.9),
      ),
  },
  {
    name: 'a community moved to another zone',
    code: 'E8103',
    spoil: (p, s) =>
      s.zones.length > 1 &&
      onFirst(
        p.places.shares.zone,
        () => true,
        (i) => set(p.places.shares.zone, i, (at(p.places.shares.zone, i) + 1) % s.zones.length),
      ),
  },
  {
    name: 'a hand-over place moved',
    code: 'E8104',
    spoil: (p) =>
      onFirst(
        p.places.placeLon,
        () => true,
        (i) => set(p.places.placeLon, i, at(p.places.placeLon, i) + 1),
      ),
  },
  {
    name: 'a community sent to another place',
    code: 'E8105',
    spoil: (p) =>
      p.ids.places.length > 1 &&
      onFirst(
        p.places.communityPlace,
        () => true,
        (i) => set(p.places.communityPlace, i, (at(p.places.communityPlace, i) + 1) % p.ids.places.length),
      ),
  },
  {
    name: 'a place said to be out of reach',
    code: 'E8106',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.place,
        () => true,
        (stop) => {
          p.places.unreachable.place.push(at(p.delivery.stops.place, stop));
          p.places.unreachable.vehicle.push(at(p.delivery.trips.vehicle, at(p.delivery.stops.trip, stop)));
          p.places.unreachable.reason.push('no-road-within-reach');
        },
      ),
  },
];
