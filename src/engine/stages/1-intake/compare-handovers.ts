import { isoDate } from '../../vocabulary/calendar.ts';
import type { Handover } from '../../vocabulary/scenario.ts';
import type { Lot } from '../../vocabulary/supply.ts';
import type { IntakeReport } from './intake-report.ts';
import type { KeptRow } from './row-reader.ts';

/**
 * Records of hand-overs against each other, as they meet where two people's are merged: the same one twice is counted once; two
 * that differ are both counted and said, since only who signed can tell; more than a lot held is said.
 */
export function compareHandovers(
  report: IntakeReport,
  rows: readonly KeptRow<Handover>[],
  lots: readonly Lot[],
): KeptRow<Handover>[] {
  const alike = new Map<string, string[]>();
  const kept = rows.filter(({ file, row, value }) => {
    const { date, communityId, lotId } = value;
    const key = JSON.stringify([date, communityId, lotId]);
    const content = JSON.stringify(value);
    const before = alike.get(key) ?? [];
    const place = { file, row, value: communityId };
    if (before.includes(content)) {
      report.add('E1961', { ...place, facts: { scope: 'row' } });
      return false;
    }
    const facts = { lot: lotId, community: communityId, date: isoDate(date) };
    if (before.length > 0) report.add('E1962', { ...place, facts });
    alike.set(key, [...before, content]);
    return true;
  });
  noteMoreThanHeld(report, kept, lots);
  return kept;
}

function noteMoreThanHeld(report: IntakeReport, rows: readonly KeptRow<Handover>[], lots: readonly Lot[]): void {
  for (const { id, packs: held } of lots) {
    const own = rows.filter(({ value }) => value.lotId === id);
    const packs = own.reduce((sum, { value }) => sum + value.packs - value.returnedPacks, 0);
    const last = own.at(-1);
    if (packs <= held || !last) continue;
    report.add('E1963', {
      file: last.file,
      row: last.row,
      column: 'packs',
      value: id,
      facts: { lot: id, packs, held },
    });
  }
}
