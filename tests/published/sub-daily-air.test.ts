import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airCelsius,
  airCelsiusBySquareRootNight,
  sunLoad,
  sunTimes,
  writeAirOfDay,
  writeSunLoads,
} from '../../src/engine/science/sun-and-air.ts';
import { dayNumber } from '../../src/engine/vocabulary/units.ts';

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);

describe('shade air after Parton & Logan 1981, original form', () => {
  it.each([
    [0, 14.3368],
    [6, 10.6793],
    [9, 21.8396],
    [12, 28.8701],
    [14, 29.9616],
    [15, 29.3185],
    [18, 23.0284],
    [20, 19.0292],
  ])('30/10 °C, sun from 6 to 18 h: at %i h %f °C (derived with 1.86, 2.20, -0.17)', (hour, celsius) => {
    near(airCelsius(10, 30, 360, 1080, hour * 60), celsius, 1e-4);
  });
  it('40/26 °C, sun from 5.7 to 18.5 h: a hot day as printed to 0.1 K (derived)', () => {
    const printed = [27.2, 32.3, 36.5, 39.2, 40.0, 38.8, 35.7];
    printed.forEach((celsius, i) => {
      near(airCelsius(26, 40, 342, 1110, (6 + 2 * i) * 60), celsius, 0.0501);
    });
  });
  const days = fc.record({
    tmin: fc.double({ min: -5, max: 30, noNaN: true }),
    range: fc.double({ min: 0, max: 25, noNaN: true }),
    sunrise: fc.double({ min: 240, max: 480, noNaN: true }),
    sunset: fc.double({ min: 960, max: 1200, noNaN: true }),
    minute: fc.double({ min: 0, max: 1440, noNaN: true }),
  });
  it('stays between the extremes of the day at every minute', () => {
    fc.assert(
      fc.property(days, ({ tmin, range, sunrise, sunset, minute }) => {
        const celsius = airCelsius(tmin, tmin + range, sunrise, sunset, minute);
        return celsius <= tmin + range + 1e-9 && celsius >= tmin - 1e-9;
      }),
    );
  });
  it('meets the maximum 1.86 h after the middle of the warm branch', () => {
    fc.assert(
      fc.property(days, ({ tmin, range, sunrise, sunset }) => {
        // sin = 1 where hours since sunrise less c are half of Y + 2a.
        const peak = sunrise + (sunset - sunrise) / 2 + (1.86 - 0.17) * 60;
        return Math.abs(airCelsius(tmin, tmin + range, sunrise, sunset, peak) - (tmin + range)) < 1e-9;
      }),
    );
  });
  it('runs on over sunset and over midnight without a step', () => {
    near(airCelsius(10, 30, 360, 1080, 1080), airCelsius(10, 30, 360, 1080, 1080 - 1e-9), 1e-9);
    near(airCelsius(10, 30, 360, 1080, 1440), airCelsius(10, 30, 360, 1080, 0), 1e-9);
  });
});

describe('shade air after Cesaraccio et al. 2001', () => {
  it.each([
    [8, 17.65367],
    [2, 14.01487],
    [16, 27.94389],
    [20, 18.49743],
  ])('30/10 °C, next minimum 12 °C, sun from 6 to 18 h: at %i h %f °C (read, tests of TrenchR)', (hour, celsius) => {
    near(airCelsiusBySquareRootNight(10, 30, 12, 360, 1080, hour * 60), celsius, 1e-5);
  });
  it('agrees with the first model within 2 K through the hours of a hot day (derived)', () => {
    for (let minute = 360; minute <= 1080; minute += 15) {
      const other = airCelsiusBySquareRootNight(26, 40, 26, 342, 1110, minute);
      near(airCelsius(26, 40, 342, 1110, minute), other, 2);
    }
  });
});

describe('a whole day at once', () => {
  const days = fc.record({
    tmin: fc.double({ min: -5, max: 30, noNaN: true }),
    range: fc.double({ min: 0, max: 25, noNaN: true }),
    lat: fc.double({ min: -60, max: 60, noNaN: true }),
    lon: fc.double({ min: -180, max: 180, noNaN: true }),
    day: fc.integer({ min: 15000, max: 25000 }),
    ahead: fc.integer({ min: -1, max: 1 }),
  });
  it('is the curve of every moment: air within a thousandth of a kelvin, sun within a thousandth of full sun', () => {
    fc.assert(
      fc.property(days, ({ tmin, range, lat, lon, day, ahead }) => {
        const offset = Math.round(lon / 15 + ahead) * 60;
        const sun = sunTimes(dayNumber(day), lat, lon, offset);
        const [air, load] = [new Float32Array(96), new Float32Array(96)];
        writeAirOfDay(tmin, tmin + range, sun.sunriseMinute, sun.sunsetMinute, air, 0);
        writeSunLoads(dayNumber(day), lat, lon, offset, tmin, tmin + range, load, 0);
        for (let q = 0; q < 96; q++) {
          const minute = q * 15;
          near(air[q] as number, airCelsius(tmin, tmin + range, sun.sunriseMinute, sun.sunsetMinute, minute), 1e-3);
          near(load[q] as number, sunLoad(dayNumber(day), lat, lon, offset, tmin, tmin + range, minute), 1e-3);
        }
      }),
    );
  });
});
