import { at, coolStop, onFirst, type Spoil, set } from './spoil.ts';

export const HEAT_SPOILS: readonly Spoil[] = [
  {
    name: 'packs in the sun all day, told cool',
    code: 'E8901',
    spoil: (p) => {
      const stop = coolStop(p);
      const hot = p.season.tmaxC.every((celsius) => celsius >= 38);
      if (stop < 0 || !hot) return false;
      set(p.delivery.trips.iceKg, at(p.delivery.stops.trip, stop), 0);
      set(p.delivery.stops.departMinute, stop, 1080);
      return true;
    },
  },
  {
    name: 'packs told to reach 40 °C',
    code: 'E8901',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.hotBandMaxC,
        (celsius) => celsius !== null,
        (i) => set(p.delivery.stops.hotBandMaxC, i, 40),
      ),
  },
  {
    name: 'pack temperature told too low',
    code: 'E8902',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.packC,
        (celsius) => (celsius ?? 0) > 5,
        (i) => set(p.delivery.stops.packC, i, 2),
      ),
  },
  {
    name: 'hottest pack told too low',
    code: 'E8902',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.packMaxC,
        (celsius, i) => (celsius ?? 0) > 5 && (at(p.delivery.stops.packC, i) ?? 0) > 5,
        (i) => set(p.delivery.stops.packMaxC, i, 2),
      ),
  },
  {
    name: 'hot band told too low',
    code: 'E8902',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.hotBandMaxC,
        (celsius, i) => (celsius ?? 0) > 5 && (at(p.delivery.stops.packC, i) ?? 0) > 5,
        (i) => set(p.delivery.stops.hotBandMaxC, i, 2),
      ),
  },
  {
    name: 'loss told too small',
    code: 'E8903',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.log10Loss,
        (loss) => (loss ?? 0) > 3e-4,
        (i) => set(p.delivery.stops.log10Loss, i, 0),
      ),
  },
  {
    name: 'mean kinetic temperature told too low',
    code: 'E8902',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.meanKineticC,
        (celsius) => (celsius ?? 0) > 5,
        (i) => set(p.delivery.trips.meanKineticC, i, 2),
      ),
  },
  {
    name: 'hours above storage told too few',
    code: 'E8904',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.hoursAboveStorage,
        (hours) => (hours ?? 0) > 0.5,
        (i) => set(p.delivery.stops.hoursAboveStorage, i, 0),
      ),
  },
  {
    name: 'hours above storage over the limit',
    code: 'E8904',
    spoil: (p, s) =>
      p.delivery.stops.hoursAboveStorage.some((hours) => (hours ?? 0) > 0.5) && {
        scenario: { ...s, policy: { ...s.policy, hoursAboveStorage: 0.2 } },
      },
  },
  {
    name: 'temperatures left out',
    code: 'E8905',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.packC,
        (celsius) => celsius !== null,
        (i) => set(p.delivery.stops.packC, i, null),
      ),
  },
];
