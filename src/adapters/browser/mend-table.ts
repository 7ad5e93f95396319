import Papa from 'papaparse';

/** A cell of a table to be written anew. */
export interface MendedCell {
  /** 1-based line of the file in which the row begins, the header being line 1. */
  readonly row: number;
  readonly column: string;
  readonly value: string;
}

/** The table with cells written anew, as UTF-8 CSV (RFC 4180); rows and columns that it does not have change nothing. */
export function mendTable(bytes: Uint8Array, cells: readonly MendedCell[]): Uint8Array {
  const text = new TextDecoder().decode(bytes).replace(/\r\n?/g, '\n');
  const { data } = Papa.parse<string[]>(text, { delimiter: ',', newline: '\n', skipEmptyLines: false });
  const columns = (data[0] ?? []).map((name) => name.trim());
  let line = 1;
  for (const row of data) {
    for (const cell of cells) {
      const at = columns.indexOf(cell.column);
      if (cell.row === line && at >= 0 && at < row.length) row[at] = cell.value;
    }
    line += row.reduce((lines, cell) => lines + (cell.split('\n').length - 1), 1);
  }
  return new TextEncoder().encode(Papa.unparse(data, { newline: '\n' }));
}
