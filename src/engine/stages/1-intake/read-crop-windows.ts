import { dayFromCivil, dayOfMonthDay, parseIsoDate, parseMonthDay } from '../../vocabulary/calendar.ts';
import { CROPS } from '../../vocabulary/crops.ts';
import type { TableRecords } from '../../vocabulary/records.ts';
import type { CropWindow } from '../../vocabulary/scenario.ts';
import { byContent, byNumber, byText, inOrder, type Order } from './canonical-order.ts';
import { type CellKind, TEXT, whole, word } from './cell-kinds.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepRows, openTable } from './open-records.ts';
import type { IdList } from './require-known.ts';
import type { KeptRow, RowReader } from './row-reader.ts';

const FORMAT = 'zone_id, crop*, season, anchor*, first_offset_days*, last_offset_days*';
const OFFSET = whole({ atLeast: -366, atMost: 366 });

/** crop-windows.csv: windows of crops that do not follow the onset. */
export function readCropWindows(
  report: IntakeReport,
  records: TableRecords | null,
  known: { readonly zones: IdList; readonly seasons: readonly string[]; readonly seasonYear: number },
): KeptRow<CropWindow>[] {
  return keepRows(openTable(report, records, FORMAT), (row) => {
    const firstOffsetDays = row.required('first_offset_days', OFFSET);
    const lastOffsetDays = row.required('last_offset_days', OFFSET);
    if (firstOffsetDays > lastOffsetDays) {
      const facts = { first: 'first_offset_days', from: firstOffsetDays };
      row.reject('E1306', { column: 'last_offset_days', value: row.text('last_offset_days'), facts });
    }
    return row.kept<CropWindow>({
      zoneId: oneOf(row, 'zone_id', 'zones', known.zones),
      crop: row.required('crop', word(CROPS)),
      season: oneOf(row, 'season', 'seasons', new Set(known.seasons)),
      anchor: row.required('anchor', anchorOf(known.seasonYear)),
      firstOffsetDays,
      lastOffsetDays,
    });
  });
}

/** Blank: every zone or season. A name that is not there sets the window aside: it was meant for that one alone. */
function oneOf(row: RowReader, column: string, part: string, names: IdList): string | null {
  const name = row.orNull(column, TEXT, 'row');
  if (name !== null && !names.has(name)) row.reject('E1308', { column, value: name, facts: { part } });
  return name;
}

/** `onset`, `cessation`, a day as `YYYY-MM-DD` or `MM-DD`, or the word `date`: 1 January of the season's year (assumed). */
const anchorOf = (seasonYear: number): CellKind<CropWindow['anchor']> => ({
  none: { kind: 'onset' },
  read: (text) => {
    const monthDay = parseMonthDay(text);
    const day = monthDay === null ? parseIsoDate(text) : dayOfMonthDay(seasonYear, monthDay);
    if (day !== null) return { value: { kind: 'date', on: day } };
    const found = word(['onset', 'cessation', 'date']).read(text);
    if ('fault' in found) return found;
    return {
      value: found.value === 'date' ? { kind: 'date', on: dayFromCivil(seasonYear, 1, 1) } : { kind: found.value },
    };
  },
});

export const cropWindowOrder = (zoneIndex: ReadonlyMap<string, number>): Order<CropWindow> =>
  inOrder(
    byNumber((window) => CROPS.indexOf(window.crop)),
    byNumber(({ zoneId }) => (zoneId === null ? -1 : (zoneIndex.get(zoneId) ?? -1))),
    byContent(({ zoneId, ...content }) => content),
    byText((window) => window.zoneId ?? ''),
  );
