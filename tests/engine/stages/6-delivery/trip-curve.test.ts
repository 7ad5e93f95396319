import { describe, expect, test } from 'vitest';
import type { Trip, TripCurve } from '../../../../src/engine/index.ts';
import { deliver, type NetworkSpec } from './small-network.ts';

const SPEC: NetworkSpec = {
  days: 1,
  places: [
    { x: 20, y: 0 },
    { x: 40, y: 10 },
  ],
  vehicles: [{}],
  consignments: [
    { place: 0, group: 'dry', seedPacks: 4 },
    { place: 0, group: 'inoculant', sachets: 40 },
    { place: 1, group: 'dry', seedPacks: 4 },
    { place: 1, group: 'inoculant', sachets: 60 },
  ],
  airC: (minute) => 20 + minute / 60,
  sun: () => 0.5,
};

const tripsOf = (spec: NetworkSpec): readonly Trip[] => deliver(spec, 50).vehicleDays.flatMap(({ trips }) => trips);
const cold = (trips: readonly Trip[]) => trips.filter(({ stops }) => stops.some(({ packC }) => !Number.isNaN(packC)));
const at = (curve: TripCurve, minute: number) => curve.minute.findLastIndex((one) => Math.abs(one - minute) < 1e-9);

describe('temperatures along a trip', () => {
  test.each([
    ['with ice', 100],
    ['without ice', 0],
  ])('%s, begin as the vehicle leaves and end at the last hand-over', (_, ice) => {
    const trips = cold(tripsOf({ ...SPEC, depots: [{ x: 0, y: 0, ice }] }));
    expect(trips.length).toBeGreaterThan(0);
    for (const { curve, leaveMinute, stops } of trips) {
      const served = stops.filter(({ packC }) => !Number.isNaN(packC));
      expect(curve.minute[0]).toBe(leaveMinute);
      expect(curve.minute.at(-1)).toBeCloseTo(served.at(-1)?.departMinute ?? 0, 9);
      for (const { departMinute, packC } of served) expect(curve.packC[at(curve, departMinute)]).toBe(packC);
      for (let i = 1; i < curve.minute.length; i++) {
        const step = (curve.minute[i] ?? 0) - (curve.minute[i - 1] ?? 0);
        expect(step).toBeGreaterThan(0);
        expect(step).toBeLessThanOrEqual(15 + 1e-9);
      }
    }
  });

  test("without ice follow Newton's law of cooling with one time constant until packs are taken out", () => {
    const [trip] = cold(tripsOf({ ...SPEC, depots: [{ x: 0, y: 0, ice: 0 }] }));
    if (!trip) throw new Error('no trip carries inoculant');
    const { minute, packC, boxAirC } = trip.curve;
    const first = trip.stops.find(({ packC: celsius }) => !Number.isNaN(celsius));
    const until = at(trip.curve, first?.departMinute ?? 0);
    // Newton: (Ta - T1) / (Ta - T0) = exp(-t / tau), so t / ln((Ta - T0) / (Ta - T1)) is tau in every step.
    const taus = minute.slice(1, until + 1).map((end, i) => {
      const air = boxAirC[i + 1] ?? 0;
      return (end - (minute[i] ?? 0)) / Math.log((air - (packC[i] ?? 0)) / (air - (packC[i + 1] ?? 0)));
    });
    expect(taus.length).toBeGreaterThan(2);
    for (const tau of taus) expect(tau).toBeCloseTo(taus[0] ?? 0, 6);
  });

  test('are hotter at the box than in shade with sun on an open bed, hotter still parked, and none without inoculant', () => {
    const [trip] = cold(tripsOf(SPEC));
    const { curve } = trip ?? { curve: null };
    expect(curve).not.toBeNull();
    const excess = (curve?.minute ?? []).map((_, i) => (curve?.boxAirC[i] ?? 0) - (curve?.shadeC[i] ?? 0));
    for (const kelvin of excess) expect(kelvin).toBeGreaterThan(0);
    const arrive = trip?.stops[0]?.arriveMinute ?? 0;
    const moving = excess[curve ? at(curve, arrive) : 0] ?? 0;
    expect(excess[(curve ? at(curve, arrive) : 0) + 1]).toBeGreaterThan(moving + 1);
    const dry = tripsOf({ ...SPEC, consignments: [{ place: 0, group: 'dry', seedPacks: 4 }] });
    expect(dry.map((one) => one.curve.minute)).toEqual([[]]);
  });
});
