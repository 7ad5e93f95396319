import type { LinearModel } from '../../numerics/linear-solver.ts';

/** Builds a linear program row by row, then column by column. */
export class LinearModelBuilder {
  private readonly rowLower: number[] = [];
  private readonly rowUpper: number[] = [];
  private readonly cost: number[] = [];
  private readonly lower: number[] = [];
  private readonly upper: number[] = [];
  private readonly starts: number[] = [0];
  private readonly rowIndexes: number[] = [];
  private readonly values: number[] = [];

  /** @returns the row's index */
  addRow(lower: number, upper: number): number {
    this.rowLower.push(lower);
    this.rowUpper.push(upper);
    return this.rowLower.length - 1;
  }

  /** Adds one entry to the column that `closeColumn` will end. Each row at most once a column. */
  addEntry(row: number, value: number): void {
    this.rowIndexes.push(row);
    this.values.push(value);
  }

  closeColumn(cost: number, lower: number, upper: number): void {
    this.cost.push(cost);
    this.lower.push(lower);
    this.upper.push(upper);
    this.starts.push(this.rowIndexes.length);
  }

  build(maximise: boolean): LinearModel {
    return {
      maximise,
      columns: this.cost.length,
      rows: this.rowLower.length,
      columnCost: Float64Array.from(this.cost),
      columnLower: Float64Array.from(this.lower),
      columnUpper: Float64Array.from(this.upper),
      rowLower: Float64Array.from(this.rowLower),
      rowUpper: Float64Array.from(this.rowUpper),
      starts: Int32Array.from(this.starts),
      rowIndexes: Int32Array.from(this.rowIndexes),
      values: Float64Array.from(this.values),
    };
  }
}
