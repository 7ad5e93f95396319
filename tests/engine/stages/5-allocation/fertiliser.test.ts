import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import {
  type Allocation,
  type Crop,
  type Decision,
  dayNumber,
  type LinearSolver,
  type Product,
  type Scenario,
} from '../../../../src/engine/index.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { type DistrictSpec, decisions, FROM, lot, product, sachet, seedPack, smallDistrict } from './small-district.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

function allocate(spec: DistrictSpec, over: Partial<Scenario> = {}, ...edits: Decision[]): Allocation {
  const { scenario, places, season, needs } = smallDistrict(spec);
  return allocateStock({ ...scenario, ...over }, decisions(...edits), places, season, needs, solver, null).result;
}

/** A bag of 50 kg at 100 kg per ha: half a hectare. */
const bag = (crops: readonly Crop[], over: Partial<Product> = {}): Product =>
  product({ id: `BAG-${crops.join('-')}`, kind: 'fertiliser', crops, packG: 50_000, rateKgPerHa: 100, ...over });

/** Packs of a lot by community and crop, as they stand in the grants. */
const packsOf = ({ grants }: Allocation, lotIndex: number): number[] =>
  Array.from(grants.packs).filter((_, grant) => grants.lot[grant] === lotIndex);

const [soy, nut] = [seedPack('soybean', 10), seedPack('groundnut', 10)];
const bags = bag(['soybean', 'groundnut']);

describe('fertiliser is shared out by land', () => {
  it('half each of 4 ha of soybean and 6 ha of groundnut, whatever their seed rates: 10 bags of half a hectare are 4 and 6', () => {
    const result = allocate({
      crops: ['soybean', 'groundnut'],
      communities: [{ ha: { soybean: 4 } }, { ha: { groundnut: 6 } }],
      seedRateKgPerHa: { soybean: 60, groundnut: 80 },
      products: [soy, nut, bags],
      lots: [lot(soy, 100), lot(nut, 100), lot(bags, 10)],
    });
    expect(packsOf(result, 2)).toEqual([4, 6]);
    // 2 ha at 60 kg and 3 ha at 80 kg: what goods serve is told in seed throughout.
    const serves = Array.from(result.grants.servesSeedKg).filter((_, grant) => result.grants.lot[grant] === 2);
    expect(serves).toEqual([120, 240]);
    expect(result.proofs.every(({ commodity }) => commodity === 'seed' || commodity === 'inoculant')).toBe(true);
  });

  it('only for land that has seed, given or own: 10 ha planned, 40 kg given and 20 kg own at 10 kg per ha are 6 ha, 12 bags', () => {
    const result = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 10 }, ownSeedKg: { soybean: 20 } }],
      products: [soy, bags],
      lots: [lot(soy, 4), lot(bags, 100)],
    });
    expect(packsOf(result, 1)).toEqual([12]);
  });

  it('what was handed over before counts off: 3 of 8 bags, those returned not', () => {
    const lots = [lot(soy, 100), lot(bags, 100)];
    const handover = {
      date: dayNumber(FROM - 5),
      communityId: 'COM-0',
      lotId: lots[1]?.id ?? '',
      packs: 5,
      kg: null,
      boxC: null,
      returnedPacks: 2,
      sownOn: null,
    };
    const spec: DistrictSpec = {
      crops: ['soybean'],
      communities: [{ ha: { soybean: 4 } }, { ha: { soybean: 1 } }],
      products: [soy, bags],
      lots,
    };
    const result = allocate(spec, { handovers: [handover] });
    expect(packsOf(result, 1)).toEqual([5, 2]);
    expect(result.lots[1]?.packsOffered).toBe(97);
  });

  it('first expiring first, and the reserve stays: 20 percent of 10 bags', () => {
    const result = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 5 } }],
      products: [soy, bags],
      lots: [lot(soy, 100), lot(bags, 10), lot(bags, 10, { expires: dayNumber(FROM + 200) })],
      policy: { reservePercent: 20 },
    });
    expect([packsOf(result, 1), packsOf(result, 2)]).toEqual([[2], [8]]);
  });

  it('rides along: none from a depot that sends the community nothing else', () => {
    const spec = (depotId: string): DistrictSpec => ({
      crops: ['soybean'],
      depots: [{}, {}],
      communities: [{ ha: { soybean: 4 } }],
      products: [soy, bags],
      lots: [lot(soy, 100), lot(bags, 100, { depotId })],
    });
    expect(packsOf(allocate(spec('DEPOT-1')), 1)).toEqual([]);
    expect(packsOf(allocate(spec('DEPOT-0')), 1)).toEqual([8]);
  });

  it('not from a lot that a decision keeps from the community', () => {
    const lots = [lot(soy, 100), lot(bags, 100), lot(bags, 3)];
    const spec: DistrictSpec = {
      crops: ['soybean'],
      communities: [{ ha: { soybean: 4 } }],
      products: [soy, bags],
      lots,
    };
    const lotId = lots[1]?.id ?? '';
    const decision = { kind: 'forbid', communityId: 'COM-0', crop: 'soybean', commodity: 'seed', lotId } as const;
    expect(packsOf(allocate(spec, {}, decision), 1)).toEqual([]);
    expect(packsOf(allocate(spec, {}, decision), 2)).toEqual([3]);
  });

  it('does not change what anybody is given of seed and inoculant, and moves in a consignment of its own', () => {
    const powder = sachet(['soybean']);
    const spec: DistrictSpec = {
      crops: ['soybean'],
      communities: [{ ha: { soybean: 4 } }, { ha: { soybean: 7 } }],
      products: [soy, powder, bags],
      lots: [lot(soy, 7), lot(powder, 3), lot(bags, 9)],
      policy: { carry: 'together' },
    };
    const [withBags, without] = [allocate(spec), allocate({ ...spec, lots: spec.lots.slice(0, 2) })];
    expect(withBags.shares).toEqual(without.shares);
    expect(withBags.shortfalls).toEqual(without.shortfalls);
    expect(without.consignments.map(({ group }) => group)).toEqual(['both', 'both']);
    expect(withBags.consignments.map(({ group }) => group)).toEqual(['both', 'fertiliser', 'both', 'fertiliser']);
  });
});

describe('fertiliser on the order list', () => {
  const ahead = { asOf: (FROM - 60) as Scenario['asOf'] };
  const dated = { leadDays: 14, orderMultiple: 1 };
  const seed = seedPack('soybean', 10, { ...dated, pricePerPack: 20 });
  const sack = bag(['soybean'], { ...dated, pricePerPack: 15 });
  const powder = sachet(['soybean'], { ...dated, pricePerPack: 6 });
  const spec: DistrictSpec = {
    crops: ['soybean'],
    communities: [{ ha: { soybean: 4 } }, { ha: { soybean: 2 }, ownSeedKg: { soybean: 10 } }],
    products: [seed, powder, sack],
    lots: [lot(sack, 2)],
  };
  const bought = (orderBudget: number | null) =>
    allocate({ ...spec, policy: { orderBudget } }, ahead).orders.map(({ product: p, packs, hectares }) => [
      spec.products[p]?.kind,
      packs,
      hectares,
    ]);

  it('for all land that will have seed: 6 ha are 12 bags; those in stock go nowhere by themselves', () => {
    expect(bought(null)).toEqual([
      ['seed', 5, 5],
      ['inoculant', 3, 6],
      ['fertiliser', 12, 6],
    ]);
  });

  it('under a budget it has what seed and inoculant leave: 5 bags of seed and 3 sachets are 118, 40 more buy 2 bags', () => {
    expect(bought(158)).toEqual([
      ['seed', 5, 5],
      ['inoculant', 3, 6],
      ['fertiliser', 2, 1],
    ]);
    // 24 buy one bag of seed and nothing else that is worth more; fertiliser comes last, for land that has seed.
    for (const budget of [0, 10, 24, 60, 118]) {
      const lines = bought(budget);
      const spent = lines.reduce((sum, [kind, packs]) => {
        const price = { seed: 20, inoculant: 6, fertiliser: 15 }[kind as 'seed'];
        return sum + price * (packs as number);
      }, 0);
      expect(spent).toBeLessThanOrEqual(budget);
      const sownHa = 1 + (lines.find(([kind]) => kind === 'seed')?.[2] as number);
      expect(lines.find(([kind]) => kind === 'fertiliser')?.[2]).toBeLessThanOrEqual(sownHa + 0.5);
    }
  });
});
