import { clockText, type Plan } from '../../engine/index.ts';
import { consignmentName } from './consignment-name.ts';
import { type CsvCell, csvText } from './csv-text.ts';
import { idAt } from './id-at.ts';

const HEADER = [
  'date',
  'vehicle_id',
  'trip',
  'stop',
  'community_id',
  'consignment_id',
  'lot_id',
  'packs',
  'arrive',
  'depart',
  'load_kg',
  'box_max_c',
  'log10_loss',
  'leave',
  'leave_by',
];

/**
 * Deliveries as CSV: one row per stop, load and lot. Stops count from 1 within a trip; `leave`, `leave_by`
 * (the latest minute at which no rule breaks), `arrive` and `depart` are local clock times; `load_kg` is what the vehicle carries on arrival; `box_max_c` and `log10_loss` stand where inoculant is
 * aboard.
 */
export function deliveriesCsv(plan: Plan): string {
  const { ids, delivery } = plan;
  const { trips, stops } = delivery;
  let stop = 0;
  const rows = stops.trip.flatMap((trip, row) => {
    stop = trip === stops.trip[row - 1] ? stop + 1 : 1;
    const start: CsvCell[] = [
      trips.date[trip] ?? null,
      idAt(ids.vehicles, trips.vehicle[trip]),
      trips.trip[trip] ?? null,
      stop,
    ];
    const end: CsvCell[] = [
      clockText(stops.arriveMinute[row] ?? 0),
      clockText(stops.departMinute[row] ?? 0),
      stops.loadKg[row] ?? null,
      stops.packMaxC[row] ?? null,
      stops.log10Loss[row] ?? null,
      clockText(trips.leaveMinute[trip] ?? 0),
      clockText(trips.latestLeaveMinute[trip] ?? 0),
    ];
    return (stops.loads[row] ?? []).flatMap((load) =>
      loadRows(plan, load).map((cells) => [...start, ...cells, ...end]),
    );
  });
  return csvText(HEADER, rows);
}

/** Community, consignment, lot and packs of each lot of a load; packs of one lot for several crops are added up. */
function loadRows({ ids, allocation, delivery }: Plan, load: number): CsvCell[][] {
  const consignment = delivery.loads.consignment[load] ?? -1;
  const packsOfLot = new Map<number, number>();
  delivery.loads.grants[load]?.forEach((grant, i) => {
    const lot = allocation.grants.lot[grant] ?? -1;
    packsOfLot.set(lot, (packsOfLot.get(lot) ?? 0) + (delivery.loads.packs[load]?.[i] ?? 0));
  });
  return [...packsOfLot].map(([lot, packs]) => [
    idAt(ids.communities, allocation.consignments.community[consignment]),
    consignmentName(ids, allocation.consignments, consignment),
    idAt(ids.lots, lot),
    packs,
  ]);
}
