import Papa from 'papaparse';
import type { ReadFault, TableRecord, TableRecords } from '../../engine/index.ts';

/**
 * A table with a header (RFC 4180) as records that know their line. Blank lines are skipped; a row with other cells than
 * the header has, or with quotes that do not hold, is a fault and left out.
 */
export function parseTable(
  file: string,
  text: string,
): { readonly table: TableRecords | null; readonly faults: ReadFault[] } {
  // Line ends of all systems are taken alike, so that a file that mixes them is not read as one long row.
  const lines = text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
  const { data, errors } = Papa.parse<string[]>(lines, { delimiter: ',', newline: '\n', skipEmptyLines: false });
  const [header = [], ...body] = data;
  const columns = header.map((name) => name.trim());
  if (!isTable(columns)) {
    return { table: null, faults: [{ kind: 'not-csv', file, row: 1, value: header.join().slice(0, 80) }] };
  }
  const misquoted = new Set(errors.filter(({ type }) => type === 'Quotes').map(({ row }) => row));
  const rows: TableRecord[] = [];
  const faults: ReadFault[] = [];
  let line = 1 + linesOf(header);
  body.forEach((cells, index) => {
    const row = line;
    line += linesOf(cells);
    if (cells.every((cell) => cell.trim() === '') && cells.length <= 1) return;
    const holds = cells.length === columns.length && !misquoted.has(index + 1);
    if (holds) rows.push({ row, cells: cells.map((cell) => cell.trim()) });
    else faults.push({ kind: 'row-shape', file, row, value: cells.join().slice(0, 80) });
  });
  return { table: { file, columns, rows }, faults };
}

/** Columns separated by something else make one long name. */
const isTable = (columns: readonly string[]): boolean =>
  columns.some((name) => name !== '') && !(columns.length === 1 && /[;\t|{[]/.test(columns[0] ?? ''));

/** Lines of the file that a row takes: quoted cells may hold line ends. */
function linesOf(cells: readonly string[]): number {
  let lines = 1;
  for (const cell of cells) if (cell.includes('\n')) lines += cell.split('\n').length - 1;
  return lines;
}
