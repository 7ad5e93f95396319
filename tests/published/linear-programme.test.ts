import { beforeAll, describe, expect, it } from 'vitest';
import { type Model, solve as solveWithYalps } from 'yalps';
import { loadHighsSolver } from '../../src/adapters/solver/load-highs-solver.ts';
import type { LinearModel, LinearSolver } from '../../src/engine/index.ts';
import { LinearModelBuilder } from '../../src/engine/stages/5-allocation/linear-model-builder.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

interface Transport {
  readonly costs: readonly (readonly number[])[];
  readonly supply: readonly number[];
  readonly demand: readonly number[];
}

/** Least cost: rows are supplies, then demands; a column for each way. */
function transportModel({ costs, supply, demand }: Transport): LinearModel {
  const builder = new LinearModelBuilder();
  const from = supply.map((most) => builder.addRow(Number.NEGATIVE_INFINITY, most));
  const to = demand.map((least) => builder.addRow(least, Number.POSITIVE_INFINITY));
  costs.forEach((row, i) => {
    row.forEach((cost, j) => {
      builder.addEntry(from[i] as number, 1);
      builder.addEntry(to[j] as number, 1);
      builder.closeColumn(cost, 0, Number.POSITIVE_INFINITY);
    });
  });
  return builder.build(false);
}

/** The same problem to a solver that shares no code with HiGHS (yalps, a JavaScript simplex on a dense tableau). */
function yalpsTransport({ costs, supply, demand }: Transport): number {
  const constraints = Object.fromEntries([
    ...supply.map((max, i) => [`s${i}`, { max }]),
    ...demand.map((min, j) => [`d${j}`, { min }]),
  ]);
  const variables = Object.fromEntries(
    costs.flatMap((row, i) => row.map((cost, j) => [`x${i}_${j}`, { cost, [`s${i}`]: 1, [`d${j}`]: 1 }])),
  );
  const model: Model = { direction: 'minimize', objective: 'cost', constraints, variables };
  return solveWithYalps(model).result;
}

// Canneries and warehouses of the P & T Company, Hillier & Lieberman, Introduction to Operations Research, chapter on the
// transportation problem (data and optimum of 152,535 dollars from memory; the second solver confirms them).
const CANNERIES: Transport = {
  costs: [
    [464, 513, 654, 867],
    [352, 416, 690, 791],
    [995, 682, 388, 685],
  ],
  supply: [75, 125, 100],
  demand: [80, 65, 70, 85],
};

// Two plants and three markets, Dantzig, Linear Programming and Extensions 1963, section 3-3, as in many modelling-language
// manuals: distances in thousand miles at 90 dollars a case (data and optimum of 153.675 from memory; confirmed likewise).
const PLANTS: Transport = {
  costs: [
    [2.5, 1.7, 1.8],
    [2.5, 1.8, 1.4],
  ].map((row) => row.map((thousandMiles) => thousandMiles * 0.09)),
  supply: [350, 600],
  demand: [325, 300, 275],
};

describe('textbook transportation problems', () => {
  it.each([
    ['canneries', CANNERIES, 152_535],
    ['plants', PLANTS, 153.675],
  ] as const)('%s: the printed optimum, agreed by a second solver', (_name, transport, printed) => {
    expect(yalpsTransport(transport)).toBeCloseTo(printed, 6);
    const answer = solver.solve(transportModel(transport));
    expect(answer.status).toBe('optimal');
    expect(answer.objective).toBeCloseTo(printed, 6);
  });

  it('dual prices certify the optimum: supplies and demands at their prices cost as much, and no way is priced above its cost', () => {
    const answer = solver.solve(transportModel(CANNERIES));
    const { supply, demand, costs } = CANNERIES;
    const price = Array.from(answer.rowDuals);
    const priced = [...supply, ...demand].reduce((sum, amount, r) => sum + amount * (price[r] as number), 0);
    expect(priced).toBeCloseTo(152_535, 6);
    costs.forEach((row, i) => {
      row.forEach((cost, j) => {
        expect((price[i] as number) + (price[supply.length + j] as number)).toBeLessThanOrEqual(cost + 1e-9);
      });
    });
  });
});

// The bottleneck (time-minimising) transportation problem: the largest time of any way used as small as can be (definition:
// INFORMS Mathematical Programming Glossary, read).
describe('the bottleneck of a transportation problem', () => {
  /** Loads that can arrive along ways of at most so much. */
  const arriving = ({ costs, supply, demand }: Transport, most: number) => {
    const builder = new LinearModelBuilder();
    const from = supply.map((kg) => builder.addRow(Number.NEGATIVE_INFINITY, kg));
    const to = demand.map((kg) => builder.addRow(Number.NEGATIVE_INFINITY, kg));
    costs.forEach((row, i) => {
      row.forEach((cost, j) => {
        builder.addEntry(from[i] as number, 1);
        builder.addEntry(to[j] as number, 1);
        builder.closeColumn(1, 0, cost <= most ? Number.POSITIVE_INFINITY : 0);
      });
    });
    return solver.solve(builder.build(true)).objective;
  };

  const bottleneck = (transport: Transport) => {
    const all = transport.demand.reduce((sum, loads) => sum + loads, 0);
    const ways = [...new Set(transport.costs.flat())].sort((a, b) => a - b);
    return ways.find((most) => arriving(transport, most) > all - 1e-6);
  };

  /** Everybody goes to one place: supplies and demands of one. */
  const assignment = (costs: Transport['costs']): Transport => {
    const one = costs.map(() => 1);
    return { costs, supply: one, demand: one };
  };

  // Printed with its optimum in the tests of the R library couplr (rdrr.io, read): cheapest in sum is the diagonal with a
  // largest way of 5, smallest largest way is 3. The second from the same library (read): 7.
  it.each([
    [
      [
        [1, 3],
        [2, 5],
      ],
      3,
    ],
    [
      [
        [1, 2, 3],
        [4, 5, 6],
        [7, 8, 9],
      ],
      7,
    ],
  ])('assignments of a library with printed optimum: %j', (costs, printed) => {
    expect(bottleneck(assignment(costs))).toBe(printed);
  });

  // Lau, A Java Library of Graph Algorithms and Optimization 2006, bottleneck assignment, 5 by 5 (data read in its example
  // programme, whose printed result was not seen). The first place costs nobody less than 7; 7 does: 1-2, 2-5, 3-1, 4-3, 5-4.
  it('five by five, first place dearest', () => {
    const costs = [
      [9, 6, 8, 4, 7],
      [8, 7, 6, 8, 3],
      [7, 4, 3, 5, 6],
      [9, 8, 3, 7, 6],
      [8, 7, 3, 6, 5],
    ];
    expect(bottleneck(assignment(costs))).toBe(7);
  });

  // Universal Teacher Publications, Operations Research, "Time minimizing transportation problem", example 1 (data read; the
  // last table was not seen, so the optimum is certified here by the cut below).
  const TIMES: Transport = {
    costs: [
      [25, 30, 20, 40, 45, 37],
      [30, 25, 20, 30, 40, 20],
      [40, 20, 40, 35, 45, 22],
      [25, 24, 50, 27, 30, 25],
    ],
    supply: [37, 22, 32, 14],
    demand: [15, 20, 15, 25, 20, 10],
  };

  it('four origins, six destinations: 40', () => {
    expect(bottleneck(TIMES)).toBe(40);
    // Below 40 only the fourth origin reaches the fifth destination: 14 of its 20 loads, so 99 of 105 arrive.
    expect(arriving(TIMES, 37)).toBeCloseTo(105 - (20 - 14), 6);
  });

  // Canneries: the fourth warehouse's 85 loads cannot come for less than 685 (its ways cost 867, 791, 685), and 685 does: 85 and
  // 15 loads from the third cannery, 55 and 20 from the first, 125 from the second.
  it('canneries: 685 serves all 300 loads, the next cheaper way of 682 does not', () => {
    expect(bottleneck(CANNERIES)).toBe(685);
    expect(arriving(CANNERIES, 682)).toBeCloseTo(215, 6);
  });
});

describe('worked examples printed with two libraries', () => {
  it('tables and dressers (readme of yalps 0.6.4, read): 8 and 3 for 14,400, whole pieces', () => {
    const builder = new LinearModelBuilder();
    const rows = [300, 110, 400].map((most) => builder.addRow(Number.NEGATIVE_INFINITY, most));
    const pieces: readonly (readonly [number, readonly number[]])[] = [
      [1200, [30, 5, 30]],
      [1600, [20, 10, 50]],
    ];
    for (const [profit, uses] of pieces) {
      uses.forEach((amount, r) => {
        builder.addEntry(rows[r] as number, amount);
      });
      builder.closeColumn(profit, 0, Number.POSITIVE_INFINITY);
    }
    const answer = solver.solve({ ...builder.build(true), whole: Uint8Array.of(1, 1) });
    expect(answer.objective).toBeCloseTo(14_400, 9);
    expect(Array.from(answer.columnValues, Math.round)).toEqual([8, 3]);
  });

  it('chairs and tables (readme of highs 1.15.3, read): 20 and 10 for 1,100', () => {
    const builder = new LinearModelBuilder();
    const carpentry = builder.addRow(Number.NEGATIVE_INFINITY, 40);
    const finishing = builder.addRow(Number.NEGATIVE_INFINITY, 50);
    builder.addEntry(carpentry, 1);
    builder.addEntry(finishing, 2);
    builder.closeColumn(30, 0, Number.POSITIVE_INFINITY);
    builder.addEntry(carpentry, 2);
    builder.addEntry(finishing, 1);
    builder.closeColumn(50, 0, Number.POSITIVE_INFINITY);
    const answer = solver.solve(builder.build(true));
    expect(answer.objective).toBeCloseTo(1100, 9);
    expect(Array.from(answer.columnValues)).toEqual([20, 10].map((count) => expect.closeTo(count, 9)));
  });
});
