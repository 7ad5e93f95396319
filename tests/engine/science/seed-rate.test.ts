import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CROP_FACTS, cropFact } from '../../../src/engine/reference/crops.ts';
import {
  cellsPerSeed,
  doseForCells,
  looksLikeHundredSeedWeight,
  plantsPerM2,
  seedRateKgPerHa,
  seedsPerKg,
  wholePacks,
} from '../../../src/engine/science/seed-rate.ts';
import { CROPS } from '../../../src/engine/vocabulary/crops.ts';

const weightG = fc.double({ min: 20, max: 1000, noNaN: true });
const stand = fc.double({ min: 1, max: 200, noNaN: true });

test('seed sown holds as many seeds as the stand asks for', () => {
  fc.assert(
    fc.property(stand, weightG, fc.double({ min: 10, max: 100, noNaN: true }), (plants, thousandSeedG, percent) => {
      const seedsPerM2 = (seedRateKgPerHa(plants, thousandSeedG, percent) * seedsPerKg(thousandSeedG)) / 10_000;
      expect((seedsPerM2 * percent) / 100 / plants).toBeCloseTo(1, 10);
    }),
  );
});

test('a lower establishment never takes less seed', () => {
  fc.assert(
    fc.property(stand, weightG, fc.integer({ min: 11, max: 100 }), (plants, thousandSeedG, percent) => {
      const more = seedRateKgPerHa(plants, thousandSeedG, percent - 1);
      expect(more).toBeGreaterThan(seedRateKgPerHa(plants, thousandSeedG, percent));
    }),
  );
});

test('the dose for a number of rhizobia gives that number back', () => {
  fc.assert(
    fc.property(weightG, fc.double({ min: 1e7, max: 1e10, noNaN: true }), (thousandSeedG, countPerG) => {
      const dose = doseForCells(1e6, countPerG, thousandSeedG);
      expect(cellsPerSeed(countPerG, dose, thousandSeedG, 1) / 1e6).toBeCloseTo(1, 10);
    }),
  );
});

test('whole packs are enough, to a billionth, and one fewer is not', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (packs) => {
      const whole = wholePacks(packs);
      expect(Number.isInteger(whole)).toBe(true);
      expect(whole).toBeGreaterThanOrEqual(packs - 1e-9 * Math.max(1, packs));
      expect(whole - 1).toBeLessThan(packs);
    }),
  );
});

test('the guard against hundred-seed weights: no usual weight warns, a tenth of it always does', () => {
  for (const crop of CROPS) {
    const { thousandSeedG, thousandSeedLowG } = CROP_FACTS[crop];
    for (const weight of [thousandSeedG.value, thousandSeedLowG.value]) {
      expect(looksLikeHundredSeedWeight(crop, weight)).toBe(false);
      expect(looksLikeHundredSeedWeight(crop, weight / 10)).toBe(true);
    }
  }
});

test('the reference seed rate of each crop is a stand that a field could hold: 2 to 200 plants per m²', () => {
  for (const crop of CROPS) {
    const { seedRateKgPerHa: rate, thousandSeedG, referenceGermination, emergence } = CROP_FACTS[crop];
    const seeds = (rate.value * seedsPerKg(thousandSeedG.value)) / 10_000;
    const plants = seeds * referenceGermination.value * emergence.value;
    expect(plants, crop).toBeGreaterThan(plantsPerM2(100, 50, 1));
    expect(plants, crop).toBeLessThan(plantsPerM2(20, 2.5, 1));
  }
});

test('a figure that the programme assumes takes the place of the reference, and is called given', () => {
  expect(cropFact('cowpea', 'seedRateKgPerHa', {})).toEqual(CROP_FACTS.cowpea.seedRateKgPerHa);
  const own = cropFact('cowpea', 'seedRateKgPerHa', { 'cowpea.seedRateKgPerHa': 18 });
  expect([own.value, own.status]).toEqual([18, 'given']);
});
