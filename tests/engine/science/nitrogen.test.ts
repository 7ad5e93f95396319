import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimateNitrogen, nitrogenFixedKgPerHa } from '../../../src/engine/science/nitrogen.ts';
import { CROPS } from '../../../src/engine/vocabulary/crops.ts';

test('more grain never fixes less, from nothing to 6 t/ha', () => {
  const grain = fc.double({ min: 0, max: 6, noNaN: true });
  fc.assert(
    fc.property(fc.constantFrom(...CROPS), grain, grain, (crop, a, b) => {
      const less = nitrogenFixedKgPerHa(crop, Math.min(a, b));
      expect(less).toBeGreaterThanOrEqual(0);
      expect(nitrogenFixedKgPerHa(crop, Math.max(a, b))).toBeGreaterThanOrEqual(less - 1e-9);
    }),
  );
});

test('what is fixed is part of the crop, and what is in shoots is part of the crop', () => {
  for (const crop of CROPS) {
    const steps = estimateNitrogen(crop, 1);
    expect(steps.fixedKg).toBeLessThan(steps.cropNKg);
    expect(steps.shootNKg).toBeLessThan(steps.cropNKg);
    expect(steps.shootNKg).toBeCloseTo((steps.shootDryMatterT * 1000 * steps.shootNPercent) / 100, 10);
  }
});

test('only soybean differs by region', () => {
  for (const crop of CROPS) {
    const here = nitrogenFixedKgPerHa(crop, 1);
    const ratio = nitrogenFixedKgPerHa(crop, 1, 'brazil') / here;
    expect(ratio).toBeCloseTo(crop === 'soybean' ? 78 / 61 : 1, 12);
  }
});
