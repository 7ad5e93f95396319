import type { FeatureRecord, FeatureRecords, TableRecords } from '../../vocabulary/records.ts';
import type { IntakeReport } from './intake-report.ts';
import { nearestWord } from './nearest-word.ts';
import { type KeptRow, RowReader } from './row-reader.ts';

/**
 * Rows of a table (RFC 4180 with a header) as readers.
 *
 * @param format the columns by name, `*` after those that every row needs, as in the description of the files
 */
export function openTable(report: IntakeReport, records: TableRecords | null, format: string): RowReader[] {
  if (records === null) return [];
  const columns = format.split(', ');
  const place = placeOfColumns(
    report,
    records,
    columns.map((name) => name.replace('*', '')),
  );
  const needed = columns.filter((name) => name.endsWith('*')).map((name) => name.slice(0, -1));
  const missing = needed.filter((name) => !place.has(name));
  for (const column of missing) report.add('E1123', { file: records.file, row: 1, column });
  if (missing.length > 0) return [];
  return records.rows.map(({ row, cells }) => {
    const cell = (column: string): string => {
      const at = place.get(column);
      return at === undefined ? '' : (cells[at] ?? '');
    };
    return new RowReader(report, records.file, row, cell);
  });
}

function placeOfColumns(report: IntakeReport, { file, columns }: TableRecords, known: readonly string[]) {
  const place = new Map<string, number>();
  columns.forEach((column, at) => {
    if (column === '') return;
    if (place.has(column)) report.add('E1125', { file, row: 1, column });
    else place.set(column, at);
    if (known.includes(column)) return;
    const suggestion = nearestWord(column, known);
    report.add('E1124', { file, row: 1, column, facts: suggestion === null ? {} : { suggestion } });
  });
  return place;
}

/** Features of a collection (RFC 7946) as readers of their properties, beside their geometry. */
export function openFeatures(report: IntakeReport, records: FeatureRecords | null): [RowReader, unknown][] {
  if (records === null) return [];
  return records.features.map((feature) => [
    new RowReader(report, records.file, feature.row, (column) => propertyText(feature, column)),
    feature.geometry,
  ]);
}

const propertyText = ({ properties }: FeatureRecord, name: string): string =>
  Object.hasOwn(properties, name) ? cellText(properties[name]) : '';

/** A JSON value as the cell of a table would state it: yes and no, lists separated by `;`, nothing for null. */
export function cellText(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string') return value.trim();
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return value.map(cellText).join(';');
  return JSON.stringify(value);
}

/** Reads every row with one function and keeps those that hold. */
export function keepRows<R, T>(rows: readonly R[], read: (row: R) => KeptRow<T> | null): KeptRow<T>[] {
  return rows.map(read).filter((row) => row !== null);
}
