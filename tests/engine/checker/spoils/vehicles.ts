import { parseIsoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import { dayNumber } from '../../../../src/engine/vocabulary/units.ts';
import { at, dateWith, decide, later, moveTrip, onFirst, type Spoil, scale, set, where } from './spoil.ts';

export const VEHICLES_SPOILS: readonly Spoil[] = [
  {
    name: 'a vehicle from another depot',
    code: 'E8601',
    spoil: (p, s) => {
      const depotOf = (v: number) => at(s.vehicles, v).depotId;
      const other = where(s.vehicles, ({ depotId }) => depotId !== depotOf(at(p.delivery.trips.vehicle, 0)));
      return (
        other >= 0 &&
        onFirst(
          p.delivery.trips.vehicle,
          () => true,
          (i) => set(p.delivery.trips.vehicle, i, other),
        )
      );
    },
  },
  {
    name: 'a vehicle sent away by a decision',
    code: 'E8602',
    spoil: (p, s, d) => {
      const vehicleId = at(s.vehicles, at(p.delivery.trips.vehicle, 0)).id;
      const date = at(p.delivery.trips.date, 0);
      return { decisions: decide(d, { kind: 'vehicle-away', vehicleId, from: date, to: date }) };
    },
  },
  {
    name: 'a vehicle that is not yet there',
    code: 'E8602',
    spoil: (p, s) => ({
      scenario: {
        ...s,
        vehicles: s.vehicles.map((vehicle) => ({
          ...vehicle,
          availableFrom: dayNumber((parseIsoDate(at(p.delivery.trips.date, 0)) ?? 0) + 1),
        })),
      },
    }),
  },
  {
    name: 'a trip on a rest day',
    code: 'E8603',
    spoil: (p, s) => {
      const date = dateWith(s, (offset) => at(p.season.workday, offset) === 0);
      if (date === null) return false;
      moveTrip(p, 0, date);
      return true;
    },
  },
  {
    name: 'load over payload',
    code: 'E8604',
    spoil: (p, s) =>
      onFirst(
        p.delivery.trips.vehicle,
        () => true,
        (trip) =>
          set(
            p.delivery.loads.kg,
            at(
              at(
                p.delivery.stops.loads,
                where(p.delivery.stops.trip, (of) => of === trip),
              ),
              0,
            ),
            at(s.vehicles, at(p.delivery.trips.vehicle, trip)).payloadKg + 1,
          ),
      ),
  },
  {
    name: 'litres over the box',
    code: 'E8605',
    spoil: (p, s) => {
      const stop = where(
        p.delivery.stops.loads,
        (loads, i) =>
          at(s.vehicles, at(p.delivery.trips.vehicle, at(p.delivery.stops.trip, i))).coolLitres > 0 && loads.length > 0,
      );
      if (stop < 0) return false;
      set(p.delivery.loads.coolLitres, at(at(p.delivery.stops.loads, stop), 0), 1e4);
      return true;
    },
  },
  {
    name: 'ice over what the depot makes',
    code: 'E8606',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.iceKg,
        () => true,
        (i) => set(p.delivery.trips.iceKg, i, 1e4),
      ),
  },
  {
    name: 'load of a trip understated',
    code: 'E8607',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.loadKg,
        (kg) => kg > 0.1,
        (i) => scale(p.delivery.trips.loadKg, i, 0.5),
      ),
  },
  {
    name: 'two trips of a vehicle at once',
    code: 'E8608',
    spoil: (p) => {
      const { trips } = p.delivery;
      if (trips.vehicle.length < 2) return false;
      set(trips.vehicle, 1, at(trips.vehicle, 0));
      set(trips.date, 1, at(trips.date, 0));
      set(trips.trip, 1, 2);
      set(trips.leaveMinute, 1, at(trips.leaveMinute, 0) + 1);
      return true;
    },
  },
  {
    name: 'a locked hand-over on another day',
    code: 'E8609',
    spoil: (p, s, d) => {
      const load = at(at(p.delivery.stops.loads, 0), 0);
      const row = at(p.delivery.loads.consignment, load);
      const communityId = at(s.communities, at(p.allocation.consignments.community, row)).id;
      const commodity = at(p.allocation.consignments.group, row) === 'inoculant' ? 'inoculant' : 'seed';
      const vehicleId = at(s.vehicles, at(p.delivery.trips.vehicle, at(p.delivery.stops.trip, 0))).id;
      return {
        decisions: decide(d, {
          kind: 'lock',
          communityId,
          commodity,
          vehicleId,
          date: later(at(p.delivery.trips.date, 0), 1),
        }),
      };
    },
  },
];
