import type { Plan } from '../../engine/index.ts';
import { csvText } from './csv-text.ts';
import { idAt } from './id-at.ts';

const COLUMNS = [
  'order_by',
  'product_id',
  'depot_id',
  'packs',
  'packs_wanted',
  'cost',
  'arrives',
  'useful_until',
  'last_order_day',
  'chance_in_time',
  'hectares',
  'packs_at_once',
  'verdict',
];

/** orders.csv: one line a product and depot, by the day it is to be ordered. */
export function ordersCsv({ ids, allocation: { orders } }: Plan): string {
  return csvText(
    COLUMNS,
    orders.product.map((product, row) => [
      orders.orderBy[row] ?? '',
      idAt(ids.products, product),
      idAt(ids.depots, orders.depot[row] ?? -1),
      orders.packs[row] ?? 0,
      orders.packsWanted[row] ?? 0,
      orders.cost[row] ?? null,
      orders.arrives[row] ?? '',
      orders.usefulUntil[row] ?? '',
      orders.lastOrderDay[row] ?? '',
      orders.chanceInTime[row] ?? 0,
      orders.hectares[row] ?? 0,
      orders.packsAtOnce[row] ?? null,
      orders.verdict[row] ?? '',
    ]),
  );
}
