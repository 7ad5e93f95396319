import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  degreeHours,
  hoursAbove,
  integrateRecord,
  meanKineticCelsius,
  measureExposure,
} from '../../../src/engine/science/exposure.ts';

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

const records = fc.array(
  fc.record({ minutes: fc.integer({ min: 1, max: 240 }), celsius: fc.double({ min: -5, max: 55, noNaN: true }) }),
  { minLength: 2, maxLength: 12 },
);
/** Times and temperatures of steps laid end to end. */
const laid = (steps: readonly { readonly minutes: number; readonly celsius: number }[]) => {
  let now = 0;
  return {
    minutes: steps.map(({ minutes }) => {
      now += minutes;
      return now;
    }),
    celsius: steps.map(({ celsius }) => celsius),
  };
};

describe('a record of uneven samples', () => {
  const rate = (celsius: number) => 10 ** ((celsius - 40) / 18) / 28;

  test('splitting every interval changes no measure and no loss', () => {
    fc.assert(
      fc.property(records, (steps) => {
        const { minutes, celsius } = laid(steps);
        const split = { minutes: [minutes[0] as number], celsius: [celsius[0] as number] };
        for (let i = 1; i < minutes.length; i++) {
          split.minutes.push(((minutes[i - 1] as number) + (minutes[i] as number)) / 2, minutes[i] as number);
          split.celsius.push(((celsius[i - 1] as number) + (celsius[i] as number)) / 2, celsius[i] as number);
        }
        const [whole, halves] = [measureExposure(minutes, celsius), measureExposure(split.minutes, split.celsius)];
        for (const figure of ['hours', 'minC', 'maxC', 'degreeHours30', 'hoursAbove30', 'hoursAbove40'] as const)
          expect(halves[figure]).toBeCloseTo(whole[figure], 9);
        expect(Math.abs(halves.meanKineticC - whole.meanKineticC)).toBeLessThan(1e-3);
        const loss = integrateRecord(minutes, celsius, rate);
        expect(Math.abs(integrateRecord(split.minutes, split.celsius, rate) / loss - 1)).toBeLessThan(1e-6);
      }),
    );
  });

  test('hotter never keeps more alive, and never shows less', () => {
    fc.assert(
      fc.property(records, fc.double({ min: 0, max: 5, noNaN: true }), (steps, more) => {
        const { minutes, celsius } = laid(steps);
        const hot = celsius.map((c) => c + more);
        const [cool, warm] = [measureExposure(minutes, celsius), measureExposure(minutes, hot)];
        expect(warm.meanKineticC).toBeGreaterThanOrEqual(cool.meanKineticC - 1e-9);
        expect(warm.hoursAbove35).toBeGreaterThanOrEqual(cool.hoursAbove35 - 1e-9);
        const [lost, more35] = [integrateRecord(minutes, celsius, rate), integrateRecord(minutes, hot, rate)];
        expect(more35).toBeGreaterThanOrEqual(lost * (1 - 1e-9));
      }),
    );
  });

  test('the loss along a straight line is exact: against a thousand small steps', () => {
    let fine = 0;
    for (let i = 0; i < 1000; i++) fine += (120 / 1440 / 1000) * rate(20 + ((i + 0.5) / 1000) * 25);
    expect(integrateRecord([0, 120], [20, 45], rate) / fine).toBeCloseTo(1, 6);
    expect(integrateRecord([0, 120], [30, 30], rate)).toBeCloseTo((120 / 1440) * rate(30), 15);
    expect(integrateRecord([5], [30], rate)).toBe(0);
  });
});
