import { parseIsoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import { dayNumber, minuteOfDay } from '../../../../src/engine/vocabulary/units.ts';
import { at, coolStop, later, onFirst, type Spoil, set, where } from './spoil.ts';

export const TIMES_SPOILS: readonly Spoil[] = [
  {
    name: 'leaves before dawn',
    code: 'E8701',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.leaveMinute,
        () => true,
        (i) => set(p.delivery.trips.leaveMinute, i, 200),
      ),
  },
  {
    name: 'leaves while it is being loaded',
    code: 'E8701',
    spoil: (p, s) =>
      onFirst(
        p.delivery.trips.loadKg,
        (kg) => kg > 200,
        (i) => set(p.delivery.trips.leaveMinute, i, s.depots[0]?.opens ?? 0),
      ),
  },
  {
    name: 'may leave so late that the crew comes home after dark',
    code: 'E8709',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.latestLeaveMinute,
        () => true,
        (i) => set(p.delivery.trips.latestLeaveMinute, i, 1080),
      ),
  },
  {
    name: 'may leave no later than before it leaves',
    code: 'E8709',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.latestLeaveMinute,
        () => true,
        (i) => set(p.delivery.trips.latestLeaveMinute, i, 60),
      ),
  },
  {
    name: 'returns after dark',
    code: 'E8702',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.returnMinute,
        () => true,
        (i) => set(p.delivery.trips.returnMinute, i, 1300),
      ),
  },
  {
    name: 'a stop while the place is closed',
    code: 'E8703',
    spoil: (p, s) => {
      const given = where(p.delivery.stops.place, (place) => at(p.places.placeGiven, place) === 1);
      if (given < 0) return false;
      const id = at(p.ids.places, at(p.delivery.stops.place, given));
      const closed = { opens: minuteOfDay(1200), closes: minuteOfDay(1260) };
      return {
        scenario: {
          ...s,
          handoverPoints: s.handoverPoints.map((point) => (point.id === id ? { ...point, ...closed } : point)),
        },
      };
    },
  },
  {
    name: 'a stop while the community is closed',
    code: 'E8704',
    spoil: (_, s) => ({
      scenario: {
        ...s,
        communities: s.communities.map((one) => ({ ...one, closedFrom: s.planning.from, closedTo: s.planning.to })),
      },
    }),
  },
  {
    name: 'a stop while the zone is closed',
    code: 'E8704',
    spoil: (_, s) =>
      s.zones.length > 0 && {
        scenario: { ...s, zones: s.zones.map((one) => ({ ...one, closedFrom: s.planning.from, closedTo: null })) },
      },
  },
  {
    name: 'a stop on another day than market day',
    code: 'E8705',
    spoil: (p, s) => {
      const weekday = new Date(`${at(p.delivery.trips.date, 0)}T00:00:00Z`).getUTCDay() || 7;
      return {
        scenario: {
          ...s,
          policy: { ...s.policy, marketDays: 'only' },
          communities: s.communities.map((one) => ({ ...one, marketDay: (weekday % 7) + 1 })),
        },
      };
    },
  },
  {
    name: 'inoculant before its seed',
    code: 'E8706',
    spoil: (p) => {
      const { stops, loads, trips } = p.delivery;
      const { consignments, grants } = p.allocation;
      const goodsAt = (stop: number, group: string) =>
        at(stops.loads, stop)
          .filter((load) => at(consignments.group, at(loads.consignment, load)) === group)
          .flatMap((load) => at(loads.grants, load))
          .map((grant) => `${at(grants.community, grant)} ${at(grants.crop, grant)}`);
      const seed = new Map(stops.trip.flatMap((_, stop) => goodsAt(stop, 'dry').map((cell) => [cell, stop])));
      // Seed that comes by another trip, which stays where it is.
      const seedFor = (stop: number) =>
        goodsAt(stop, 'inoculant')
          .flatMap((cell) => seed.get(cell) ?? [])
          .find((dry) => at(stops.trip, dry) !== at(stops.trip, stop));
      const cool = where(stops.trip, (_, stop) => seedFor(stop) !== undefined);
      if (cool < 0) return false;
      const dry = seedFor(cool) ?? 0;
      set(trips.date, at(stops.trip, cool), later(at(trips.date, at(stops.trip, dry)), -1));
      return true;
    },
  },
  {
    name: 'a hand-over before the lot is there',
    code: 'E8707',
    spoil: (p, s) => ({
      scenario: {
        ...s,
        lots: s.lots.map((lot) => ({
          ...lot,
          availableFrom: dayNumber((parseIsoDate(at(p.delivery.trips.date, 0)) ?? 0) + 1),
        })),
      },
    }),
  },
  {
    name: 'a hand-over after its last day',
    code: 'E8707',
    spoil: (p) => {
      const row = at(p.delivery.loads.consignment, at(at(p.delivery.stops.loads, 0), 0));
      set(p.allocation.consignments.latest, row, later(at(p.delivery.trips.date, 0), -1));
      return true;
    },
  },
  {
    name: 'arrival earlier than the leg takes',
    code: 'E8708',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.arriveMinute,
        () => true,
        (i) => set(p.delivery.stops.arriveMinute, i, at(p.delivery.stops.arriveMinute, i) - 5),
      ),
  },
  {
    name: 'service cut short',
    code: 'E8708',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.departMinute,
        () => true,
        (i) => set(p.delivery.stops.departMinute, i, at(p.delivery.stops.startMinute, i) + 1),
      ),
  },
  {
    name: 'training left out',
    code: 'E8708',
    spoil: (p, s) =>
      s.policy.trainingMinutes > 0 &&
      onFirst(
        p.delivery.stops.departMinute,
        (_, i) => coolStop(p) === i,
        (i) => set(p.delivery.stops.departMinute, i, at(p.delivery.stops.departMinute, i) - s.policy.trainingMinutes),
      ),
  },
  {
    name: 'drives on without the rest that the programme asks for',
    code: 'E8711',
    spoil: (_, s) => ({ scenario: { ...s, policy: { ...s.policy, restAfterHours: 0.2, restMinutes: 30 } } }),
  },
  {
    name: 'says that its crew rests and does not stand still for it',
    code: 'E8708',
    spoil: (p, s) => {
      set(p.delivery.stops.restMinutes, 0, 30);
      return { scenario: { ...s, policy: { ...s.policy, restMinutes: 30 } } };
    },
  },
];
