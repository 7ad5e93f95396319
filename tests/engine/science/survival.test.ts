import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SURVIVAL_SETS } from '../../../src/engine/reference/survival-sets.ts';
import { onSeedLog10Loss, packLog10PerDay, storeCelsius, survivalSet } from '../../../src/engine/science/survival.ts';
import type { Product } from '../../../src/engine/vocabulary/supply.ts';
import { inoculant } from '../stages/4-needs/small-scenario.ts';

const celsius = fc.double({ min: -5, max: 60, noNaN: true });

describe('in the pack', () => {
  test('hotter never keeps more, in any set', () => {
    fc.assert(
      fc.property(celsius, celsius, (a, b) => {
        for (const { value } of Object.values(SURVIVAL_SETS)) {
          const [cool, hot] = [packLog10PerDay(Math.min(a, b), value), packLog10PerDay(Math.max(a, b), value)];
          expect(hot).toBeGreaterThanOrEqual(cool);
          expect(cool).toBeGreaterThan(0);
        }
      }),
    );
  });

  test('ten times the loss for each z, to the edge of what is known', () => {
    const { value } = SURVIVAL_SETS.cautious;
    expect(packLog10PerDay(54, value) / packLog10PerDay(40, value)).toBeCloseTo(10, 10);
    expect(packLog10PerDay(60, value)).toBeGreaterThan(0);
    expect(packLog10PerDay(60.001, value)).toBeNaN();
    expect(packLog10PerDay(Number.NaN, value)).toBeNaN();
  });

  const peat: Product = inoculant('P', ['soybean', 'common_bean'], {});

  test('the default set only for a carrier called sterile; the cautious one where it is not, or nobody says', () => {
    expect(survivalSet({ ...peat, carrierSterile: true }, 'soybean').name).toBe('default');
    expect(survivalSet({ ...peat, carrierSterile: false }, 'soybean').name).toBe('cautious');
    expect(survivalSet({ ...peat, carrierSterile: null }, 'soybean').name).toBe('cautious');
  });

  test('fast growers lose 2.2 times as fast, liquid 1.5 times, both 3.3 times', () => {
    const liquid: Product = { ...peat, carrier: 'liquid' };
    const rate = (product: Product, crop: 'soybean' | 'common_bean') => packLog10PerDay(30, survivalSet(product, crop));
    const slowPeat = rate(peat, 'soybean');
    expect(rate(peat, 'common_bean') / slowPeat).toBeCloseTo(2.2, 10);
    expect(rate(liquid, 'soybean') / slowPeat).toBeCloseTo(1.5, 10);
    expect(rate(liquid, 'common_bean') / slowPeat).toBeCloseTo(3.3, 10);
  });
});

describe('on the seed', () => {
  test('longer and hotter never keep more', () => {
    const hours = fc.double({ min: 0, max: 504, noNaN: true });
    fc.assert(
      fc.property(hours, hours, celsius, celsius, (h1, h2, t1, t2) => {
        const least = onSeedLog10Loss(Math.min(h1, h2), Math.min(t1, t2));
        const most = onSeedLog10Loss(Math.max(h1, h2), Math.max(t1, t2));
        expect(most).toBeGreaterThanOrEqual(least);
      }),
    );
  });

  test('nothing is lost at once; half of the first loss in the first hour; unknown after 21 days', () => {
    expect(onSeedLog10Loss(0, 25)).toBe(0);
    // 0.40 log10 * 1 h / 2 h + 0.094 log10 a day / 24
    expect(onSeedLog10Loss(1, 25)).toBeCloseTo(0.2 + 0.094 / 24, 12);
    expect(onSeedLog10Loss(504, 25)).toBeCloseTo(0.4 + 0.094 * 21, 12);
    expect(onSeedLog10Loss(505, 25)).toBeNaN();
  });
});

test('stores: a room 2 K above the air, a clay pot 4 K below, a fridge at 5 °C, none as a room', () => {
  expect(storeCelsius('room', 28)).toBe(30);
  expect(storeCelsius('none', 28)).toBe(30);
  expect(storeCelsius('clay_pot', 28)).toBe(24);
  expect(storeCelsius('fridge', 28)).toBe(5);
});
