import { HOT_LIMIT_CELSIUS } from '../../reference/boxes.ts';
import type { TableRecords } from '../../vocabulary/records.ts';
import type { Handover } from '../../vocabulary/scenario.ts';
import type { DayNumber } from '../../vocabulary/units.ts';
import { byContent, byNumber, inOrder, type Order } from './canonical-order.ts';
import { DATE, number, TEXT, whole } from './cell-kinds.ts';
import { NOTHING_RETURNED } from './defaults.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepRows, openTable } from './open-records.ts';
import { type IdList, requireKnown } from './require-known.ts';
import type { KeptRow, RowReader } from './row-reader.ts';

const FORMAT =
  'date*, community_id*, lot_id*, packs*, kg, box_c, returned_packs, sown_on, growers, growers_women, vehicle_id, reason';
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
    const sownOn = row.orNull('sown_on', DATE);
    if (sownOn !== null && sownOn > known.asOf) {
      row.setValueAside('E1960', { column: 'sown_on', value: row.text('sown_on') });
    }
    const handover = row.kept<Handover>({
      date,
      communityId: requireKnown(row, 'community_id', 'communities', known.communities),
      lotId: requireKnown(row, 'lot_id', 'lots', known.lots),
      packs,
      kg: row.orNull('kg', number({ atLeast: 0 })),
      boxC: row.orNull('box_c', number({ atLeast: -40, atMost: 80 })),
      returnedPacks,
      sownOn: sownOn !== null && sownOn > known.asOf ? null : sownOn,
      growers: row.orNull('growers', COUNT),
      growersWomen: row.orNull('growers_women', COUNT),
      vehicleId: row.orNull('vehicle_id', TEXT),
      reason: row.orNull('reason', TEXT),
    });
    if (handover !== null) noteHotBox(row, handover.value);
    return handover;
  });
}

/** The rule of 40 °C holds for a box as for any reading. */
function noteHotBox(row: RowReader, { lotId, packs, boxC, returnedPacks }: Handover): void {
  if (boxC === null || boxC < HOT_LIMIT_CELSIUS.value) return;
  const facts = { lot: lotId, returned: returnedPacks, kept: packs - returnedPacks };
  row.note('E1964', { column: 'box_c', value: row.text('box_c'), facts });
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
