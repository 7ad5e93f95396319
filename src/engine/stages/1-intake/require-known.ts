import type { ScenarioPart } from '../../vocabulary/records.ts';
import { TEXT } from './cell-kinds.ts';
import type { RowReader } from './row-reader.ts';

/** Ids, as a set or as the keys of an index. */
export interface IdList {
  readonly has: (id: string) => boolean;
}

/** The id of a row in another file; an id that no kept row has sets this row aside. */
export function requireKnown(row: RowReader, column: string, part: ScenarioPart, ids: IdList): string {
  const id = row.required(column, TEXT);
  if (id !== '' && !ids.has(id)) row.reject('E1308', { column, value: id, facts: { part } });
  return id;
}
