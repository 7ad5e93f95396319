import type { TableRecords } from '../../vocabulary/records.ts';
import type { Handover } from '../../vocabulary/scenario.ts';
import type { DayNumber } from '../../vocabulary/units.ts';
import { byContent, byNumber, inOrder, type Order } from './canonical-order.ts';
import { DATE, number, whole } from './cell-kinds.ts';
import { NOTHING_RETURNED } from './defaults.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepRows, openTable } from './open-records.ts';
import { type IdList, requireKnown } from './require-known.ts';
import type { KeptRow } from './row-reader.ts';

const FORMAT = 'date*, community_id*, lot_id*, packs*, kg, box_c, returned_packs, sown_on';
const COUNT = whole({ atLeast: 0 });

/** handovers.csv: what was signed for. What has not happened yet is never said to have. */
export function readHandovers(
  report: IntakeReport,
  records: TableRecords | null,
  known: { readonly communities: IdList; readonly lots: IdList; readonly asOf: DayNumber },
): KeptRow<Handover>[] {
  return keepRows(openTable(report, records, FORMAT), (row) => {
    const date = row.required('date', DATE);
    if (date > known.asOf) row.reject('E1960', { column: 'date', value: row.text('date') });
    const packs = row.required('packs', COUNT);
    const returnedPacks = row.orDefault('returned_packs', COUNT, NOTHING_RETURNED);
    if (returnedPacks > packs) {
      row.reject('E1302', { column: 'returned_packs', value: row.text('returned_packs'), facts: { atMost: packs } });
    }
    return row.kept<Handover>({
      date,
      communityId: requireKnown(row, 'community_id', 'communities', known.communities),
      lotId: requireKnown(row, 'lot_id', 'lots', known.lots),
      packs,
      kg: row.orNull('kg', number({ atLeast: 0 })),
      boxC: row.orNull('box_c', number({ atLeast: -40, atMost: 80 })),
      returnedPacks,
      sownOn: row.orNull('sown_on', DATE),
    });
  });
}

export const handoverOrder = (
  communityIndex: ReadonlyMap<string, number>,
  lotIndex: ReadonlyMap<string, number>,
): Order<Handover> =>
  inOrder(
    byNumber((handover) => handover.date),
    byNumber((handover) => communityIndex.get(handover.communityId) as number),
    byNumber((handover) => lotIndex.get(handover.lotId) as number),
    byContent(({ communityId, lotId, ...content }) => content),
  );
