import type { ProblemCode, ProblemPlace } from '../../vocabulary/problems.ts';
import type { Sourced } from '../../vocabulary/provenance.ts';
import type { CellKind } from './cell-kinds.ts';
import type { IntakeReport } from './intake-report.ts';

/** What a value that cannot be used sets aside: itself, and the cell counts as blank, or its whole row. */
export type IfBad = 'value' | 'row';

/** A default as a cell would state it. */
export type CellDefault = Sourced<number | string>;

/** A row that is kept, with its place in the file. */
export interface KeptRow<T> {
  readonly file: string;
  readonly row: number;
  readonly value: T;
}

/**
 * Reads the cells of one row by name and kind, so that a reader looks like the table of its format. Faults are coded;
 * a row with a fault in a required cell gives null at `kept`.
 */
export class RowReader {
  readonly file: string;
  readonly row: number | null;
  private readonly report: IntakeReport;
  private readonly cell: (column: string) => string;
  private readonly defaults: [string, CellDefault][] = [];
  private rejected = false;

  /** @param cell the trimmed text of a column, empty where there is none */
  constructor(report: IntakeReport, file: string, row: number | null, cell: (column: string) => string) {
    this.report = report;
    this.file = file;
    this.row = row;
    this.cell = cell;
  }

  text(column: string): string {
    return this.cell(column);
  }

  /** A blank or unusable cell sets the row aside. */
  required<T>(column: string, kind: CellKind<T>): T {
    if (this.cell(column) !== '') return this.good(column, kind, 'row') ?? kind.none;
    this.reject('E1300', { column });
    return kind.none;
  }

  orNull<T>(column: string, kind: CellKind<T>, ifBad: IfBad = 'value'): T | null {
    return this.cell(column) === '' ? null : this.good(column, kind, ifBad);
  }

  orDefault<T>(column: string, kind: CellKind<T>, otherwise: CellDefault, ifBad: IfBad = 'value'): T {
    const found = this.orNull(column, kind, ifBad);
    if (found !== null) return found;
    this.defaults.push([column, otherwise]);
    const reading = kind.read(String(otherwise.value));
    return 'value' in reading ? reading.value : kind.none;
  }

  note(code: ProblemCode, place: ProblemPlace = {}): void {
    this.report.add(code, { file: this.file, row: this.row, ...place });
  }

  /** Sets one value aside: the caller goes on without it. */
  setValueAside(code: ProblemCode, place: ProblemPlace): void {
    this.note(code, { ...place, facts: { ...place.facts, scope: 'value' } });
  }

  /** Sets the row aside. */
  reject(code: ProblemCode, place: ProblemPlace = {}): void {
    this.rejected = true;
    this.note(code, { ...place, facts: { ...place.facts, scope: 'row' } });
  }

  get isRejected(): boolean {
    return this.rejected;
  }

  /** The value read, once all cells were; null where the row is set aside. Only kept rows count their defaults. */
  kept<T>(value: T): KeptRow<T> | null {
    if (this.rejected) return null;
    for (const [column, taken] of this.defaults) this.report.countDefault(`${this.file}:${column}`, taken);
    return { file: this.file, row: this.row ?? 0, value };
  }

  private good<T>(column: string, kind: CellKind<T>, ifBad: IfBad): T | null {
    const text = this.cell(column);
    const reading = kind.read(text);
    if ('fault' in reading) {
      const place = { column, value: text, facts: reading.facts ?? {} };
      if (ifBad === 'row') this.reject(reading.fault, place);
      else this.setValueAside(reading.fault, place);
      return null;
    }
    for (const note of reading.notes ?? []) {
      this.note(note.code, { column, value: note.value ?? text, facts: note.facts ?? {} });
    }
    return reading.value;
  }
}
