import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boxUaWPerK,
  fillBox,
  heatCapacity,
  integrateStep,
  minutesAbove,
  newBox,
  stepBox,
  takeFromBox,
} from '../../../src/engine/science/box.ts';
import { packLog10PerDay, survivalSet } from '../../../src/engine/science/survival.ts';

interface Ride {
  readonly packsKg: number;
  readonly startC: number;
  readonly iceKg: number;
  readonly ua: number;
  readonly air: readonly number[];
  /** Part of the packs that leaves half way. */
  readonly leaving: number;
}

const rides = fc.record({
  packsKg: fc.double({ min: 0.1, max: 30, noNaN: true }),
  startC: fc.double({ min: 0, max: 25, noNaN: true }),
  iceKg: fc.double({ min: 0, max: 3, noNaN: true }),
  ua: fc.double({ min: 0.2, max: 2, noNaN: true }),
  air: fc.array(fc.double({ min: 5, max: 55, noNaN: true }), { minLength: 2, maxLength: 24 }),
  leaving: fc.double({ min: 0, max: 0.9, noNaN: true }),
});

/** Temperature after each quarter hour. */
function ride({ packsKg, startC, iceKg, ua, air, leaving }: Ride): number[] {
  const box = newBox();
  fillBox(box, packsKg, startC, iceKg, ua);
  return air.map((airC, i) => {
    if (i === Math.floor(air.length / 2)) takeFromBox(box, packsKg * leaving);
    stepBox(box, airC, 15);
    return box.celsius;
  });
}

/** The same by explicit steps of one second on enthalpy, which knows no plateau: it follows from the heat of melting. */
function rideByEnthalpy({ packsKg, startC, iceKg, ua, air, leaving }: Ride): number[] {
  let packs = packsKg;
  let joules = (packs * 2700 + 1500) * startC - iceKg * 333_550;
  const celsius = () => (joules > 0 ? joules / (packs * 2700 + 1500 + iceKg * 4186) : 0);
  return air.map((airC, i) => {
    if (i === Math.floor(air.length / 2)) {
      joules -= Math.max(0, celsius()) * packsKg * leaving * 2700;
      packs -= packsKg * leaving;
    }
    for (let second = 0; second < 900; second++) {
      const before = joules;
      joules += (ua * (airC - celsius())) / 2;
      joules = before + ua * (airC - celsius());
    }
    return celsius();
  });
}

describe('box against an integrator of one-second steps', () => {
  test('same temperatures within 0.01 K', () => {
    fc.assert(
      fc.property(rides, (r) => {
        const fine = rideByEnthalpy(r);
        ride(r).forEach((celsius, i) => {
          expect(Math.abs(celsius - (fine[i] as number))).toBeLessThan(0.01);
        });
      }),
      { numRuns: 60 },
    );
  });

  test('hotter air never keeps packs cooler', () => {
    fc.assert(
      fc.property(rides, fc.double({ min: 0, max: 10, noNaN: true }), (r, more) => {
        const hot = ride({ ...r, air: r.air.map((c) => c + more) });
        ride(r).forEach((celsius, i) => {
          expect(hot[i]).toBeGreaterThanOrEqual(celsius - 1e-9);
        });
      }),
    );
  });

  test('more ice never hurts while the air is warmer than the packs (its melt water would slow their cooling)', () => {
    const warm = rides.map((r) => ({ ...r, air: r.air.map((c) => 25 + c * 0.5).sort((a, b) => a - b) }));
    fc.assert(
      fc.property(warm, fc.double({ min: 0, max: 3, noNaN: true }), (r, more) => {
        const icy = ride({ ...r, iceKg: r.iceKg + more });
        ride(r).forEach((celsius, i) => {
          expect(icy[i]).toBeLessThanOrEqual(celsius + 1e-9);
        });
      }),
    );
  });

  test('what is left warms faster once packs have gone', () => {
    const box = newBox();
    const lighter = newBox();
    fillBox(box, 10, 5, 0, 0.5);
    fillBox(lighter, 10, 5, 0, 0.5);
    takeFromBox(lighter, 8);
    expect(lighter.celsius).toBe(5);
    stepBox(box, 38, 60);
    stepBox(lighter, 38, 60);
    expect(lighter.celsius).toBeGreaterThan(box.celsius);
  });

  test('heat is kept: what came through the wall is in the packs, the liner and the water', () => {
    const box = newBox();
    fillBox(box, 4, 12, 1, 0.8);
    const before = -box.iceKg * 333_550 + heatCapacity(box) * box.celsius;
    expect(before).toBeCloseTo((4 * 2700 + 1500) * 12 - 333_550, 3);
    expect(box.celsius).toBe(0);
  });
});

describe('what a step leaves behind', () => {
  const set = survivalSet({ carrier: 'peat', carrierSterile: true } as Parameters<typeof survivalSet>[0], 'soybean');

  test('integral of the loss rate and minutes above a limit agree with fine steps', () => {
    fc.assert(
      fc.property(rides, fc.double({ min: 1, max: 40, noNaN: true }), (r, limit) => {
        const box = newBox();
        const fine = newBox();
        fillBox(box, r.packsKg, r.startC, r.iceKg, r.ua);
        fillBox(fine, r.packsKg, r.startC, r.iceKg, r.ua);
        let [loss, above, fineLoss, fineAbove] = [0, 0, 0, 0];
        for (const airC of r.air) {
          stepBox(box, airC, 15);
          loss += integrateStep(box, (c) => packLog10PerDay(c, set));
          above += minutesAbove(box, limit);
          for (let k = 0; k < 300; k++) {
            stepBox(fine, airC, 0.025);
            fineLoss += 0.05 * packLog10PerDay(fine.celsius, set);
            if (fine.celsius > limit) fineAbove += 0.05;
            stepBox(fine, airC, 0.025);
          }
        }
        expect(Math.abs(loss - fineLoss)).toBeLessThan(1e-6 + 1e-3 * fineLoss);
        expect(Math.abs(above - fineAbove)).toBeLessThan(0.06 * r.air.length);
      }),
      { numRuns: 40 },
    );
  });
});

test('insulation of a box that gives none goes by its size; no litres, no box', () => {
  expect(boxUaWPerK(4, null)).toBeGreaterThanOrEqual(0.25);
  expect(boxUaWPerK(4, null)).toBeLessThanOrEqual(0.35);
  expect(boxUaWPerK(50, null)).toBeGreaterThanOrEqual(0.45);
  expect(boxUaWPerK(50, null)).toBeLessThanOrEqual(0.65);
  expect(boxUaWPerK(50, 1.2)).toBe(1.2);
  expect(boxUaWPerK(0, 1.2)).toBeNaN();
});
