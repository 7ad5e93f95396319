import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import { type Allocation, type Decision, dayNumber, type LinearSolver } from '../../../../src/engine/index.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { type DistrictSpec, decisions, FROM, lot, product, sachet, seedPack, smallDistrict } from './small-district.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

function allocate(spec: DistrictSpec, ...edits: Decision[]) {
  const { scenario, places, season, needs } = smallDistrict(spec);
  return allocateStock(scenario, decisions(...edits), places, season, needs, solver, null);
}

/** Packs by community, summed over crops, of the lots named. */
function packsOf({ grants }: Allocation, lots: readonly number[], community: number): number {
  let packs = 0;
  grants.packs.forEach((count, g) => {
    if (grants.community[g] === community && lots.includes(grants.lot[g] as number)) packs += count;
  });
  return packs;
}

describe('equal share, by hand', () => {
  const two = seedPack('soybean', 2);

  it('shares 60 kg among needs of 40, 60 and 100 kg: 60 / 200 = three tenths each, 12, 18 and 30 kg, 6, 9 and 15 packs of 2 kg', () => {
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 4 } }, { ha: { soybean: 6 } }, { ha: { soybean: 10 } }],
      products: [two],
      lots: [lot(two, 30)],
    });
    expect([0, 1, 2].map((c) => packsOf(result, [0], c))).toEqual([6, 9, 15]);
    expect(result.proofs).toHaveLength(1);
    expect(result.proofs[0]?.leastShare).toBeCloseTo(0.3, 9);
    expect(result.proofs[0]?.bound).toBeCloseTo(0.3, 9);
    // One kilogram more of any need costs the share 1/200 of it: the price of each community and of the lot.
    expect(result.proofs[0]?.lotPrices).toEqual([expect.closeTo(1 / 200, 9)]);
  });

  it('with stock for all, rounds each need up to whole packs and leaves the rest', () => {
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 0.5 } }, { ha: { soybean: 0.61 } }],
      products: [two],
      lots: [lot(two, 30)],
    });
    // 5 kg is 3 packs; 6.1 kg is 4 packs.
    expect([packsOf(result, [0], 0), packsOf(result, [0], 1)]).toEqual([3, 4]);
    expect(Array.from(result.shares.seedGivenKg)).toEqual([5, 6.1]);
    expect(result.shortfalls).toEqual([
      { shareRow: 0, commodity: 'inoculant', shortKg: 5, hectares: 0.5, reason: 'no-compatible-stock', product: -1 },
      expect.objectContaining({ shareRow: 1, commodity: 'inoculant', reason: 'no-compatible-stock' }),
    ]);
  });

  it('gives large packs first and covers the rest with small ones: 74 kg are one of 50, two of 10 and two of 2', () => {
    const sizes = [50, 10, 2].map((kg) => seedPack('soybean', kg));
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 7.4 } }],
      products: sizes,
      lots: sizes.map((size) => lot(size, 20)),
    });
    expect([0, 1, 2].map((l) => packsOf(result, [l], 0))).toEqual([1, 2, 2]);
  });

  it('takes off own seed from what is brought, not from what is inoculated', () => {
    const powder = sachet(['soybean']);
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 10 }, ownSeedKg: { soybean: 60 } }],
      products: [two, powder],
      lots: [lot(two, 50), lot(powder, 50)],
    });
    // 100 kg to sow, 60 kg own: 40 kg to bring, 20 packs of 2 kg; 100 kg to coat at 5 g per kg, 500 g, 5 sachets.
    expect([packsOf(result, [0], 0), packsOf(result, [1], 0)]).toEqual([20, 5]);
    expect(result.shares.inoculantNeedSeedKg[0]).toBe(100);
    expect(result.shares.inoculantShare[0]).toBe(1);
    expect(result.shortfalls).toEqual([]);
  });

  it('limits inoculant to the seed that will be there: half the seed, half the sachets, and says so', () => {
    const powder = sachet(['soybean']);
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 8 } }],
      products: [two, powder],
      lots: [lot(two, 20), lot(powder, 50)],
    });
    // 80 kg to sow, 40 kg in stock: 40 kg to coat, 2 sachets of 20 kg.
    expect(packsOf(result, [1], 0)).toBe(2);
    expect(result.shortfalls.map(({ commodity, reason, shortKg }) => [commodity, reason, shortKg])).toEqual([
      ['seed', 'stock-short', 40],
      ['inoculant', 'no-seed-to-inoculate', 40],
    ]);
  });

  it('gives nothing that is not compatible, and shares one product over the crops of its label', () => {
    const label = sachet(['cowpea', 'bambara']);
    const { result } = allocate({
      crops: ['soybean', 'cowpea', 'bambara'],
      communities: [
        {
          ha: { soybean: 4, cowpea: 4, bambara: 4 },
          ownSeedKg: { soybean: 40, cowpea: 40, bambara: 40 },
        },
      ],
      products: [label],
      lots: [lot(label, 2)],
    });
    // 80 kg of cowpea and bambara share 2 sachets for 40 kg: one each.
    expect(Array.from(result.grants.crop)).toEqual([1, 2]);
    expect(Array.from(result.grants.packs)).toEqual([1, 1]);
    expect(result.proofs[0]?.crops).toEqual([1, 2]);
    expect(result.shortfalls.find(({ shareRow }) => shareRow === 0)?.reason).toBe('no-compatible-stock');
  });

  it('then gives most hectares: the surplus of a depot that the other community cannot be reached from', () => {
    const { result } = allocate({
      crops: ['soybean'],
      communities: [
        { ha: { soybean: 10 }, minutes: [30, null] },
        { ha: { soybean: 10 }, minutes: [60, 30] },
      ],
      products: [two],
      depots: [{}, {}],
      lots: [lot(two, 10), lot(two, 40, { depotId: 'DEPOT-1' })],
    });
    // Depot 0 holds 20 kg for both, depot 1 80 kg for the second only: the first has at most 20 of 100 kg, a fifth.
    expect(result.proofs[0]?.leastShare).toBeCloseTo(0.2, 9);
    expect(Array.from(result.shares.seedGivenKg)).toEqual([20, 80]);
  });

  it('serves each from the nearer depot where there is enough', () => {
    const { result } = allocate({
      crops: ['soybean'],
      communities: [
        { ha: { soybean: 2 }, minutes: [30, 90] },
        { ha: { soybean: 2 }, minutes: [90, 30] },
      ],
      products: [two],
      depots: [{}, {}],
      lots: [lot(two, 40), lot(two, 40, { depotId: 'DEPOT-1' })],
    });
    expect([packsOf(result, [0], 0), packsOf(result, [1], 1)]).toEqual([10, 10]);
  });

  it('leaves out whom no vehicle reaches, with the reason, and gives its share to the others', () => {
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 10 }, minutes: [null] }, { ha: { soybean: 10 } }],
      products: [two],
      lots: [lot(two, 50)],
    });
    expect(Array.from(result.shares.seedGivenKg)).toEqual([0, 100]);
    expect(result.shortfalls[0]).toEqual({
      shareRow: 0,
      commodity: 'seed',
      shortKg: 100,
      hectares: 10,
      reason: 'not-reachable',
      product: -1,
    });
  });
});

describe('other rules of sharing', () => {
  const two = seedPack('soybean', 2);

  it('priority first: 1 gets all its 40 kg of 60, 2 and 3 what is left in turn', () => {
    const { result } = allocate({
      crops: ['soybean'],
      communities: [
        { ha: { soybean: 4 }, priority: 3 },
        { ha: { soybean: 4 }, priority: 1 },
        { ha: { soybean: 4 }, priority: 2 },
      ],
      products: [two],
      lots: [lot(two, 30)],
      policy: { fairness: 'priority-first' },
    });
    expect(Array.from(result.shares.seedGivenKg)).toEqual([0, 40, 20]);
    expect(result.proofs).toEqual([]);
  });

  it('most hectares: 40 kg go to the crop that needs 10 kg for a hectare, not to the one that needs 80', () => {
    const both = sachet(['cowpea', 'groundnut']);
    const spec: DistrictSpec = {
      crops: ['groundnut', 'cowpea'],
      communities: [{ ha: { cowpea: 4, groundnut: 1 }, ownSeedKg: { cowpea: 40, groundnut: 80 } }],
      seedRateKgPerHa: { groundnut: 80 },
      products: [both],
      lots: [lot(both, 2)],
      policy: { fairness: 'most-hectares' },
    };
    expect(Array.from(allocate(spec).result.shares.inoculantGivenSeedKg)).toEqual([0, 40]);
    // Equal share gives both 40 / 120 of their need: 26.67 and 13.33 kg, a whole sachet each.
    const equal = allocate({ ...spec, policy: {} }).result;
    expect(Array.from(equal.shares.inoculantGivenSeedKg)).toEqual([20, 20]);
    expect(equal.proofs[0]?.leastShare).toBeCloseTo(1 / 3, 9);
  });

  it('equal over zones: a zone of one needs as large a share as a zone of three', () => {
    const inZone = (zone: number) => ({ ha: { soybean: 10 }, zones: [[zone, 1]] as const });
    const { result } = allocate({
      crops: ['soybean'],
      communities: [inZone(0), inZone(0), inZone(0), inZone(1)],
      zones: 2,
      products: [two],
      lots: [lot(two, 100)],
      policy: { equalOver: 'zone' },
    });
    // 200 kg of 400: each zone half. Zone 1 gets 50 kg, zone 0 150 kg.
    expect(result.shares.seedGivenKg[3]).toBe(50);
    expect(result.proofs[0]?.leastShare).toBeCloseTo(0.5, 9);
    expect(result.proofs[0]?.bound).toBeCloseTo(0.5, 9);
  });

  it('equal over growers: 60 kg among 10 and 20 growers, 2 kg each; nobody more than asked', () => {
    const spec: DistrictSpec = {
      crops: ['soybean'],
      communities: [
        { ha: { soybean: 10 }, growers: 10 },
        { ha: { soybean: 10 }, growers: 20 },
      ],
      products: [two],
      lots: [lot(two, 30)],
      policy: { equalOver: 'grower' },
    };
    expect(Array.from(allocate(spec).result.shares.seedGivenKg)).toEqual([20, 40]);
    // With 200 growers in the second, whose 100 kg come to half a kilogram each: all is asked for before the first is equal.
    const crowded = {
      ...spec,
      communities: [
        { ha: { soybean: 10 }, growers: 10 },
        { ha: { soybean: 1 }, growers: 200 },
      ],
    };
    expect(Array.from(allocate(crowded).result.shares.seedGivenKg)).toEqual([50, 10]);
    const untold = allocate({
      ...spec,
      communities: [{ ha: { soybean: 10 }, growers: null }, { ha: { soybean: 20 } }],
    });
    expect(untold.problems.map(({ code }) => code)).toContain('E5023');
    expect(Array.from(untold.result.shares.seedGivenKg)).toEqual([20, 40]);
  });

  it('contingency raises what is asked for, not what the packs serve', () => {
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 10 } }],
      products: [two],
      lots: [lot(two, 100)],
      policy: { contingencyPercent: 10 },
    });
    // 100 kg and 10 percent: 110 kg, 55 packs; 100 kg of them serve the need.
    expect(packsOf(result, [0], 0)).toBe(55);
    expect(result.shares.seedGivenKg[0]).toBe(100);
  });

  it('seed that germinates 68 of 85 is sown thicker: 50 kg serve as 40, and 88 is not sown thinner', () => {
    const one = (germinationPercent: number, packs: number) =>
      allocate({
        crops: ['soybean'],
        communities: [{ ha: { soybean: 10 } }],
        products: [seedPack('soybean', 5, { minGerminationPercent: 60 })],
        lots: [lot(seedPack('soybean', 5), packs, { germinationPercent })],
      }).result;
    expect(one(68, 10).shares.seedGivenKg[0]).toBeCloseTo(40, 9);
    expect(one(68, 10).shares.inoculantNeedSeedKg[0]).toBeCloseTo(40, 9);
    expect(one(88, 10).shares.seedGivenKg[0]).toBe(50);
    // 100 kg at 85 are 125 kg at 68: 25 bags.
    expect(Array.from(one(68, 40).grants.packs)).toEqual([25]);
  });

  it('keeps the reserve at the depot: 5 percent of 30 packs, 1.5, is 1 whole pack', () => {
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 100 } }],
      products: [two],
      lots: [lot(two, 30)],
      policy: { reservePercent: 5 },
    });
    expect(result.lots[0]).toMatchObject({ packsReserved: 1, packsOffered: 29 });
    expect(packsOf(result, [0], 0)).toBe(29);
    expect(result.remedies.map(({ kind, packs }) => [kind, packs])).toContainEqual(['lower-reserve', 1]);
  });
});

describe('decisions', () => {
  const two = seedPack('soybean', 2);
  const spec: DistrictSpec = {
    crops: ['soybean'],
    communities: [{ ha: { soybean: 10 } }, { ha: { soybean: 10 } }, { ha: { soybean: 10 } }],
    products: [two],
    lots: [lot(two, 75)],
  };
  const cell = (community: number) =>
    ({ communityId: `COM-${community}`, crop: 'soybean', commodity: 'seed' }) as const;
  const given = (...edits: Decision[]) => Array.from(allocate(spec, ...edits).result.shares.seedGivenKg);

  it('without any, 150 kg of 300 are half for each', () => expect(given()).toEqual([50, 50, 50]));

  it('fix holds a share; the others share the rest equally: 80, then 70 / 2 = 35, 17.5 packs, rounded once', () => {
    const [fixed, ...others] = given({ kind: 'fix', share: 0.8, ...cell(0) });
    expect(fixed).toBe(80);
    expect(others.sort()).toEqual([34, 36]);
  });

  it('floor lifts, cap holds down, forbid leaves out, the later has the last word', () => {
    expect(given({ kind: 'floor', share: 0.7, ...cell(1) })).toEqual([40, 70, 40]);
    expect(given({ kind: 'floor', share: 0.3, ...cell(1) })).toEqual([50, 50, 50]);
    expect(given({ kind: 'cap', share: 0.1, ...cell(2) })).toEqual([70, 70, 10]);
    expect(given({ kind: 'cap', share: 0.9, ...cell(2) })).toEqual([50, 50, 50]);
    expect(given({ kind: 'forbid', ...cell(2) }).slice(2)).toEqual([0]);
    expect(given({ kind: 'forbid', ...cell(2) }, { kind: 'fix', share: 0.1, ...cell(2) })).toEqual([70, 70, 10]);
  });

  it('a shortfall that a decision makes is called one', () => {
    const { result } = allocate(spec, { kind: 'cap', share: 0.1, ...cell(2) });
    expect(result.shortfalls.filter(({ commodity }) => commodity === 'seed').map(({ reason }) => reason)).toEqual([
      'stock-short',
      'stock-short',
      'decision',
    ]);
  });

  it('a floor that the stock cannot meet is lowered and noted', () => {
    const { result, problems } = allocate(
      spec,
      { kind: 'floor', share: 1, ...cell(0) },
      { kind: 'fix', share: 1, ...cell(1) },
    );
    expect(Array.from(result.shares.seedGivenKg)).toEqual([75, 75, 0].map((kg) => expect.closeTo(kg, -0.5)));
    expect(problems.filter(({ code }) => code === 'E5021')).toHaveLength(2);
  });

  it('a forbidden lot goes to others only', () => {
    const lots = [lot(two, 40), lot(two, 35)];
    const { result } = allocate({ ...spec, lots }, { kind: 'forbid', lotId: lots[0]?.id ?? '', ...cell(0) });
    expect(packsOf(result, [0], 0)).toBe(0);
    expect(Array.from(result.shares.seedGivenKg)).toEqual([50, 50, 50]);
  });

  it('a decision about what is not planned is noted', () => {
    const { problems } = allocate(spec, {
      kind: 'fix',
      share: 1,
      communityId: 'NOWHERE',
      crop: 'soybean',
      commodity: 'seed',
    });
    expect(problems.map(({ code }) => code)).toContain('E5020');
  });
});

describe('lots', () => {
  it('first expiring goes first among equal packs', () => {
    const two = seedPack('soybean', 2);
    const { result } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 2 } }],
      products: [two],
      lots: [lot(two, 50), lot(two, 6, { expires: dayNumber(FROM + 100) })],
    });
    expect([packsOf(result, [1], 0), packsOf(result, [0], 0)]).toEqual([6, 4]);
  });

  it('packs that arrive while planning runs hold their consignment until that day', () => {
    const two = seedPack('soybean', 2);
    const { result, problems } = allocate({
      crops: ['soybean'],
      communities: [{ ha: { soybean: 2 } }],
      products: [two],
      lots: [lot(two, 50, { availableFrom: dayNumber(FROM + 8) })],
    });
    expect(result.consignments[0]?.earliest).toBe(8);
    expect(problems.map(({ code }) => code)).toContain('E5012');
  });
});

describe('consignments, packs inside a community and remedies', () => {
  const two = seedPack('soybean', 2);
  const powder = sachet(['soybean']);
  const sticker = product({ id: 'STICKER', kind: 'sticker', crops: ['soybean'], packG: 50, doseGPerKg: 2 });
  const spec: DistrictSpec = {
    crops: ['soybean'],
    communities: [{ ha: { soybean: 10 }, growers: 12 }],
    products: [two, powder, sticker],
    lots: [lot(two, 50), lot(powder, 5), lot(sticker, 10)],
  };

  it('carries seed and sticker apart from inoculant: 100 kg and 4 sachets of 50 g; 0.5 kg and 1 L', () => {
    const { result } = allocate(spec);
    // 100 kg at 2 g of sticker per kg: 200 g, 4 packs of 50 g. Seed 50 packs at 10, sticker 4 at 10.
    expect(
      result.consignments.map(({ group, kg, coolLitres, inoculantKg, hectares, worth, maxStorageC }) => [
        group,
        kg,
        coolLitres,
        inoculantKg,
        hectares,
        worth,
        maxStorageC,
      ]),
    ).toEqual([
      ['dry', 100.2, 0, 0, 10, 540, null],
      ['inoculant', 0.5, 1, 0.5, 10, 50, 30],
    ]);
    const together = allocate({ ...spec, policy: { carry: 'together' } }).result.consignments;
    expect(together.map(({ group, kg, hectares }) => [group, kg, hectares])).toEqual([['both', 100.7, 10]]);
  });

  it('every grant is in one consignment', () => {
    const { result } = allocate(spec);
    expect(result.consignments.flatMap(({ grants }) => grants).sort()).toEqual([0, 1, 2]);
  });

  it('5 sachets for 12 growers: they coat and sow together, within 14 days of opening (GRDC Back Pocket Guide 2013)', () => {
    const { result } = allocate(spec);
    expect(result.packShares).toEqual([
      { grant: 1, growers: 12, growersPerPack: 2.4, openedPackDays: 14, sowTogether: true },
    ]);
  });

  it('hand-over is of use up to the day before the last sowing that still pays', () => {
    // The only season sows on days 5 to 8 and loses 1.2 percent a day after (soybean): any planning day has some use.
    const late = allocate({ ...spec, seasons: [[5, 8]] }).result.consignments[0];
    expect(late?.latest).toBe(19);
    // Day 4: sown on day 5, in time. Day 8: sown on day 9, one day late, 1 - 0.012.
    expect(late?.reach.inTime[4]).toBe(1);
    expect(late?.reach.inTime[8]).toBe(0);
    expect(late?.reach.value[8 * 7]).toBeCloseTo(0.988, 9);
  });

  it('nobody is given what comes after the season: the row says so', () => {
    const { result } = allocate({ ...spec, seasons: [[-120, -100]] });
    expect(result.grants.packs).toHaveLength(0);
    expect(result.shortfalls.map(({ reason }) => reason)).toEqual(['window-missed', 'no-seed-to-inoculate']);
    expect(result.remedies).toEqual([]);
  });

  it('offers more packs, a release, a replacement, never a second test; most hectares for money first', () => {
    const dear = sachet(['soybean'], { id: 'DEAR', pricePerPack: 100 });
    const { result } = allocate({
      ...spec,
      products: [two, dear],
      lots: [lot(two, 50), lot(dear, 1), lot(dear, 2, { status: 'on_hold' }), lot(dear, 1, { testedCountPerG: 1e6 })],
    });
    // 100 kg to coat, one sachet for 20 kg: 80 kg short, 8 ha, 4 sachets at 100. The lot on hold coats 40 kg, 4 ha.
    expect(result.remedies.map(({ kind, packs, hectares, cost }) => [kind, packs, hectares, cost])).toEqual([
      ['release-lot', 2, 4, 0],
      ['more-packs', 4, 8, 400],
      ['replace-lot', 1, 2, 100],
    ]);
  });

  it('offers nothing that arrives after the window', () => {
    const slow = sachet(['soybean'], { id: 'SLOW', leadDays: 30 });
    const { result } = allocate({ ...spec, products: [two, slow], lots: [lot(two, 50), lot(slow, 1)] });
    expect(result.shortfalls.map(({ reason }) => reason)).toEqual(['stock-short']);
    expect(result.remedies).toEqual([]);
  });
});
