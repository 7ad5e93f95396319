/**
 * How well a number is known. `read`: seen in the source named; `read*` and `read-2`: seen in a retrieved secondary
 * transcription of it; `derived`: arithmetic on such numbers; `memory`: known, not seen, to be confirmed; `assumed`: a
 * modelling choice; `given`: stated by the programme in its own files.
 */
export type Status = 'read' | 'read*' | 'read-2' | 'derived' | 'memory' | 'assumed' | 'given';

/** A reference value with where it comes from. */
export interface Sourced<T> {
  readonly value: T;
  readonly status: Status;
  readonly source: string;
}

export const sourced = <T>(value: T, status: Status, source: string): Sourced<T> => ({ value, status, source });

/** One input of a figure: a column of a file, another figure, or a reference value. */
export interface FigureInput {
  readonly name: string;
  /** `file:column`, `figure:NAME` or `reference:NAME`. */
  readonly from: string;
  readonly unit: string;
  /** The value where one value serves every row; absent where it differs by row. */
  readonly value?: number | string;
  readonly status: Status;
  readonly source: string;
}

/** How every value of one figure of the plan was made. One entry a figure, not one a cell. */
export interface FigureProvenance {
  /** The figure's path in the plan document, such as `needs.seedKg`. */
  readonly figure: string;
  readonly unit: string;
  readonly formula: string;
  readonly inputs: readonly FigureInput[];
  readonly status: Status;
  readonly source: string;
}

/** A default that was taken because the files left the value out. */
export interface DefaultUsed {
  /** `file:column`, or `scenario.json:policy.reservePercent`. */
  readonly column: string;
  readonly value: number | string | boolean;
  readonly rows: number;
  readonly status: Status;
  readonly source: string;
}
