import { describe, expect, test } from 'vitest';
import { CROP_FACTS, GOAL_CELLS_PER_SEED } from '../../src/engine/reference/crops.ts';
import { INOCULATION_PRACTICE } from '../../src/engine/reference/inoculation-practice.ts';
import { cellsPerSeed, doseForCells, packsForSeed, wholePacks } from '../../src/engine/science/seed-rate.ts';

/** Exact arithmetic: within 0.5 percent. */
const near = (value: number, published: number) => expect(Math.abs(value / published - 1)).toBeLessThan(0.005);

const FLOOR = CROP_FACTS.soybean.floorCellsPerSeed.value;

describe('inoculant for seed', () => {
  test('4 and 6 g/kg at 70 kg/ha of seed are 0.28 and 0.42 kg/ha (FAO 1984, Legume inoculants and their use, ch. 6; read)', () => {
    near(packsForSeed(70, 4, 1000, 0), 0.28);
    near(packsForSeed(70, 6, 1000, 0), 0.42);
  });

  test('120 ha at 60 kg/ha, 5 g/kg, packs of 100 g: 360 packs, 396 with a tenth more (derived)', () => {
    const seedKg = 120 * 60;
    expect(seedKg).toBe(7200);
    expect(wholePacks(packsForSeed(seedKg, 5, 100, 0))).toBe(360);
    expect(wholePacks(packsForSeed(seedKg, 5, 100, 10))).toBe(396);
    // The trap: the bare product lies a hair above 396 and would be rounded up to 397.
    expect(Math.ceil(packsForSeed(seedKg, 5, 100, 10))).toBe(397);
  });

  test('whole packs hold what is needed, and not a pack too many', () => {
    expect(wholePacks(0)).toBe(0);
    expect(Object.is(wholePacks(1e-12), 0)).toBe(true);
    expect(wholePacks(0.001)).toBe(1);
    expect(wholePacks(360.001)).toBe(361);
    expect(wholePacks(7)).toBe(7);
  });

  test('one 250 g pack to 100 kg of cowpea, mung, pigeonpea or groundnut seed (Australian chart; pack read, dose derived)', () => {
    near(packsForSeed(100, 2.5, 250, 0), 1);
  });
});

describe('rhizobia on each seed', () => {
  test('1e9 per g, 5 g/kg, 150 g: 7.5e5, above the floor of 1e5 (derived; floor: Canada, C.R.C. c.666 s.10.2; read)', () => {
    expect(FLOOR).toBe(1e5);
    near(cellsPerSeed(1e9, 5, 150, 1), 7.5e5);
    expect(cellsPerSeed(1e9, 5, 150, 1)).toBeGreaterThan(FLOOR);
  });

  test('1e8 per g, 5 g/kg, 150 g: 7.5e4, below the floor (derived)', () => {
    near(cellsPerSeed(1e8, 5, 150, 1), 7.5e4);
    expect(cellsPerSeed(1e8, 5, 150, 1)).toBeLessThan(FLOOR);
  });

  test('10^9.6 per g, 2.5 g/kg, 200 g: 1.99e6, above 10^6 per seed (Hartley et al. 2005, 10.1071/EA03158; read)', () => {
    near(cellsPerSeed(10 ** 9.6, 2.5, 200, 1), 1.99e6);
    expect(cellsPerSeed(10 ** 9.6, 2.5, 200, 1)).toBeGreaterThan(GOAL_CELLS_PER_SEED.value);
  });

  test('dose for 1e5 a seed at 1e8 per g: 6.67, 4.00 and 20.0 g/kg for 150, 250 and 50 g (derived)', () => {
    near(doseForCells(1e5, 1e8, 150), 6.67);
    near(doseForCells(1e5, 1e8, 250), 4.0);
    near(doseForCells(1e5, 1e8, 50), 20.0);
  });

  test('half of the cells stick: half on the seed', () => {
    expect(cellsPerSeed(1e9, 5, 150, 0.5)).toBe(cellsPerSeed(1e9, 5, 150, 1) / 2);
  });
});

// Facts of the trade: logic tests, not oracles.
describe('practice (common practice, no source)', () => {
  test('5 g of powder to 1 kg of seed: a level cap of about 5 g to a kilogram, 20 kg from a pack of 100 g', () => {
    const { usualDoseGPerKg, gramsPerLevelCap } = INOCULATION_PRACTICE;
    expect(usualDoseGPerKg.value).toBe(5);
    expect(gramsPerLevelCap.value / usualDoseGPerKg.value).toBe(1);
    expect(packsForSeed(20, usualDoseGPerKg.value, 100, 0)).toBe(1);
  });

  test('15 mL of water to a kilogram, three caps of about 5 mL; a sticker sachet in about 300 mL', () => {
    const { waterMlPerKg, millilitresPerLevelCap, waterMlPerStickerSachet } = INOCULATION_PRACTICE;
    expect(waterMlPerKg.value / millilitresPerLevelCap.value).toBe(3);
    expect(waterMlPerStickerSachet.value).toBe(300);
  });

  test('what is common practice says so and is never called read', () => {
    for (const fact of Object.values(INOCULATION_PRACTICE)) {
      if (fact.source.startsWith('common practice')) expect(fact.status).toBe('memory');
    }
  });
});
