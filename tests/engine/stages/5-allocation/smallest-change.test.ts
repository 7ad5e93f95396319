import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import { type Allocation, type Commodity, dayNumber, type LinearSolver } from '../../../../src/engine/index.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { findSmallestChange } from '../../../../src/engine/stages/5-allocation/find-smallest-change.ts';
import { randomDistrict } from './random-districts.ts';
import { type DistrictSpec, decisions, FROM, lot, smallDistrict } from './small-district.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

const allocate = (spec: DistrictSpec) => {
  const { scenario, places, season, needs } = smallDistrict(spec);
  return allocateStock(scenario, decisions(), places, season, needs, solver, null).result;
};

/** What a row lacks though there is seed to coat, told from the shares alone. */
function shortKg({ shares }: Allocation, row: number, commodity: Commodity): number {
  if (commodity === 'inoculant')
    return (shares.inoculantNeedSeedKg[row] as number) - (shares.inoculantGivenSeedKg[row] as number);
  const need = (shares.seedNeedKg[row] as number) - (shares.ownSeedKg[row] as number);
  return Math.max(0, need) - (shares.seedGivenKg[row] as number);
}

describe('the smallest change that lifts a shortfall', () => {
  it('does so in 100 random cases when bought in fact, and one pack less does not', () => {
    let tried = 0;
    for (let seed = 1; tried < 100; seed++) {
      const spec = randomDistrict(seed);
      const district = smallDistrict(spec);
      const before = allocate(spec);
      const lacks = before.shortfalls.filter(({ reason }) =>
        ['stock-short', 'pack-rounding', 'no-compatible-stock'].includes(reason),
      );
      const lack = lacks[seed % Math.max(1, lacks.length)];
      if (!lack) continue;
      const { shareRow, commodity } = lack;
      const stock = { ...district, decisions: decisions(), solver };
      const change = findSmallestChange(stock, before, shareRow, commodity);
      if (change.kind !== 'more-packs') throw new Error(`seed ${seed}: ${change.kind}`);
      const of = spec.products[change.product];
      if (!of) throw new Error('no such product');
      const bought = (packs: number) =>
        allocate({
          ...spec,
          lots: [
            ...spec.lots,
            lot(of, packs, { depotId: `DEPOT-${change.depot}`, availableFrom: dayNumber(change.arrives) }),
          ],
        });
      const lifted = (packs: number) =>
        shortKg(before, shareRow, commodity) - shortKg(bought(packs), shareRow, commodity);
      expect(change.liftsKg).toBeCloseTo(shortKg(before, shareRow, commodity), 6);
      expect(lifted(change.packs)).toBeGreaterThanOrEqual(change.liftsKg - 2e-6);
      expect(lifted(change.packs - 1)).toBeLessThan(change.liftsKg - 1e-6);
      tried++;
    }
  }, 120_000);

  it('a decision that holds back is taken back; the seed comes first; what comes too late is said', () => {
    const spec = randomDistrict(3);
    const district = smallDistrict(spec);
    const row = 0;
    const { shares } = allocate(spec);
    const crop = spec.crops[shares.crop[row] as number] ?? 'soybean';
    const cap = { kind: 'cap', communityId: 'COM-0', crop, commodity: 'seed', share: 0 } as const;
    const stock = { ...district, decisions: decisions(cap), solver };
    const { scenario, places, season, needs } = district;
    const held = allocateStock(scenario, stock.decisions, places, season, needs, solver, null).result;
    expect(findSmallestChange(stock, held, row, 'seed')).toMatchObject({ kind: 'release-decision', index: 0 });
    expect(findSmallestChange(stock, held, row, 'inoculant').kind).toBe('seed-first');

    const slow = { ...scenario, products: scenario.products.map((one) => ({ ...one, leadDays: 90 })) };
    const lack = allocate(spec).shortfalls.find(({ reason }) => reason === 'stock-short');
    if (!lack) throw new Error('nothing is short');
    const late = findSmallestChange(
      { ...stock, scenario: slow, decisions: decisions() },
      allocate(spec),
      lack.shareRow,
      lack.commodity,
    );
    expect(late).toEqual({ kind: 'too-late', arrives: FROM - 1 + 90 });
  });
});
