import type { TableRecords } from '../../vocabulary/records.ts';
import type { HandoverPoint } from '../../vocabulary/scenario.ts';
import { byContent, byPosition, byText, inOrder, type Order } from './canonical-order.ts';
import { CLOCK, listOf, TEXT, word } from './cell-kinds.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepOnePerId } from './keep-one-per-id.ts';
import { keepRows, openTable } from './open-records.ts';
import { STORES } from './read-communities.ts';
import { readLatLon } from './read-position.ts';
import { readSpan } from './read-span.ts';
import type { KeptRow, RowReader } from './row-reader.ts';

const FORMAT = 'point_id*, name*, lat*, lon*, communities*, opens, closes, store, contact';

/** handover-points.csv. `communityIndex`: place of each community in the scenario, in which those of a point are listed. */
export function readHandoverPoints(
  report: IntakeReport,
  records: TableRecords | null,
  communityIndex: ReadonlyMap<string, number>,
): KeptRow<HandoverPoint>[] {
  const points = keepRows(openTable(report, records, FORMAT), (row) => {
    const [opens, closes] = readSpan(row, ['opens', 'closes'], CLOCK);
    return row.kept<HandoverPoint>({
      id: row.required('point_id', TEXT),
      name: row.required('name', TEXT),
      position: readLatLon(row),
      communityIds: readCommunityIds(row, communityIndex),
      opens,
      closes,
      store: row.orNull('store', word(STORES)),
      contact: row.orNull('contact', TEXT),
    });
  });
  return keepOnePerId(report, 'point_id', points);
}

function readCommunityIds(row: RowReader, communityIndex: ReadonlyMap<string, number>): readonly string[] {
  const ids = row.required('communities', listOf(TEXT));
  for (const id of ids) {
    if (communityIndex.has(id)) continue;
    row.setValueAside('E1308', { column: 'communities', value: id, facts: { part: 'communities' } });
  }
  const place = (id: string): number => communityIndex.get(id) ?? -1;
  const known = [...new Set(ids)].filter((id) => place(id) >= 0).sort((a, b) => place(a) - place(b));
  if (known.length === 0 && !row.isRejected) {
    row.reject('E1308', { column: 'communities', value: row.text('communities'), facts: { part: 'communities' } });
  }
  return known;
}

/** Points in their order, each community at the first that names it. */
export function collectOnce(
  report: IntakeReport,
  points: readonly KeptRow<HandoverPoint>[],
  order: Order<HandoverPoint>,
): readonly HandoverPoint[] {
  const taken = new Map<string, string>();
  return [...points]
    .sort((a, b) => order(a.value, b.value))
    .map(({ file, row, value }) => {
      const communityIds = value.communityIds.filter((id) => {
        const other = taken.get(id);
        if (other !== undefined) {
          report.add('E1411', { file, row, column: 'communities', value: id, facts: { kept: other } });
        } else taken.set(id, value.id);
        return other === undefined;
      });
      return { ...value, communityIds };
    })
    .filter(({ communityIds }) => communityIds.length > 0);
}

export const handoverPointOrder = (communityIndex: ReadonlyMap<string, number>): Order<HandoverPoint> =>
  inOrder(
    byPosition((point) => point.position),
    byContent(({ id, name, contact, communityIds, ...content }) => [
      content,
      communityIds.map((communityId) => communityIndex.get(communityId)),
    ]),
    byText((point) => point.name),
    byText((point) => point.id),
  );
