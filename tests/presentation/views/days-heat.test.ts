import { describe, expect, it } from 'vitest';
import { vehiclesOfDay } from '../../../src/presentation/views/days-fleet.ts';
import { dayHeat, type HeatPoint, stretchesAbove, valueAt } from '../../../src/presentation/views/days-heat.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario } = stockCase('demo-district');
const days = [...new Set(plan.delivery.trips.date)].flatMap((date) => vehiclesOfDay(plan, scenario, date));

describe('temperatures through a day', () => {
  it('pass through what the plan says of each hand-over of inoculant', () => {
    let compared = 0;
    for (const vehicle of days) {
      const heat = dayHeat(plan, vehicle);
      for (const trip of vehicle.trips) {
        const lines = heat.trips.find((one) => one.trip === trip.number);
        for (const { departMinute, packC } of trip.stops) {
          if (packC === null) continue;
          compared += 1;
          expect(valueAt(lines?.packs ?? [], departMinute)).toBeCloseTo(packC, 2);
        }
      }
    }
    expect(compared).toBeGreaterThan(100);
  });

  it('have no lines where no inoculant is aboard, and the hot band never below the packs', () => {
    for (const vehicle of days) {
      const heat = dayHeat(plan, vehicle);
      const cold = vehicle.trips.filter(({ stops }) => stops.some(({ packC }) => packC !== null));
      expect(heat.trips.map(({ trip }) => trip)).toEqual(cold.map(({ number }) => number));
      for (const { packs, hotBand } of heat.trips) {
        packs.forEach(([, celsius], i) => {
          expect(hotBand[i]?.[1]).toBeGreaterThanOrEqual(celsius - 1e-3);
        });
      }
    }
  });

  it('step at the box: each value holds from one minute to the next, without a hole', () => {
    for (const { boxAir } of days.flatMap((vehicle) => dayHeat(plan, vehicle).trips)) {
      for (let i = 0; i + 1 < boxAir.length; i += 2) expect(boxAir[i]?.[1]).toBe(boxAir[i + 1]?.[1]);
      for (let i = 1; i + 1 < boxAir.length; i += 2) expect(boxAir[i]?.[0]).toBe(boxAir[i + 1]?.[0]);
    }
  });

  it('say that ice is gone only where ice was taken and the packs warm up', () => {
    for (const vehicle of days) {
      for (const { trip, iceGoneMinute, packs } of dayHeat(plan, vehicle).trips) {
        const iceKg = vehicle.trips.find(({ number }) => number === trip)?.iceKg ?? 0;
        const warms = iceKg > 0 && packs.some(([, celsius]) => celsius <= 0) && (packs.at(-1)?.[1] ?? 0) > 0;
        expect(iceGoneMinute !== null).toBe(warms);
      }
    }
  });
});

describe('a line above a limit', () => {
  const line: HeatPoint[] = [
    [0, 28],
    [10, 32],
    [20, 32],
    [30, 28],
    [40, 31],
  ];

  it('is cut at its crossings, worked by hand', () => {
    expect(stretchesAbove(line, 30)).toEqual([
      [
        [5, 30],
        [10, 32],
        [20, 32],
        [25, 30],
      ],
      [
        [expect.closeTo(36.667, 3), 30],
        [40, 31],
      ],
    ]);
    expect(stretchesAbove(line, 32)).toEqual([]);
  });

  it('is read between its points, and nowhere else', () => {
    expect([-1, 0, 5, 15, 40, 41].map((minute) => valueAt(line, minute))).toEqual([null, 28, 30, 32, 31, null]);
  });

  it('gives the hours that the plan counts above the storage limit, within what straight lines allow', () => {
    // A limit that the packs of the district pass.
    for (const vehicle of days.filter(({ packMaxC }) => (packMaxC ?? 0) > 12)) {
      for (const { packs } of dayHeat(plan, vehicle).trips) {
        const minutes = stretchesAbove(packs, 12).reduce(
          (sum, part) => sum + (part.at(-1)?.[0] ?? 0) - (part[0]?.[0] ?? 0),
          0,
        );
        const stepped = minutesAboveByMinute(packs, 12);
        expect(Math.abs(minutes - stepped)).toBeLessThan(2);
      }
    }
  });
});

/** The same by counting minutes. */
function minutesAboveByMinute(line: readonly HeatPoint[], limit: number): number {
  let minutes = 0;
  for (let minute = (line[0]?.[0] ?? 0) + 0.5; minute < (line.at(-1)?.[0] ?? 0); minute += 1) {
    if ((valueAt(line, minute) ?? 0) > limit) minutes += 1;
  }
  return minutes;
}
