import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import type { Allocation, Commodity, Decision, LinearSolver } from '../../../../src/engine/index.ts';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { gainAfterRotation } from '../../../../src/engine/stages/5-allocation/worth-of-land.ts';
import { randomDistrict } from './random-districts.ts';
import { type DistrictSpec, decisions, lot, seedPack, smallDistrict } from './small-district.ts';

const SEEDS = Array.from({ length: 40 }, (_, i) => i + 1);

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

function allocate(spec: DistrictSpec, ...list: Decision[]): Allocation {
  const { scenario, places, season, needs } = smallDistrict(spec);
  return allocateStock(scenario, decisions(...list), places, season, needs, solver, null).result;
}

const needOf = ({ shares }: Allocation, commodity: Commodity, row: number) =>
  commodity === 'seed'
    ? Math.max(0, (shares.seedNeedKg[row] as number) - (shares.ownSeedKg[row] as number))
    : (shares.inoculantNeedSeedKg[row] as number);
const givenOf = ({ shares }: Allocation, commodity: Commodity, row: number) =>
  (commodity === 'seed' ? shares.seedGivenKg : shares.inoculantGivenSeedKg)[row] as number;

/** Least share of seed over the rows of the proofs, by crop set. */
const leastOf = ({ proofs }: Allocation) =>
  new Map(proofs.filter(({ commodity }) => commodity === 'seed').map((proof) => [proof.shareRows.join(' '), proof]));

describe('more stock, fewer decisions', () => {
  it('more seed of a lot never lowers the smallest share', () => {
    for (const seed of SEEDS) {
      const spec = randomDistrict(seed);
      const before = leastOf(allocate(spec));
      const more = spec.lots.map((one, l) => (l === seed % spec.lots.length ? { ...one, packs: one.packs + 5 } : one));
      const after = leastOf(allocate({ ...spec, lots: more }));
      for (const [rows, proof] of after) {
        const was = before.get(rows);
        if (was) expect(proof.leastShare).toBeGreaterThanOrEqual(was.leastShare - 1e-7);
      }
    }
  });

  it('releasing a fix never lowers the smallest share of the others', () => {
    let tried = 0;
    for (const seed of SEEDS) {
      const spec = randomDistrict(seed);
      const free = allocate(spec);
      const row = seed % free.shares.community.length;
      const crop = spec.crops[free.shares.crop[row] as number] ?? 'soybean';
      const random = new RandomStream(seed);
      const fix: Decision = {
        kind: 'fix',
        communityId: `COM-${free.shares.community[row]}`,
        crop,
        commodity: 'seed',
        share: random.next(),
      };
      const held = allocate(spec, fix);
      for (const proof of held.proofs.filter(({ commodity }) => commodity === 'seed')) {
        const released = free.proofs.find(
          (one) => one.commodity === 'seed' && proof.shareRows.every((of) => one.shareRows.includes(of)),
        );
        if (!released) continue;
        // With the fix, the smallest share is of all rows, the fixed one too.
        const own = proof.crops.includes(free.shares.crop[row] as number)
          ? Math.min(proof.leastShare, needOf(free, 'seed', row) > 0 ? shareWithFix(held, row) : 1)
          : proof.leastShare;
        expect(released.leastShare).toBeGreaterThanOrEqual(own - 1e-6);
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(60);
  });

  const shareWithFix = (of: Allocation, row: number) =>
    needOf(of, 'seed', row) > 0 ? givenOf(of, 'seed', row) / needOf(of, 'seed', row) : 1;
});

describe('equal among those who may have the same lots', () => {
  it('shares differ by at most one largest pack, and one smallest made up', () => {
    let pairs = 0;
    for (const seed of SEEDS) {
      const spec = randomDistrict(seed, {
        depots: [{}],
        lots: randomDistrict(seed).lots.filter(({ depotId }) => depotId === 'DEPOT-0'),
      });
      const allocation = allocate(spec);
      for (const { commodity, shareRows, roundingKg } of allocation.proofs) {
        const rows = shareRows.filter((row) => needOf(allocation, commodity, row) > 0);
        for (const a of rows)
          for (const b of rows) {
            const [needA, needB] = [needOf(allocation, commodity, a), needOf(allocation, commodity, b)];
            // In kilograms: the share of b applied to a's need, within the rounding of both.
            const due = (givenOf(allocation, commodity, b) / needB) * needA;
            const room = roundingKg + roundingKg * (needA / needB);
            expect(Math.abs(givenOf(allocation, commodity, a) - due)).toBeLessThanOrEqual(room + 1e-5);
            pairs++;
          }
      }
    }
    expect(pairs).toBeGreaterThan(1000);
  });

  it('a row that scarce stock does not bind is raised with its like, not left to the most hectares', () => {
    const pack = seedPack('soybean', 1);
    const allocation = allocate({
      crops: ['soybean'],
      // Depot 0 reaches the first alone and has 10 kg for its 100; depot 1 has 120 kg for 200.
      communities: [
        { ha: { soybean: 10 }, minutes: [30, null] },
        { ha: { soybean: 10 }, minutes: [null, 30] },
        { ha: { soybean: 10 }, minutes: [40, 90] },
      ],
      products: [pack],
      lots: [lot(pack, 10), lot(pack, 120, { depotId: 'DEPOT-1' })],
      depots: [{}, {}],
    });
    expect(Array.from(allocation.shares.seedGivenKg)).toEqual([10, 60, 60]);
  });

  it('within a zone communities are made equal too: 60 kg of a zone of 40 and 80 are 20 and 40', () => {
    const pack = seedPack('soybean', 1);
    const allocation = allocate({
      crops: ['soybean'],
      zones: 2,
      communities: [
        { ha: { soybean: 4 }, zones: [[0, 1]] },
        { ha: { soybean: 8 }, zones: [[0, 1]], minutes: [300] },
        { ha: { soybean: 12 }, zones: [[1, 1]] },
      ],
      products: [pack],
      lots: [lot(pack, 120)],
      policy: { equalOver: 'zone' },
    });
    expect(Array.from(allocation.shares.seedGivenKg)).toEqual([20, 40, 60]);
  });
});

describe('weights', () => {
  const pack = seedPack('soybean', 1);
  const three = (over: Partial<DistrictSpec>): DistrictSpec => ({
    crops: ['soybean'],
    communities: [1, 2, 3].map((priority) => ({ ha: { soybean: 10 }, priority })),
    products: [pack],
    lots: [lot(pack, 120)],
    ...over,
  });

  it('by priority: 120 kg at 3, 2 and 1 are 60, 40 and 20', () => {
    const allocation = allocate(three({ policy: { priorityWeights: [3, 2, 1] } }));
    expect(Array.from(allocation.shares.seedGivenKg)).toEqual([60, 40, 20]);
  });

  it('nobody passes the whole need: 210 kg at 3, 2 and 1 are 100, then 110 at 2 and 1: 73 and 37', () => {
    const allocation = allocate(three({ lots: [lot(pack, 210)], policy: { priorityWeights: [3, 2, 1] } }));
    const [first, second, third] = allocation.shares.seedGivenKg;
    expect(first).toBe(100);
    expect(Math.abs((second as number) - 220 / 3)).toBeLessThan(1);
    expect(Math.abs((third as number) - 110 / 3)).toBeLessThan(1);
  });

  it('most hectares by what they gain: land never inoculated before land inoculated last year', () => {
    expect([null, 2026, 2025, 2023, 2022, 2010].map((year) => gainAfterRotation(2026, year))).toEqual([
      1,
      0.4,
      0.4,
      expect.closeTo(0.8, 12),
      1,
      1,
    ]);
  });
});
