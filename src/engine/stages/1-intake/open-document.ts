import type { IntakeReport } from './intake-report.ts';
import { nearestWord } from './nearest-word.ts';
import { cellText } from './open-records.ts';
import { RowReader } from './row-reader.ts';

/** scenario.json, parsed, with the file it came from. */
export interface JsonDocument {
  readonly file: string;
  readonly value: unknown;
}

/** A reader whose columns are paths, such as `planning.from`; lists of plain values read as cells separated by `;`. */
export function openDocument(report: IntakeReport, { file, value }: JsonDocument): RowReader {
  return new RowReader(report, file, null, (path) => cellText(entryAt(value, path)));
}

/** What stands at a path; undefined where there is nothing. Inherited properties do not count. */
export function entryAt(value: unknown, path: string): unknown {
  let at = value;
  for (const name of path.split('.')) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, name)) return undefined;
    at = (at as Readonly<Record<string, unknown>>)[name];
  }
  return at;
}

/** Says which entries of an object are not known, with the entry that was probably meant; or that it is no object. */
export function noteUnknownEntries(
  report: IntakeReport,
  { file, value }: JsonDocument,
  path: string,
  known: readonly string[],
): void {
  const entry = path === '' ? value : entryAt(value, path);
  if (entry === undefined || entry === null) return;
  if (typeof entry !== 'object' || Array.isArray(entry)) {
    report.add('E1209', { file, column: path, value: cellText(entry), facts: { expected: 'object' } });
    return;
  }
  for (const name of Object.keys(entry)) {
    if (known.includes(name)) continue;
    const suggestion = nearestWord(name, known);
    const column = path === '' ? name : `${path}.${name}`;
    report.add('E1204', { file, column, facts: suggestion === null ? {} : { suggestion } });
  }
}
