import type { TableRecords } from '../../vocabulary/records.ts';
import type { Depot } from '../../vocabulary/scenario.ts';
import { byContent, byPosition, byText, inOrder, type Order } from './canonical-order.ts';
import { CLOCK, number, TEXT, word } from './cell-kinds.ts';
import {
  DEPOT_CLOSES,
  DEPOT_KIND,
  DEPOT_OPENS,
  LOADING_MINUTES_PER_T,
  NO_COOL_STORE,
  NO_ICE,
  NO_OUTAGE,
} from './defaults.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepOnePerId } from './keep-one-per-id.ts';
import { keepRows, openTable } from './open-records.ts';
import { readLatLon } from './read-position.ts';
import type { KeptRow } from './row-reader.ts';

const FORMAT =
  'depot_id*, name*, lat*, lon*, kind, opens, closes, cool_store_litres, cool_store_c, ice_kg_per_day, outage_hours, ' +
  'loading_minutes_per_t, elevation_m';
const AMOUNT = number({ atLeast: 0 });

/** depots.csv */
export function readDepots(report: IntakeReport, records: TableRecords | null): KeptRow<Depot>[] {
  const depots = keepRows(openTable(report, records, FORMAT), (row) => {
    const opens = row.orDefault('opens', CLOCK, DEPOT_OPENS);
    const closes = row.orDefault('closes', CLOCK, DEPOT_CLOSES);
    if (opens >= closes) {
      row.reject('E1306', {
        column: 'closes',
        value: row.text('closes'),
        facts: { first: 'opens', from: row.text('opens') },
      });
    }
    return row.kept<Depot>({
      id: row.required('depot_id', TEXT),
      name: row.required('name', TEXT),
      position: readLatLon(row),
      kind: row.orDefault('kind', word(['depot', 'seed_group']), DEPOT_KIND),
      opens,
      closes,
      coolStoreLitres: row.orDefault('cool_store_litres', AMOUNT, NO_COOL_STORE),
      coolStoreC: row.orNull('cool_store_c', number({ atLeast: -30, atMost: 50 })),
      iceKgPerDay: row.orDefault('ice_kg_per_day', AMOUNT, NO_ICE),
      outageHours: row.orDefault('outage_hours', number({ atLeast: 0, atMost: 24 }), NO_OUTAGE),
      loadingMinutesPerT: row.orDefault('loading_minutes_per_t', AMOUNT, LOADING_MINUTES_PER_T),
      elevationM: row.orNull('elevation_m', number({ atLeast: -500, atMost: 9000 })),
    });
  });
  return keepOnePerId(report, 'depot_id', depots);
}

export const DEPOT_ORDER: Order<Depot> = inOrder(
  byPosition((depot) => depot.position),
  byContent(({ id, name, ...content }) => content),
  byText((depot) => depot.name),
  byText((depot) => depot.id),
);
