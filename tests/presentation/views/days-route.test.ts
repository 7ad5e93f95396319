import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import type { Position } from '../../../src/engine/index.ts';
import { hoursOfDay, shownHour, vehiclesOfDay } from '../../../src/presentation/views/days-fleet.ts';
import {
  dayMarks,
  legPositions,
  placePosition,
  routeLines,
  stopState,
  vehiclePosition,
} from '../../../src/presentation/views/days-route.ts';
import { dayGround, daysHeadline, dayTotals } from '../../../src/presentation/views/days-view.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario } = stockCase('demo-district');
const dates = [...new Set(plan.delivery.trips.date)].sort();
const allDays = dates.map((date) => vehiclesOfDay(plan, scenario, date));

/** Karney's geodesic on WGS 84, the reference implementation of J. Geodesy 87 (2013) 43-55. */
const earth = geodesic.Geodesic.WGS84;
const km = (a: Position, b: Position) => (earth.Inverse(a[1], a[0], b[1], b[0]).s12 ?? Number.NaN) / 1000;
const lengthKm = (line: readonly Position[]) =>
  line.slice(1).reduce((sum, to, i) => sum + km(line[i] as Position, to), 0);

describe('routes of a day', () => {
  it('are as long on the map as the plan says, by a reference library for geodesics', () => {
    expect(plan.delivery.legs.length).toBeGreaterThan(50);
    plan.delivery.legs.forEach(({ kilometres }, leg) => {
      expect(lengthKm(legPositions(plan, scenario, leg))).toBeCloseTo(kilometres, 2);
    });
  });

  it('draw each piece of road once for a vehicle, and leave out none', () => {
    for (const vehicles of allDays) {
      for (const vehicle of vehicles) {
        const lines = routeLines(plan, scenario, [vehicle]);
        const edges = lines.flatMap(({ positions }) =>
          positions.slice(1).map((to, i) => edgeOf(positions[i] as Position, to)),
        );
        expect(new Set(edges).size).toBe(edges.length);
        const legs = vehicle.trips.flatMap((trip) => [
          ...trip.stops.map(({ row }) => plan.delivery.stops.leg[row] ?? -1),
          plan.delivery.trips.returnLeg[trip.row] ?? -1,
        ]);
        const driven = legs.flatMap((leg) => {
          const line = legPositions(plan, scenario, leg);
          return line.slice(1).map((to, i) => edgeOf(line[i] as Position, to));
        });
        expect(new Set(edges)).toEqual(new Set(driven));
      }
    }
  });

  it('tell the first four vehicles of a day apart by pattern and colour, and all by letter', () => {
    for (const vehicles of allDays) {
      const first = vehicles.slice(0, 4).map(({ mark }) => mark);
      expect(new Set(first.map(({ pattern }) => pattern)).size).toBe(first.length);
      expect(new Set(first.map(({ tone }) => tone)).size).toBe(first.length);
      expect(new Set(vehicles.map(({ mark }) => `${mark.pattern} ${mark.tone}`)).size).toBe(vehicles.length);
      expect(new Set(vehicles.map(({ mark }) => mark.letter)).size).toBe(vehicles.length);
    }
    const letters = new Set(allDays.flat().map(({ id, mark }) => `${id} ${mark.letter}`));
    expect(letters.size).toBe(new Set(allDays.flat().map(({ id }) => id)).size);
  });
});

function edgeOf(a: Position, b: Position): string {
  const [p, q] = [a, b].map(([lon, lat]) => `${lon.toFixed(7)} ${lat.toFixed(7)}`).sort();
  return `${p} ${q}`;
}

describe('the hours of a day', () => {
  const [vehicles = []] = allDays;

  it('put a vehicle at each stop while it serves there, and at its depot before and after', () => {
    for (const vehicle of vehicles) {
      for (const stop of vehicle.trips.flatMap((trip) => trip.stops)) {
        const at = placePosition(plan, stop.place);
        for (const minute of [stop.arriveMinute, (stop.arriveMinute + stop.departMinute) / 2]) {
          expect(km(vehiclePosition(plan, scenario, vehicle, minute), at)).toBeLessThan(0.001);
        }
      }
      const depot = scenario.depots.find(({ id }) => id === scenario.vehicles[vehicle.vehicle]?.depotId);
      for (const minute of [0, vehicle.leaveMinute, vehicle.returnMinute, 1439]) {
        expect(km(vehiclePosition(plan, scenario, vehicle, minute), depot?.position ?? [0, 0])).toBeLessThan(0.001);
      }
    }
  });

  it('move a vehicle along its road no faster than its leg', () => {
    const [vehicle] = vehicles;
    if (!vehicle) throw new Error('no vehicle runs');
    for (let minute = vehicle.leaveMinute; minute < vehicle.returnMinute; minute += 5) {
      const [a, b] = [minute, minute + 5].map((at) => vehiclePosition(plan, scenario, vehicle, at));
      // Nothing in the scenario drives faster than 90 km/h.
      expect(km(a as Position, b as Position)).toBeLessThan(7.5);
    }
  });

  it('count stops as to come, there now and handed over', () => {
    const stop = vehicles[0]?.trips[0]?.stops[0];
    if (!stop) throw new Error('no stop');
    expect(stopState(stop, stop.arriveMinute - 1)).toBe('stop');
    expect(stopState(stop, stop.arriveMinute)).toBe('stop-now');
    expect(stopState(stop, stop.departMinute)).toBe('stop-done');
    const kinds = (minute: number) => new Set(dayMarks(plan, scenario, vehicles, minute).map(({ kind }) => kind));
    expect(kinds(0)).toEqual(new Set(['stop', 'vehicle']));
    expect(kinds(1439)).toEqual(new Set(['stop-done', 'vehicle']));
  });

  it('reach from the full hour before the first leaves to the full hour after the last is back', () => {
    const { from, to } = hoursOfDay(vehicles);
    expect([from % 60, to % 60]).toEqual([0, 0]);
    for (const { leaveMinute, returnMinute } of vehicles) {
      expect(leaveMinute).toBeGreaterThanOrEqual(from);
      expect(returnMinute).toBeLessThanOrEqual(to);
    }
    expect([
      shownHour(0, { from, to }),
      shownHour(9999, { from, to }),
      shownHour(null, { from: 300, to: 900 }),
    ]).toEqual([from, to, 600]);
  });
});

describe('sums over the days', () => {
  it('are the plan, each trip, stop and kilometre once', () => {
    const { trips, stops, loads } = plan.delivery;
    const days = allDays.flat();
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
    expect(days.length).toBe(daysHeadline(plan, []).vehicleDays);
    expect(dates.length).toBe(daysHeadline(plan, []).days);
    expect(sum(days.map(({ kilometres }) => kilometres))).toBeCloseTo(sum(trips.kilometres), 6);
    expect(sum(days.map(({ loadKg }) => loadKg))).toBeCloseTo(sum(trips.loadKg), 6);
    expect(sum(days.map(({ stopCount }) => stopCount))).toBe(stops.trip.length);
    const totals = allDays.map((vehicles) => dayTotals(plan, vehicles));
    const both = sum(totals.map(({ inoculantHa, seedHa }) => inoculantHa + seedHa));
    // No consignment of the district holds seed and inoculant together.
    expect(plan.allocation.consignments.group).not.toContain('both');
    const left = new Set(plan.delivery.unserved.load);
    expect(both).toBeCloseTo(sum(loads.hectares.filter((_, load) => !left.has(load))), 4);
  });

  it('lift from the ground the land of just those who are handed goods that day', () => {
    const [vehicles = []] = allDays;
    const { fills } = dayGround(plan, scenario, vehicles, []);
    const places = new Set(
      vehicles.flatMap(({ trips }) => trips.flatMap((trip) => trip.stops.map(({ place }) => place))),
    );
    fills.forEach((tone, community) => {
      if (tone !== null) expect(places).toContain(plan.places.communityPlace[community]);
    });
    expect(fills.filter((tone) => tone !== null).length).toBeGreaterThanOrEqual(places.size);
  });
});
