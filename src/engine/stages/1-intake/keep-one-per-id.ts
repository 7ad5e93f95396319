import type { IntakeReport } from './intake-report.ts';
import type { KeptRow } from './row-reader.ts';

/**
 * Keeps one row of each id and sets the others aside. Where rows of one id differ, the one whose content comes first as
 * text is kept, not the one that stands first in the file: else reordering rows would change the plan.
 */
export function keepOnePerId<T extends { readonly id: string }>(
  report: IntakeReport,
  column: string,
  rows: readonly KeptRow<T>[],
): KeptRow<T>[] {
  const kept = new Map<string, KeptRow<T>>();
  for (const row of rows) {
    const rival = kept.get(row.value.id);
    kept.set(row.value.id, rival === undefined || comesBefore(row, rival) ? row : rival);
  }
  return rows.filter((row) => {
    const chosen = kept.get(row.value.id);
    if (chosen === undefined || chosen === row) return true;
    const facts = { keptRow: chosen.row, scope: 'row' };
    report.add('E1307', { file: row.file, row: row.row, column, value: row.value.id, facts });
    return false;
  });
}

function comesBefore<T>(a: KeptRow<T>, b: KeptRow<T>): boolean {
  const [x, y] = [JSON.stringify(a.value), JSON.stringify(b.value)];
  return x < y || (x === y && a.row < b.row);
}
