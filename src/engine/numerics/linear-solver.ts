/** A linear or mixed-integer program in columns; what an adapter must offer to solve it. */

export interface LinearModel {
  readonly maximise: boolean;
  readonly columns: number;
  readonly rows: number;
  readonly columnCost: Float64Array;
  readonly columnLower: Float64Array;
  /** Infinity where there is no bound. */
  readonly columnUpper: Float64Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  /** Compressed sparse columns: entries of column c stand at starts[c] to starts[c + 1]. */
  readonly starts: Int32Array;
  readonly rowIndexes: Int32Array;
  readonly values: Float64Array;
  /** 1 where a column must be whole. */
  readonly whole?: Uint8Array;
}

export interface LinearAnswer {
  readonly status: 'optimal' | 'infeasible' | 'unbounded' | 'limit' | 'failed';
  readonly objective: number;
  readonly columnValues: Float64Array;
  /** Change of the objective per unit of a row's bound (dual value); empty for whole-number models. */
  readonly rowDuals: Float64Array;
  readonly columnDuals: Float64Array;
}

export interface LinearSolver {
  readonly name: string;
  readonly version: string;
  /** The options that decide which of several equal answers comes out. */
  readonly options: string;
  solve(model: LinearModel): LinearAnswer;
}
