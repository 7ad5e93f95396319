import fc from 'fast-check';
import { expect, test } from 'vitest';
import { degreeHours, hoursAbove, meanKineticCelsius } from '../../../src/engine/science/exposure.ts';

const series = fc.array(fc.double({ min: -5, max: 55, noNaN: true }), { minLength: 2, maxLength: 30 });

test('mean kinetic temperature is at least the mean, and does not depend on order', () => {
  fc.assert(
    fc.property(series, (celsius) => {
      const mkt = meanKineticCelsius(celsius);
      const mean = celsius.reduce((sum, c) => sum + c, 0) / celsius.length;
      expect(mkt).toBeGreaterThanOrEqual(mean - 1e-9);
      expect(meanKineticCelsius([...celsius].reverse())).toBeCloseTo(mkt, 9);
    }),
  );
});

test('splitting an interval leaves mean kinetic temperature as it is', () => {
  expect(meanKineticCelsius([10, 40, 40], [3, 1, 1])).toBeCloseTo(meanKineticCelsius([10, 40], [3, 2]), 12);
});

const hundredths = fc.array(fc.integer({ min: 0, max: 6000 }), { minLength: 2, maxLength: 12 });

test('degree hours and hours above agree with a fine rectangle sum', () => {
  fc.assert(
    fc.property(hundredths, fc.integer({ min: 0, max: 4500 }), (whole, at) => {
      // Hundredths of a degree, as thermometers give: a rectangle sum cannot see steps far finer than its own.
      const [celsius, threshold] = [whole.map((c) => c / 100), at / 100];
      const parts = 4000;
      let [sum, hours] = [0, 0];
      for (let i = 1; i < celsius.length; i++) {
        for (let k = 0; k < parts; k++) {
          const share = (k + 0.5) / parts;
          const c = (celsius[i - 1] as number) * (1 - share) + (celsius[i] as number) * share - threshold;
          if (c > 0) hours += 1 / parts;
          sum += Math.max(0, c) / parts;
        }
      }
      expect(degreeHours(celsius, 1, threshold)).toBeCloseTo(sum, 3);
      expect(Math.abs(hoursAbove(celsius, 1, threshold) - hours)).toBeLessThan(celsius.length / parts);
    }),
    { numRuns: 20 },
  );
});
