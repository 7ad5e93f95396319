import { describe, expect, it } from 'vitest';
import type { Product } from '../../../src/engine/index.ts';
import { capsPerPack, coatingAmounts, coatingRates } from '../../../src/presentation/papers/coating-amounts.ts';

/** A peat powder as the trade sells it: 100 g, 5 g on a kilogram of seed. */
const powder = { doseGPerKg: 5, gramsPerLevelCap: 5, packG: 100 } as Product;
const plainWater = { seedKg: 20, waterL: 0.3, stickerPacks: 0 };

describe('amounts for a batch', () => {
  it('5 g of powder, one level cap, and 15 mL of water, three caps, coat a kilogram (common practice, no source)', () => {
    const rates = coatingRates(powder, plainWater);
    expect(rates && coatingAmounts(rates, 1)).toEqual({
      seedKg: 1,
      powderG: 5,
      caps: 1,
      waterMl: 15,
      waterCaps: 3,
      stickerPacks: 0,
    });
    expect(rates && capsPerPack(powder, rates)).toBe(20);
  });

  it('a sachet of sticker for 20 kg is dissolved in 300 mL, a quarter of both for 5 kg (common practice, no source)', () => {
    const rates = coatingRates(powder, { seedKg: 20, waterL: 0.3, stickerPacks: 1 });
    const amounts = rates && coatingAmounts(rates, 5);
    expect(amounts?.waterMl).toBeCloseTo(75, 9);
    expect(amounts?.stickerPacks).toBeCloseTo(0.25, 12);
  });

  it('4 to 6 g on a kilogram at 70 kg to the hectare are 0.28 to 0.42 kg to the hectare (FAO 1984, chapter 6)', () => {
    for (const [dose, kg] of [
      [4, 0.28],
      [6, 0.42],
    ] as const) {
      const rates = coatingRates({ ...powder, doseGPerKg: dose }, plainWater);
      expect(rates && coatingAmounts(rates, 70).powderG / 1000).toBeCloseTo(kg, 9);
    }
  });

  it('never counts more caps than the label’s dose, whatever cap and dose', () => {
    for (const doseGPerKg of [1, 2.5, 4, 5, 10]) {
      for (const gramsPerLevelCap of [3, 4.5, 5, 7]) {
        const rates = coatingRates({ ...powder, doseGPerKg, gramsPerLevelCap }, plainWater);
        for (let kg = 0.5; kg <= 30; kg += 0.5) {
          const amounts = rates && coatingAmounts(rates, kg);
          const given = (amounts?.caps ?? 0) * gramsPerLevelCap;
          expect(given).toBeLessThanOrEqual(doseGPerKg * kg + 1e-6);
          expect(given).toBeGreaterThan(doseGPerKg * kg - gramsPerLevelCap / 2);
        }
      }
    }
  });

  it('states nothing where the label states no dose', () => {
    expect(coatingRates({ ...powder, doseGPerKg: null }, plainWater)).toBeNull();
  });
});
