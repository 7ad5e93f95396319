import type { TableRecords } from '../../vocabulary/records.ts';
import type { Lot, LotStatus } from '../../vocabulary/supply.ts';
import type { DayNumber } from '../../vocabulary/units.ts';
import { byContent, byNumber, byText, inOrder, type Order } from './canonical-order.ts';
import { DATE, number, TEXT, whole, word } from './cell-kinds.ts';
import { LOT_STATUS } from './defaults.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepOnePerId } from './keep-one-per-id.ts';
import { keepRows, openTable } from './open-records.ts';
import { type IdList, requireKnown } from './require-known.ts';
import type { KeptRow, RowReader } from './row-reader.ts';

const FORMAT =
  'lot_id*, product_id*, depot_id*, packs*, status, available_from, expires*, tested_count_per_g, tested_on, ' +
  'germination_percent, seed_class';
const STATUSES: readonly LotStatus[] = ['cleared', 'on_hold', 'awaiting'];

/**
 * lots.csv. What decides whether packs may be given out (status, dates, tests) sets the whole row aside where it cannot be
 * read: a lot is never taken for better than its row says.
 */
export function readLots(
  report: IntakeReport,
  records: TableRecords | null,
  known: { readonly products: IdList; readonly depots: IdList; readonly asOf: DayNumber },
): KeptRow<Lot>[] {
  const lots = keepRows(openTable(report, records, FORMAT), (row) => {
    const lot = row.kept<Lot>({
      id: row.required('lot_id', TEXT),
      productId: requireKnown(row, 'product_id', 'products', known.products),
      depotId: requireKnown(row, 'depot_id', 'depots', known.depots),
      packs: row.required('packs', whole({ atLeast: 0 })),
      status: row.orDefault('status', word(STATUSES), LOT_STATUS, 'row'),
      ...readDates(row),
      testedCountPerG: row.orNull('tested_count_per_g', number({ atLeast: 0 }), 'row'),
      germinationPercent: row.orNull('germination_percent', number({ atLeast: 0, atMost: 100 }), 'row'),
      seedClass: row.orNull('seed_class', TEXT),
    });
    if (lot !== null) noteState(row, lot.value, known.asOf);
    return lot;
  });
  noteBlankStatus(report, records);
  return keepOnePerId(report, 'lot_id', lots);
}

function readDates(row: RowReader): Pick<Lot, 'availableFrom' | 'expires' | 'testedOn'> {
  const availableFrom = row.orNull('available_from', DATE, 'row');
  const expires = row.required('expires', DATE);
  if (availableFrom !== null && availableFrom > expires) {
    const facts = { first: 'available_from', from: row.text('available_from') };
    row.reject('E1306', { column: 'expires', value: row.text('expires'), facts });
  }
  return { availableFrom, expires, testedOn: row.orNull('tested_on', DATE, 'row') };
}

function noteState(row: RowReader, lot: Lot, asOf: DayNumber): void {
  if (lot.expires < asOf) row.note('E1700', { column: 'expires', value: row.text('expires'), facts: { lot: lot.id } });
  if (lot.status !== 'cleared') row.note('E1701', { column: 'status', value: lot.status, facts: { lot: lot.id } });
  if (lot.testedOn !== null && lot.testedOn > asOf) {
    row.note('E1703', { column: 'tested_on', value: row.text('tested_on'), facts: { lot: lot.id } });
  }
}

/** One problem for the file: the rows are counted among the defaults. */
function noteBlankStatus(report: IntakeReport, records: TableRecords | null): void {
  if (records === null || records.rows.length === 0) return;
  const column = records.columns.indexOf('status');
  const count = records.rows.filter(({ cells }) => (cells[column] ?? '') === '').length;
  if (count > 0) report.add('E1702', { file: records.file, column: 'status', facts: { count } });
}

export const lotOrder = (
  depotIndex: ReadonlyMap<string, number>,
  productIndex: ReadonlyMap<string, number>,
): Order<Lot> =>
  inOrder(
    byNumber((lot) => depotIndex.get(lot.depotId) as number),
    byNumber((lot) => productIndex.get(lot.productId) as number),
    byContent(({ id, productId, depotId, ...content }) => content),
    byText((lot) => lot.id),
  );
