import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import type { LinearSolver } from '../../../../src/engine/index.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { countOut, tinyProblem } from './enumerate-packs.ts';
import { decisions, smallDistrict } from './small-district.ts';

const COUNT = Number(process.env['NODULARY_COUNTED_PROBLEMS'] ?? 100);

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

function judge(seed: number) {
  const spec = tinyProblem(seed);
  const { scenario, places, season, needs } = smallDistrict(spec);
  const { grants } = allocateStock(scenario, decisions(), places, season, needs, solver, null).result;
  const needKg = spec.communities.map(({ ha }) => (ha.soybean ?? 0) * 10);
  const givenKg = needKg.map(() => 0);
  grants.community.forEach((c, g) => {
    givenKg[c] = (givenKg[c] as number) + (grants.kg[g] as number);
  });
  let [leastShare, mostKg, ways] = [0, 0, 0];
  countOut(spec, (kg) => {
    ways++;
    leastShare = Math.max(leastShare, leastOf(needKg, kg));
  });
  countOut(spec, (kg) => {
    if (leastOf(needKg, kg) >= leastShare - 1e-9) mostKg = Math.max(mostKg, servedKg(needKg, kg));
  });
  return {
    own: leastOf(needKg, givenKg),
    ownKg: servedKg(needKg, givenKg),
    leastShare,
    mostKg,
    ways,
    smallestNeedKg: Math.min(...needKg),
  };
}

const leastOf = (needKg: readonly number[], kg: readonly number[]) =>
  kg.reduce((least, one, c) => Math.min(least, one / (needKg[c] as number)), 1);
const servedKg = (needKg: readonly number[], kg: readonly number[]) =>
  kg.reduce((sum, one, c) => sum + Math.min(one, needKg[c] as number), 0);

describe(`whole packs against counting out every way, ${COUNT} small problems`, () => {
  it('in 99 of 100 no way gives a larger smallest share, and none with that share serves more seed; in the others by less than a bag', () => {
    let [ways, below] = [0, 0];
    for (let seed = 1; seed <= COUNT; seed++) {
      const counted = judge(seed);
      // Nobody may fall a largest bag below the share before packs are made whole, though another way could then do a little better.
      const isBest = counted.own > counted.leastShare - 1e-9 && counted.ownKg > counted.mostKg - 1e-6;
      if (!isBest) below++;
      expect(counted.own, `seed ${seed}`).toBeLessThanOrEqual(counted.leastShare + 1e-9);
      expect((counted.leastShare - counted.own) * counted.smallestNeedKg, `seed ${seed}`).toBeLessThan(10);
      expect(counted.ownKg, `seed ${seed}`).toBeGreaterThan(counted.mostKg - 10);
      ways += counted.ways;
    }
    expect(below).toBeLessThanOrEqual(COUNT / 100);
    expect(ways).toBeGreaterThan(50 * COUNT);
  }, 600_000);
});
