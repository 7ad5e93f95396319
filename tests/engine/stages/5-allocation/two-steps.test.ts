import { beforeAll, describe, expect, it } from 'vitest';
import { type Model, solve as solveWithYalps } from 'yalps';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import type { LinearSolver } from '../../../../src/engine/index.ts';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { type FairFloor, raiseLeastShare } from '../../../../src/engine/stages/5-allocation/raise-least-share.ts';
import type { ShareTerms } from '../../../../src/engine/stages/5-allocation/share-terms.ts';
import { spreadByHectares } from '../../../../src/engine/stages/5-allocation/spread-by-hectares.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

/** A pool of up to 14 rows and 4 stocks; some rows promised, floored or capped in part. */
function randomTerms(seed: number): ShareTerms {
  const random = new RandomStream(seed);
  const rows = 2 + random.below(13);
  const stocks = 1 + random.below(4);
  const arcs = Array.from({ length: rows * stocks }, (_, k) => ({ r: Math.floor(k / stocks), g: k % stocks })).filter(
    ({ r, g }) => g === r % stocks || random.next() < 0.5,
  );
  const weightKg = Float64Array.from({ length: rows }, () => 1 + random.next() * 400);
  const isBound = Array.from({ length: rows }, () => random.next() < 0.2);
  const part = (kg: number, r: number, most: number) => (isBound[r] ? kg * most * random.next() : 0);
  const keptKg = weightKg.map((kg, r) => part(kg, r, 0.1));
  return {
    pool: {
      rows: Array.from(weightKg, (_, r) => r),
      groups: Array.from({ length: stocks }, (_, g) => g),
      arcRow: Int32Array.from(arcs, ({ r }) => r),
      arcGroup: Int32Array.from(arcs, ({ g }) => g),
      arcMinutes: Float64Array.from(arcs, () => 10 + random.next() * 300),
    },
    stockKg: Float64Array.from({ length: stocks }, () => random.next() * 900),
    keptKg,
    lowKg: keptKg.slice(),
    highKg: weightKg.map((kg, r) => (isBound[r] ? kg * (0.2 + 0.8 * random.next()) : kg)),
    held: new Uint8Array(rows),
    weightKg,
    haPerKg: Float64Array.from({ length: rows }, () => 1 / (8 + random.next() * 80)),
    byZone: false,
    unitCount: rows,
    unitOffsets: Int32Array.from({ length: rows + 1 }, (_, r) => r),
    units: Int32Array.from(weightKg, (_, r) => r),
    unitFraction: new Float64Array(rows).fill(1),
  };
}

const column = (a: number) => `x${a}`;
const entries = (terms: ShareTerms, a: number) => ({
  [`row${terms.pool.arcRow[a]}`]: 1,
  [`stock${terms.pool.arcGroup[a]}`]: 1,
});
const stockLimits = ({ stockKg }: ShareTerms) => Array.from(stockKg, (max, g) => [`stock${g}`, { max }] as const);

/** Largest least share over the rows not held, by bisection on feasibility: no linear program of ours, no dual, no capping loop. */
function shareByBisection(terms: ShareTerms): number {
  const isFeasible = (share: number) => {
    const due = terms.weightKg.map((weight, r) =>
      Math.max(0, Math.min(share * weight, terms.highKg[r] as number) - (terms.keptKg[r] as number)),
    );
    const model: Model = {
      direction: 'maximize',
      objective: 'kg',
      constraints: Object.fromEntries([
        ...stockLimits(terms),
        ...Array.from(due, (max, r) => [`row${r}`, { max }] as const),
      ]),
      variables: Object.fromEntries(
        Array.from(terms.pool.arcRow, (_, a) => [column(a), { kg: 1, ...entries(terms, a) }] as const),
      ),
    };
    // All that is due can flow: the largest flow fills every row.
    const total = due.reduce((sum, kg) => sum + kg, 0);
    return solveWithYalps(model).result >= total - 1e-6;
  };
  let [low, high] = [0, 1];
  if (isFeasible(1)) return 1;
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (isFeasible(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * The most that a row could be given if nobody who has no larger share were to lose anything: at a max-min fair sharing out, no more
 * than it has (Bertsekas & Gallager, Data Networks, 1992, section 6.5.2: max-min flow control; from memory).
 */
function mostWithoutHarm(terms: ShareTerms, { held, unitFloorKg }: FairFloor, row: number): number {
  const { weightKg, keptKg, highKg } = terms;
  const shareOf = (r: number) => (unitFloorKg[r] as number) / (weightKg[r] as number);
  const least = (r: number) => {
    const due =
      held[r] === 1 ? (highKg[r] as number) : shareOf(r) <= shareOf(row) + 1e-9 ? (unitFloorKg[r] as number) : 0;
    return r === row ? 0 : Math.max(0, due * (1 - 1e-6) - (keptKg[r] as number));
  };
  const model: Model = {
    direction: 'maximize',
    objective: 'kg',
    constraints: Object.fromEntries([
      ...stockLimits(terms),
      ...Array.from(weightKg, (_, r) => {
        const most = Math.max(0, (highKg[r] as number) - (keptKg[r] as number));
        return [`row${r}`, { min: Math.min(least(r), most), max: most }] as const;
      }),
    ]),
    variables: Object.fromEntries(
      Array.from(terms.pool.arcRow, (r, a) => [column(a), { kg: r === row ? 1 : 0, ...entries(terms, a) }] as const),
    ),
  };
  return solveWithYalps(model).result + (keptKg[row] as number);
}

function mostHectares(terms: ShareTerms, floorKg: Float64Array): number {
  const model: Model = {
    direction: 'maximize',
    objective: 'ha',
    constraints: Object.fromEntries([
      ...stockLimits(terms),
      ...Array.from(terms.weightKg, (weight, r) => {
        const most = Math.max(0, (terms.highKg[r] as number) - (terms.keptKg[r] as number));
        const least = Math.max(0, (floorKg[r] as number) - 1e-7 * weight - (terms.keptKg[r] as number));
        return [`row${r}`, { min: Math.min(least, most), max: most }] as const;
      }),
    ]),
    variables: Object.fromEntries(
      Array.from(
        terms.pool.arcRow,
        (r, a) => [column(a), { ha: terms.haPerKg[r] as number, ...entries(terms, a) }] as const,
      ),
    ),
  };
  return solveWithYalps(model).result;
}

describe('the two steps against a second solver (yalps) on 80 random pools', () => {
  const pools = Array.from({ length: 80 }, (_, seed) => randomTerms(seed + 1));

  it('largest least share, found there by bisection on what can flow', () => {
    for (const terms of pools) {
      expect(raiseLeastShare(terms, solver)?.share).toBeCloseTo(shareByBisection(terms), 6);
    }
  });

  it('level upon level nobody can be given more without taking from who has no more', () => {
    let above = 0;
    for (const terms of pools) {
      const floor = raiseLeastShare(terms, solver);
      if (!floor) throw new Error('no optimum');
      terms.weightKg.forEach((weight, r) => {
        if (floor.held[r] === 1) return;
        const kg = floor.unitFloorKg[r] as number;
        expect(mostWithoutHarm(terms, floor, r)).toBeLessThanOrEqual(Math.max(kg, terms.keptKg[r] as number) + 0.02);
        if (kg > floor.share * weight + 1) above++;
      });
    }
    expect(above).toBeGreaterThan(80);
  }, 60_000);

  it('most hectares above that share, within a ten-thousandth for the drive', () => {
    for (const terms of pools) {
      const floor = raiseLeastShare(terms, solver);
      if (!floor) throw new Error('no optimum');
      const floors = { rowKg: floor.unitFloorKg, unitKg: null };
      const arcKg = spreadByHectares(terms, floor.held, floors, solver);
      if (!arcKg) throw new Error('no optimum');
      const hectares = arcKg.reduce(
        (sum, kg, a) => sum + kg * (terms.haPerKg[terms.pool.arcRow[a] as number] as number),
        0,
      );
      const due = floor.unitFloorKg.map((kg, r) => (floor.held[r] === 1 ? (terms.highKg[r] as number) : kg));
      const best = mostHectares(terms, due);
      expect(hectares).toBeLessThanOrEqual(best * (1 + 1e-6) + 1e-9);
      expect(hectares).toBeGreaterThanOrEqual(best * (1 - 2e-4) - 1e-4);
      terms.stockKg.forEach((stock, g) => {
        const taken = arcKg.reduce((sum, kg, a) => sum + (terms.pool.arcGroup[a] === g ? kg : 0), 0);
        expect(taken).toBeLessThanOrEqual(stock + 1e-6);
      });
      terms.weightKg.forEach((weight, r) => {
        const given = arcKg.reduce(
          (sum, kg, a) => sum + (terms.pool.arcRow[a] === r ? kg : 0),
          terms.keptKg[r] as number,
        );
        const due = Math.min(floor.share * weight, Math.max(terms.highKg[r] as number, terms.keptKg[r] as number));
        expect(given).toBeGreaterThanOrEqual(due - 1e-4);
      });
    }
  });

  it('among equal hectares the shortest drive: two depots with enough, each serves what is near', () => {
    const terms: ShareTerms = {
      ...(randomTerms(1) as ShareTerms),
      pool: {
        rows: [0, 1],
        groups: [0, 1],
        arcRow: Int32Array.of(0, 0, 1, 1),
        arcGroup: Int32Array.of(0, 1, 0, 1),
        arcMinutes: Float64Array.of(20, 90, 80, 30),
      },
      stockKg: Float64Array.of(100, 100),
      keptKg: new Float64Array(2),
      lowKg: new Float64Array(2),
      highKg: Float64Array.of(50, 40),
      held: new Uint8Array(2),
      weightKg: Float64Array.of(50, 40),
      haPerKg: Float64Array.of(0.1, 0.1),
      unitCount: 2,
      unitOffsets: Int32Array.of(0, 1, 2),
      units: Int32Array.of(0, 1),
      unitFraction: Float64Array.of(1, 1),
    };
    expect(
      Array.from(spreadByHectares(terms, terms.held, { rowKg: terms.highKg, unitKg: null }, solver) ?? [], Math.round),
    ).toEqual([50, 0, 0, 40]);
  });
});
