import { describe, expect, it } from 'vitest';
import { dayNumber, type Lot, type Product } from '../../../src/engine/index.ts';
import { countAtStart } from '../../../src/engine/science/stored-count.ts';
import { blankDepot, blankInoculant, blankLot } from '../blank-scenario.ts';

const FIRST = dayNumber(20_000);
const powder = blankInoculant({ crops: ['soybean'], carrierSterile: true });

/** A lot tested so many days before planning at 1e9 per g, in a depot without cool store where the air has one temperature. */
function count(daysAgo: number, celsius: number, lot: Partial<Lot> = {}, product: Partial<Product> = {}): number {
  return countAtStart({
    lot: blankLot({ testedCountPerG: 1e9, testedOn: dayNumber(FIRST - daysAgo), ...lot }),
    product: { ...powder, ...product },
    depot: blankDepot({ coolStoreLitres: 0, coolStoreC: null }),
    isOutside: false,
    earlierMeanC: new Float64Array(365).fill(celsius),
    firstDay: FIRST,
  });
}

describe('rhizobia per gram brought forward from the test to the first planning day', () => {
  it('180 days at 30 °C from 1e9: above 1e7 (Aarons & Ahmad 1986, 10.1111/j.1472-765x.1986.tb01529.x; read); 10^7.21 (derived)', () => {
    expect(count(180, 30)).toBeGreaterThan(1e7);
    expect(Math.log10(count(180, 30))).toBeCloseTo(7.21, 2);
  });

  it('a year at 4 °C: 0.13 log10; 0.20 was found (Hartley et al. 2005; read)', () => {
    expect(9 - Math.log10(count(365, 4))).toBeCloseTo(0.1304, 4);
  });

  it('days before those whose air is told are as the first of them', () => {
    expect(9 - Math.log10(count(730, 4))).toBeCloseTo(2 * 0.1304, 3);
  });

  it('a test on the day or after it loses nothing; a label count and a test without a date stand as they are', () => {
    expect(count(0, 30)).toBe(1e9);
    expect(count(-5, 30)).toBe(1e9);
    expect(count(180, 30, { testedOn: null })).toBe(1e9);
    expect(count(180, 30, { testedCountPerG: null }, { countPerG: 2e9 })).toBe(2e9);
    expect(count(180, 30, { testedCountPerG: null }, { countPerG: null })).toBeNaN();
  });

  it('the strain that dies fastest speaks for a pack of several crops: 2.2 times the loss (Roughley et al. 1995, derived)', () => {
    const slow = 9 - Math.log10(count(90, 25));
    const both = 9 - Math.log10(count(90, 25, {}, { crops: ['soybean', 'common_bean'] }));
    expect(both / slow).toBeCloseTo(2.2, 6);
  });

  it('hotter or longer never leaves more', () => {
    for (const [days, celsius] of [
      [30, 20],
      [90, 28],
    ] as const) {
      expect(count(days + 1, celsius)).toBeLessThan(count(days, celsius));
      expect(count(days, celsius + 1)).toBeLessThan(count(days, celsius));
    }
  });
});
