import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../src/adapters/solver/load-highs-solver.ts';
import type { LinearModel, LinearSolver } from '../../../src/engine/index.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

/** A model from its rows: coefficients, lower and upper bound. */
function model(
  maximise: boolean,
  cost: readonly number[],
  rows: readonly { readonly of: readonly number[]; readonly low?: number; readonly high?: number }[],
  more: Partial<LinearModel> = {},
): LinearModel {
  const starts = [0];
  const rowIndexes: number[] = [];
  const values: number[] = [];
  cost.forEach((_, c) => {
    rows.forEach(({ of }, r) => {
      if ((of[c] ?? 0) === 0) return;
      rowIndexes.push(r);
      values.push(of[c] as number);
    });
    starts.push(values.length);
  });
  return {
    maximise,
    columns: cost.length,
    rows: rows.length,
    columnCost: Float64Array.from(cost),
    columnLower: new Float64Array(cost.length),
    columnUpper: new Float64Array(cost.length).fill(Number.POSITIVE_INFINITY),
    rowLower: Float64Array.from(rows, ({ low }) => low ?? Number.NEGATIVE_INFINITY),
    rowUpper: Float64Array.from(rows, ({ high }) => high ?? Number.POSITIVE_INFINITY),
    starts: Int32Array.from(starts),
    rowIndexes: Int32Array.from(rowIndexes),
    values: Float64Array.from(values),
    ...more,
  };
}

describe('HiGHS as the linear solver', () => {
  it('tells optimum, dual prices and reduced costs: 3x + 5y, x + y <= 4, y <= 6', () => {
    const answer = solver.solve(
      model(
        true,
        [3, 5],
        [
          { of: [1, 1], high: 4 },
          { of: [0, 1], high: 6 },
        ],
      ),
    );
    expect(answer).toMatchObject({ status: 'optimal', objective: 20 });
    expect(Array.from(answer.columnValues)).toEqual([0, 4]);
    // One more unit of the first row is one more y, worth 5; x would cost 5 - 3.
    expect(Array.from(answer.rowDuals, (dual) => dual + 0)).toEqual([5, 0]);
    expect(Array.from(answer.columnDuals, (dual) => dual + 0)).toEqual([-2, 0]);
  });

  it('gives a dual of a lower bound in a maximum below nought, as the engine expects', () => {
    const answer = solver.solve(model(true, [-1], [{ of: [1], low: 3 }]));
    expect(answer.objective).toBe(-3);
    expect(answer.rowDuals[0]).toBe(-1);
  });

  it('names what has no optimum', () => {
    expect(
      solver.solve(
        model(
          true,
          [1],
          [
            { of: [1], low: 5 },
            { of: [1], high: 3 },
          ],
        ),
      ).status,
    ).toBe('infeasible');
    expect(solver.solve(model(true, [1, 1], [{ of: [1, -1], high: 3 }])).status).toBe('unbounded');
  });

  it('finds whole numbers where they are asked for, without duals', () => {
    // 5x + 4y, 6x + 4y <= 24, x + 2y <= 6: 21 at (3, 1.5), 20 at the best whole point (4, 0).
    const rows = [
      { of: [6, 4], high: 24 },
      { of: [1, 2], high: 6 },
    ];
    expect(solver.solve(model(true, [5, 4], rows)).objective).toBeCloseTo(21, 9);
    const whole = solver.solve(model(true, [5, 4], rows, { whole: Uint8Array.of(1, 1) }));
    expect(whole.objective).toBeCloseTo(20, 9);
    expect(whole.rowDuals).toHaveLength(0);
  });

  it('survives a model that it refuses', () => {
    const refused = model(true, [Number.NaN], [{ of: [1], high: 1 }]);
    expect(() => solver.solve(refused)).toThrow();
    expect(solver.solve(model(true, [1], [{ of: [1], high: 1 }])).objective).toBe(1);
  });

  it('repeats itself to the last bit, in the same and in another start', async () => {
    const rows = Array.from({ length: 12 }, (_, r) => ({
      of: Array.from({ length: 30 }, (_, c) => ((r * 7 + c * 3) % 11) / 3),
      high: 10 + r,
    }));
    const one = model(
      true,
      Array.from({ length: 30 }, (_, c) => 1 + ((c * 5) % 7) / 10),
      rows,
    );
    const first = solver.solve(one);
    expect(first.status).toBe('optimal');
    expect(solver.solve(one)).toEqual(first);
    expect((await loadHighsSolver()).solve(one)).toEqual(first);
  });

  it('says its name, version and the options that decide among equal answers', () => {
    expect(solver.name).toBe('HiGHS');
    expect(solver.version).toMatch(/^\d+\.\d+\.\d+$/);
    expect(solver.options).toContain('random_seed=0');
    expect(solver.options).not.toContain('time_limit');
  });

  it('starts from bytes, as a browser worker does that fetched them', async () => {
    const wasmBinary = readFileSync(new URL('../../../node_modules/highs/build/highs.wasm', import.meta.url));
    const fromBytes = await loadHighsSolver({ wasmBinary });
    expect(fromBytes.solve(model(true, [1], [{ of: [1], high: 2 }])).objective).toBe(2);
  });
});
