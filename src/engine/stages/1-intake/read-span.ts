import type { CellKind } from './cell-kinds.ts';
import type { IfBad, RowReader } from './row-reader.ts';

/**
 * Two cells, first and last of a span of days or hours, each null where blank. Where the last comes before the first,
 * both are set aside, or the row is.
 */
export function readSpan<T extends number>(
  row: RowReader,
  [first, last]: readonly [string, string],
  kind: CellKind<T>,
  ifBad: IfBad = 'value',
): readonly [T | null, T | null] {
  const from = row.orNull(first, kind, ifBad);
  const to = row.orNull(last, kind, ifBad);
  if (from === null || to === null || from <= to) return [from, to];
  const place = { column: last, value: row.text(last), facts: { first, from: row.text(first) } };
  if (ifBad === 'row') row.reject('E1306', place);
  else row.setValueAside('E1306', place);
  return [null, null];
}
