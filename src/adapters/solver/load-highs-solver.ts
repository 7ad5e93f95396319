import loadHighs, { type Highs, type InitOptions, type ModelStatusCode } from 'highs';
import type { LinearAnswer, LinearModel, LinearSolver } from '../../engine/index.ts';

/**
 * What decides which of several equal answers comes out, so it is fixed here and travels with the plan. One thread and a
 * fixed seed repeat themselves; no time limit, because a limit on the clock would make the answer depend on the machine.
 */
const OPTIONS = {
  output_flag: false,
  presolve: 'on',
  solver: 'simplex',
  random_seed: 0,
  primal_feasibility_tolerance: 1e-9,
  dual_feasibility_tolerance: 1e-9,
  mip_rel_gap: 0,
  mip_abs_gap: 1e-9,
  mip_max_nodes: 100_000,
} as const;

/** Whole-number models need the branching solver, which the option `simplex` would pass over. */
const WHOLE_NUMBER_OPTIONS = { ...OPTIONS, solver: 'choose' } as const;

const STATUS_BY_CODE: Partial<Record<ModelStatusCode, LinearAnswer['status']>> = {
  7: 'optimal',
  8: 'infeasible',
  10: 'unbounded',
  13: 'limit',
  14: 'limit',
  16: 'limit',
};

/**
 * Starts HiGHS (WebAssembly, MIT licence) as a linear solver for the engine; works in Node and in a browser worker.
 *
 * @param start where the WebAssembly file lies or its bytes; Node needs nothing, a bundled worker gives `locateFile`
 * @throws where the WebAssembly file cannot be loaded
 */
export async function loadHighsSolver(start: InitOptions = {}): Promise<LinearSolver> {
  const highs = await loadHighs(start);
  return {
    name: 'HiGHS',
    version: highs.version.string,
    options: Object.entries(OPTIONS)
      .map(([name, value]) => `${name}=${value}`)
      .join(' '),
    solve: (model) => solveWithHighs(highs, model),
  };
}

function solveWithHighs(highs: Highs, model: LinearModel): LinearAnswer {
  return highs.withModel(modelData(highs, model), (held) => {
    held.options.set(model.whole ? WHOLE_NUMBER_OPTIONS : OPTIONS);
    // 9 says "unbounded or infeasible": presolve saw that there is no optimum and not why. Asked again without it.
    if (held.run().modelStatus === 9) {
      held.options.set({ presolve: 'off' });
      held.run();
    }
    const status = STATUS_BY_CODE[held.getModelStatus()] ?? 'failed';
    const solution = held.getSolution();
    const none = new Float64Array(0);
    return {
      status,
      objective: held.getObjectiveValue(),
      columnValues: solution.colValue,
      rowDuals: model.whole ? none : solution.rowDual,
      columnDuals: model.whole ? none : solution.colDual,
    };
  });
}

/** A model as HiGHS takes it. */
export function modelData(highs: Highs, model: LinearModel) {
  const { minimize, maximize } = highs.constants.objectiveSense;
  return {
    numCols: model.columns,
    numRows: model.rows,
    sense: model.maximise ? maximize : minimize,
    colCost: model.columnCost,
    colLower: model.columnLower,
    colUpper: model.columnUpper,
    rowLower: model.rowLower,
    rowUpper: model.rowUpper,
    matrix: {
      format: 'csc' as const,
      numRows: model.rows,
      numCols: model.columns,
      starts: model.starts,
      indices: model.rowIndexes,
      values: model.values,
    },
    ...(model.whole ? { integrality: Int32Array.from(model.whole) } : {}),
  };
}
