import { COLD_LIFE_AMBIENT_CELSIUS } from '../../reference/boxes.ts';
import { uaFromColdLife } from '../../science/box.ts';
import type { Vehicle } from '../../vocabulary/fleet.ts';
import { CARRIAGES } from '../../vocabulary/fleet.ts';
import { ROAD_CLASSES } from '../../vocabulary/places.ts';
import type { TableRecords } from '../../vocabulary/records.ts';
import { byContent, byNumber, byText, inOrder, type Order } from './canonical-order.ts';
import { CLOCK, DATE, number, TEXT, whole, word, wordList } from './cell-kinds.ts';
import {
  CARRIAGE,
  CONDITIONED_ICE,
  CREW,
  MAX_HOURS,
  NO_BOX,
  NO_COST,
  NO_ICE,
  PARKED,
  SHIFT_START,
} from './defaults.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepOnePerId } from './keep-one-per-id.ts';
import { keepRows, openTable } from './open-records.ts';
import { readSpan } from './read-span.ts';
import { type IdList, requireKnown } from './require-known.ts';
import type { CellDefault, KeptRow, RowReader } from './row-reader.ts';

const FORMAT =
  'vehicle_id*, kind*, depot_id*, payload_kg*, cool_litres, cool_ua_w_per_k, cold_life_h, ice_kg, packs_c, carriage, ' +
  'parked, cost_per_km, cost_per_day, crew, per_diem, shift_start, max_hours, roads_allowed*, available_from, available_to, count';
const AMOUNT = number({ atLeast: 0 });

/** A row of the fleet before it is counted out into vehicles. */
export interface VehicleRow extends Vehicle {
  /** Null: one vehicle under the row's own id. */
  readonly count: number | null;
}

/** vehicles.csv. `perDiem`: what the scenario pays where a row does not say. */
export function readVehicles(
  report: IntakeReport,
  records: TableRecords | null,
  known: { readonly depots: IdList; readonly perDiem: CellDefault },
): KeptRow<VehicleRow>[] {
  const rows = keepRows(openTable(report, records, FORMAT), (row) => {
    const [availableFrom, availableTo] = readSpan(row, ['available_from', 'available_to'], DATE, 'row');
    return row.kept<VehicleRow>({
      id: row.required('vehicle_id', TEXT),
      kind: row.required('kind', TEXT),
      depotId: requireKnown(row, 'depot_id', 'depots', known.depots),
      payloadKg: readPayload(row),
      coolLitres: row.orDefault('cool_litres', AMOUNT, NO_BOX),
      ...readBox(row),
      carriage: row.orDefault('carriage', word(CARRIAGES), CARRIAGE),
      parksInShade: row.orDefault('parked', word(['sun', 'shade']), PARKED) === 'shade',
      costPerKm: row.orDefault('cost_per_km', AMOUNT, NO_COST),
      costPerDay: row.orDefault('cost_per_day', AMOUNT, NO_COST),
      crew: row.orDefault('crew', AMOUNT, CREW),
      perDiem: row.orDefault('per_diem', AMOUNT, known.perDiem),
      shiftStart: row.orDefault('shift_start', CLOCK, SHIFT_START),
      maxHours: row.orDefault('max_hours', number({ above: 0, atMost: 24 }), MAX_HOURS),
      roadsAllowed: row.required('roads_allowed', wordList(ROAD_CLASSES)),
      availableFrom,
      availableTo,
      count: row.orNull('count', whole({ atLeast: 1, atMost: 1000 }), 'row'),
    });
  });
  return keepOnePerId(report, 'vehicle_id', rows);
}

/**
 * The box's insulation as stated, else from its rated cold life: the hours that its ice lasts at 43 °C. That rating is no
 * limit of travel. Packs straight from a freezer are reckoned as ice at 0 °C and said: they can freeze what they touch.
 */
function readBox(row: RowReader): Pick<Vehicle, 'coolUaWPerK' | 'iceKg' | 'coolantC'> {
  const iceKg = row.orDefault('ice_kg', AMOUNT, NO_ICE);
  const stated = row.orNull('cool_ua_w_per_k', number({ above: 0 }));
  const hours = row.orNull('cold_life_h', number({ above: 0, atMost: 400 }));
  if (hours !== null && iceKg === 0)
    row.setValueAside('E1802', { column: 'cold_life_h', value: row.text('cold_life_h') });
  const rated = hours !== null && iceKg > 0 ? uaFromColdLife(iceKg, hours, COLD_LIFE_AMBIENT_CELSIUS.value) : null;
  const packsC = row.orDefault('packs_c', number({ atLeast: -40, atMost: 20 }), CONDITIONED_ICE);
  if (packsC < 0) row.note('E1801', { column: 'packs_c', value: row.text('packs_c') });
  return { coolUaWPerK: stated ?? rated, iceKg, coolantC: Math.max(0, packsC) };
}

function readPayload(row: RowReader): number {
  const payloadKg = row.required('payload_kg', number());
  if (payloadKg <= 0) row.reject('E1800', { column: 'payload_kg', value: row.text('payload_kg') });
  return payloadKg;
}

/** Rows in their order, each counted out: a row with `count` n gives ID#1 to ID#n. */
export function countOut(
  report: IntakeReport,
  rows: readonly KeptRow<VehicleRow>[],
  order: Order<VehicleRow>,
): readonly Vehicle[] {
  const vehicles = [...rows]
    .sort((a, b) => order(a.value, b.value))
    .flatMap(({ file, row, value: { count, ...vehicle } }) => {
      const ids = count === null ? [vehicle.id] : Array.from({ length: count }, (_, k) => `${vehicle.id}#${k + 1}`);
      return ids.map((id): KeptRow<Vehicle> => ({ file, row, value: { ...vehicle, id } }));
    });
  return keepOnePerId(report, 'vehicle_id', vehicles).map(({ value }) => value);
}

export const vehicleOrder = (depotIndex: ReadonlyMap<string, number>): Order<VehicleRow> =>
  inOrder(
    byNumber((vehicle) => depotIndex.get(vehicle.depotId) as number),
    byContent(({ id, depotId, ...content }) => content),
    byText((vehicle) => vehicle.id),
  );
