/** One cell: text, a number, or nothing. */
export type CsvCell = string | number | null;

/**
 * First characters that make a spreadsheet take text for a formula: = + - @, their full-width forms, tab and carriage
 * return (Open Worldwide Application Security Project, "CSV injection"; from memory).
 */
const FORMULA_START = /^[=+\-@\t\r＝＋－＠]/;
const NEEDS_QUOTES = /[",\r\n]/;

/**
 * A table as CSV by RFC 4180: cells divided by commas, lines ended by CRLF, cells that hold a comma, a quote or a line
 * end put in quotes, quotes doubled. Text that a spreadsheet would run as a formula is led by an apostrophe; numbers,
 * negative ones included, stay numbers.
 *
 * @param rows each as long as the header
 * @throws RangeError where a row has another number of cells than the header, or a number is not finite
 */
export function csvText(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  const lines = [header, ...rows].map((cells, line) => {
    if (cells.length !== header.length) {
      throw new RangeError(`line ${line + 1} has ${cells.length} cells, the header ${header.length}`);
    }
    return `${cells.map(cellText).join(',')}\r\n`;
  });
  return lines.join('');
}

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return numberText(cell);
  const safe = FORMULA_START.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a number a table can hold`);
  return String(value);
}
