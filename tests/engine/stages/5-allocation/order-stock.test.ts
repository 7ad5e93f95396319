import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import type { LinearSolver, Scenario } from '../../../../src/engine/index.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { wholePacksFor } from '../../../../src/engine/stages/5-allocation/packs-to-order.ts';
import { randomDistrict } from './random-districts.ts';
import { type DistrictSpec, decisions, FROM, lot, sachet, seedPack, smallDistrict } from './small-district.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

const order = (spec: DistrictSpec, over: Partial<Scenario> = {}) => {
  const district = smallDistrict(spec);
  const scenario = { ...district.scenario, asOf: (FROM - 60) as Scenario['asOf'], ...over };
  return {
    scenario,
    result: allocateStock(scenario, decisions(), district.places, district.season, district.needs, solver, null).result,
  };
};

// 10 ha at 10 kg per ha in one community, 4.2 ha in another that saved 12 kg: 100 and 30 kg of seed to bring, 142 to coat.
const LARGE = seedPack('soybean', 25, { pricePerPack: 30, leadDays: 14, orderMultiple: 1 });
const SMALL = seedPack('soybean', 5, { pricePerPack: 8, leadDays: 14, orderMultiple: 1 });
const SACHET = sachet(['soybean'], { pricePerPack: 6, leadDays: 21, orderMultiple: 5 });
const AHEAD: DistrictSpec = {
  crops: ['soybean'],
  communities: [{ ha: { soybean: 10 } }, { ha: { soybean: 4.2 }, ownSeedKg: { soybean: 12 } }],
  products: [LARGE, SMALL, SACHET],
  lots: [],
};

describe('the order list', () => {
  it('worked by hand: 5 bags of 25 kg and one of 5 kg, 13 sachets made up to 15; dates by lead time', () => {
    const { orders } = order(AHEAD).result;
    const told = orders.map(({ product, packs, cost, orderBy, arrives, verdict }) => [
      product,
      packs,
      cost,
      orderBy - FROM,
      arrives - FROM,
      verdict,
    ]);
    // 100 kg: 4 x 25; 30 kg: 25 + 5. To coat: 100 and 42 kg at 20 kg a sachet: 5 and 3 = 8, made up to 10.
    expect(told).toEqual([
      [2, 10, 60, -21, 0, 'in-time'],
      [0, 5, 150, -14, 0, 'in-time'],
      [1, 1, 8, -14, 0, 'in-time'],
    ]);
    expect(orders[1]?.hectares).toBeCloseTo(12.5, 9);
  });

  it('what comes too late is said and not bought; inoculant then only for seed that is there', () => {
    const late = order({ ...AHEAD, products: [{ ...LARGE, leadDays: 120 }, { ...SMALL, leadDays: 120 }, SACHET] });
    const seed = late.result.orders.filter(({ product }) => product < 2);
    expect(seed.map(({ packs, verdict }) => [packs, verdict])).toEqual(seed.map(() => [0, 'too-late']));
    expect(seed.length).toBeGreaterThan(0);
    // 12 kg saved: one sachet, made up to 5.
    expect(late.result.orders.find(({ product }) => product === 2)?.packs).toBe(5);
  });

  it('the reserve is bought too: 20 percent kept back of 10 leaves 8', () => {
    const { orders } = order({
      ...AHEAD,
      products: [LARGE, SMALL, { ...SACHET, orderMultiple: 1 }],
      policy: { reservePercent: 20 },
    }).result;
    const sachets = orders.find(({ product }) => product === 2)?.packs as number;
    expect(sachets - Math.floor(sachets * 0.2)).toBe(8);
  });

  it('stock in hand is not bought again', () => {
    const { orders } = order({ ...AHEAD, lots: [lot(LARGE, 5), lot(SMALL, 1), lot(SACHET, 8)] }).result;
    expect(orders).toEqual([]);
  });

  it('says how much of it the cool store has room for', () => {
    const { orders } = order({ ...AHEAD, depots: [{ coolStoreLitres: 1.25 }] }).result;
    // 0.2 L a sachet.
    expect(orders.find(({ product }) => product === 2)?.packsAtOnce).toBe(6);
  });

  it('bought as listed, everybody who can be reached has all seed: 20 random districts without stock', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const spec = { ...randomDistrict(seed), lots: [] };
      const { result } = order(spec);
      const bought = result.orders.map(({ product, depot, packs }) =>
        lot(spec.products[product] as (typeof spec.products)[number], packs, { depotId: `DEPOT-${depot}` }),
      );
      const after = order({ ...spec, lots: bought }).result;
      const lacks = after.shortfalls.filter(
        ({ reason }) => reason !== 'not-reachable' && reason !== 'no-seed-to-inoculate',
      );
      const short = lacks.reduce((sum, { hectares }) => sum + hectares, 0);
      expect(short).toBeLessThan(1e-6);
      expect(after.orders).toEqual([]);
    }
  });
});

describe('a budget', () => {
  /** All ways to buy, counted out: the most hectares with seed plus hectares inoculated. */
  function bestByEnumeration(budget: number): number {
    let best = 0;
    for (let large = 0; large <= 5; large++)
      for (let small = 0; small <= 1; small++)
        for (let sachets = 0; sachets <= 10; sachets += 5) {
          if (large * 30 + small * 8 + sachets * 6 > budget) continue;
          const seedKg = Math.min(130, large * 25 + small * 5);
          const coatKg = Math.min(sachets * 20, 12 + seedKg);
          best = Math.max(best, (seedKg + coatKg) / 10);
        }
    return best;
  }

  it('is never passed, and buys as much as counting out all ways finds', () => {
    for (let budget = 0; budget <= 240; budget += 8) {
      const { orders } = order({ ...AHEAD, policy: { orderBudget: budget } }).result;
      const packs = (of: number) =>
        orders.filter(({ product }) => product === of).reduce((sum, one) => sum + one.packs, 0);
      const spent = packs(0) * 30 + packs(1) * 8 + packs(2) * 6;
      expect(spent).toBeLessThanOrEqual(budget);
      const seedKg = Math.min(130, packs(0) * 25 + packs(1) * 5);
      const served = (seedKg + Math.min(packs(2) * 20, 12 + seedKg)) / 10;
      expect(served).toBeCloseTo(bestByEnumeration(budget), 6);
    }
  });
});

describe('packs for a need', () => {
  const offer = (product: number, kg: number, price: number | null) => ({ product, kg, price, arrives: 0 });
  const counts = (needKg: number, prices: readonly (number | null)[]) =>
    wholePacksFor(needKg, [offer(0, 25, prices[0] ?? null), offer(1, 5, prices[1] ?? null)]).map(({ packs }) => packs);
  it('large ones first, the rest in the smallest: 30 kg are 25 + 5, 24 kg five of 5', () => {
    expect(counts(30, [30, 8])).toEqual([1, 1]);
    expect(counts(24, [30, 8])).toEqual([5]);
    expect(counts(3, [null, null])).toEqual([1]);
  });
  it('leaves out a large pack that is dearer for a kilogram', () => expect(counts(30, [60, 8])).toEqual([6]));
});
