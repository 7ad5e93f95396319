import type { TableRecords } from '../../vocabulary/records.ts';

export type Unit = 'C' | 'F';

/** Where a logger's table keeps what is needed; -1 where it does not. */
export interface LoggerColumns {
  readonly time: number;
  /** A clock of its own beside a column of dates. */
  readonly clock: number;
  readonly temperature: number;
  /** As the header or the cells state it; null where neither does. */
  readonly unit: Unit | null;
  readonly lot: number;
  readonly trip: number;
}

const TIME = /^(date.?time|time.?stamp|logged.?at|recorded.?at|date|time)/i;
const CLOCK = /^(time|hour|clock)/i;
const TEMPERATURE = /temp|°\s*[cf]\b|celsius|fahrenheit|\bch(annel)?.?1\b/i;
const NOT_A_READING = /limit|alarm|max|min|avg|average|set.?point/i;

/** Columns in any order, by the words that loggers use for them. */
export function findLoggerColumns({ columns, rows }: TableRecords): LoggerColumns {
  const find = (test: (name: string, at: number) => boolean) => columns.findIndex(test);
  const temperature = find((name) => TEMPERATURE.test(name) && !NOT_A_READING.test(name));
  const time = find((name) => TIME.test(name));
  const isDateOnly = /^date$/i.test(columns[time] ?? '');
  const cells = rows.slice(0, 20).map((row) => row.cells[temperature] ?? '');
  return {
    time,
    clock: isDateOnly ? find((name, at) => at !== time && CLOCK.test(name)) : -1,
    temperature,
    unit: unitOf(columns[temperature] ?? '') ?? unitOf(cells.find((cell) => unitOf(cell) !== null) ?? ''),
    lot: find((name) => /^(lot|batch)/i.test(name)),
    trip: find((name) => /^trip/i.test(name)),
  };
}

function unitOf(text: string): Unit | null {
  if (/°\s*f\b|fahrenheit|[_\s([]f[\])]?$|deg\.?\s*f\b/i.test(text)) return 'F';
  if (/°\s*c\b|celsius|[_\s([]c[\])]?$|deg\.?\s*c\b/i.test(text)) return 'C';
  return null;
}

/** A reading without its unit; a single comma is a decimal point. NaN where it is no number. */
export function loggerNumber(cell: string): number {
  const bare = cell.replace(/\s*°?\s*(c|f|celsius|fahrenheit)?$/i, '').trim();
  const plain = /^[+-]?\d+,\d+$/.test(bare) ? bare.replace(',', '.') : bare;
  return /^[+-]?\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
}
