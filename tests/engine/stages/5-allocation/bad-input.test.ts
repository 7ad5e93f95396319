import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import { type Decision, dayNumber, type LinearSolver } from '../../../../src/engine/index.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { type DistrictSpec, decisions, FROM, lot, sachet, seedPack, smallDistrict } from './small-district.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

const BAG = seedPack('soybean', 5);
const INO = sachet(['soybean']);
const district = (over: Partial<DistrictSpec> = {}): DistrictSpec => ({
  crops: ['soybean'],
  communities: [{ ha: { soybean: 10 } }, { ha: { soybean: 5 } }],
  products: [BAG, INO],
  lots: [lot(BAG, 10), lot(INO, 4)],
  ...over,
});

function answer(spec: DistrictSpec, ...list: Decision[]) {
  const { scenario, places, season, needs } = smallDistrict(spec);
  return allocateStock(scenario, decisions(...list), places, season, needs, solver, null);
}

/** Every kilogram not given has a reason. */
function explains({ result }: ReturnType<typeof answer>) {
  const { shares, shortfalls } = result;
  const short = shares.seedNeedKg.reduce(
    (sum, need, row) => sum + need - (shares.ownSeedKg[row] as number) - (shares.seedGivenKg[row] as number),
    0,
  );
  const told = shortfalls.reduce((sum, one) => (one.commodity === 'seed' ? sum + one.shortKg : sum), 0);
  expect(told).toBeCloseTo(short, 6);
  return new Set(shortfalls.filter(({ commodity }) => commodity === 'seed').map(({ reason }) => reason));
}

describe('input that leaves nothing, or contradicts itself, is answered with reasons', () => {
  it('no stock at all: no lots, or lots of no packs', () => {
    expect([...explains(answer(district({ lots: [] })))]).toEqual(['no-compatible-stock']);
    expect([...explains(answer(district({ lots: [lot(BAG, 0), lot(INO, 0)] })))]).toEqual(['no-compatible-stock']);
  });

  it('no products: nothing to order either', () => {
    const { result } = answer(district({ products: [], lots: [] }));
    expect(result.orders).toEqual([]);
    expect(result.remedies).toEqual([]);
  });

  it('every lot past its date, each noted', () => {
    const expired = { expires: dayNumber(FROM - 1) };
    const told = answer(district({ lots: [lot(BAG, 10, expired), lot(INO, 4, expired)] }));
    expect([...explains(told)]).toEqual(['no-compatible-stock']);
    expect(told.problems.filter(({ code }) => code === 'E5001')).toHaveLength(2);
    expect(told.result.grants.packs).toHaveLength(0);
  });

  it('decisions that contradict one another: the later has the last word, what cannot be met is noted', () => {
    const cell = { communityId: 'COM-0', crop: 'soybean', commodity: 'seed' } as const;
    const list: Decision[] = [
      { kind: 'fix', ...cell, share: 1 },
      { kind: 'forbid', ...cell },
      { kind: 'floor', ...cell, share: 1 },
      { kind: 'floor', ...cell, communityId: 'COM-1', share: 1 },
    ];
    const told = answer(district(), ...list);
    explains(told);
    expect(told.problems.some(({ code }) => code === 'E5021')).toBe(true);
    const given = told.result.grants.packs.reduce((sum, packs) => sum + packs, 0);
    expect(given).toBeGreaterThan(0);
  });

  it('one community wants more than exists', () => {
    const told = answer(district({ communities: [{ ha: { soybean: 1e6 } }, { ha: { soybean: 1 } }] }));
    expect(explains(told).has('stock-short')).toBe(true);
    expect(told.result.shares.seedGivenKg.reduce((sum, kg) => sum + kg, 0)).toBeLessThanOrEqual(50);
  });

  it('nobody plans anything, nobody is reached', () => {
    expect(answer(district({ communities: [{ ha: {} }] })).result.shortfalls).toEqual([]);
    const cut = district({ communities: [{ ha: { soybean: 10 }, minutes: [null] }] });
    expect([...explains(answer(cut))]).toEqual(['not-reachable']);
  });

  it('everything kept in reserve; a budget of nothing', () => {
    expect(answer(district({ policy: { reservePercent: 100 } })).result.grants.packs).toHaveLength(0);
    const { result } = answer(district({ policy: { orderBudget: 0 } }));
    expect(result.orders.every(({ packs }) => packs === 0)).toBe(true);
    expect(result.orders.length).toBeGreaterThan(0);
  });
});
