import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import type { LinearSolver } from '../../../../src/engine/index.ts';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { rationPacks } from '../../../../src/engine/stages/5-allocation/make-whole-packs.ts';
import { largeDistrict } from './large-district.ts';
import { decisions, smallDistrict } from './small-district.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

describe('300 places by 5 products by 12 lots', () => {
  it('within 10 s; whole packs serve within 1 percent of what fractions could', () => {
    const { scenario, places, season, needs } = smallDistrict(largeDistrict(300));
    expect([scenario.communities.length, scenario.products.length, scenario.lots.length]).toEqual([300, 5, 12]);
    const before = performance.now();
    const { result } = allocateStock(scenario, decisions(), places, season, needs, solver, null);
    expect(performance.now() - before).toBeLessThan(10_000);
    // Everything offered is asked for by somebody who is short, so fractions would use it all.
    for (const [commodity, given] of [
      ['seed', result.shares.seedGivenKg],
      ['inoculant', result.shares.inoculantGivenSeedKg],
    ] as const) {
      const proofs = result.proofs.filter((proof) => proof.commodity === commodity);
      const atShare = proofs.reduce(
        (sum, proof) => sum + proof.needKg.reduce((kg, need) => kg + need * proof.leastShare, 0),
        0,
      );
      expect(given.reduce((sum, kg) => sum + kg, 0)).toBeGreaterThan(atShare * 0.99);
    }
  });
});

describe('largest remainders', () => {
  it('divides the packs of 20,000 communities in under 5 s: all packs, each within one of its exact part', () => {
    const random = new RandomStream(9);
    const wanted = Array.from({ length: 20_000 }, () => 1 + random.below(500));
    const total = wanted.reduce((sum, count) => sum + count, 0);
    const stock = Math.floor(total * 0.7);
    const before = performance.now();
    const given = rationPacks(wanted, stock);
    expect(performance.now() - before).toBeLessThan(5000);
    expect(given.reduce((sum, count) => sum + count, 0)).toBe(stock);
    given.forEach((count, i) => {
      expect(Math.abs(count - ((wanted[i] as number) * stock) / total)).toBeLessThan(1);
    });
  });
});
