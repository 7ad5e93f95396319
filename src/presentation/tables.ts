import type { MultiPolygon, Plan, Scenario } from '../engine/index.ts';
import { allocationCsv } from './exports/allocation-csv.ts';
import { deliveriesCsv } from './exports/deliveries-csv.ts';
import { needsCsv } from './exports/needs-csv.ts';
import { ordersCsv } from './exports/orders-csv.ts';
import { pickListCsv } from './exports/pick-list-csv.ts';
import { problemsCsv } from './exports/problems-csv.ts';
import { routesGeojson } from './exports/routes-geojson.ts';
import { zonesCsv } from './exports/zones-csv.ts';
import { zonesGeojson } from './exports/zones-geojson.ts';
import { orderList } from './views/order-list.ts';
import { english } from './wording/words.ts';

/** The order list as sentences, plain spaces: to be read, printed or sent to a buyer. */
function orderListText(plan: Plan, scenario: Scenario): string {
  const { lines, total } = orderList(plan, scenario, english);
  return `${[...lines.map(({ text }) => text), total].join('\n').replaceAll('\u00a0', ' ')}\n`;
}

/** A plan document as it is written. */
export const planText = (plan: Plan): string => `${JSON.stringify(plan)}\n`;

const outlinesAsSent = ({ zones }: Scenario) =>
  zones.map(({ geometry }) => (geometry.kind === 'area' ? geometry.polygons : null));

/**
 * Files that a plan can be saved as, by name; each is made when asked for. Zones are drawn by their mended outlines where
 * the caller holds them, else as they were sent.
 */
export function planTables(
  plan: Plan,
  scenario: Scenario,
  zonePolygons: readonly (MultiPolygon | null)[] = outlinesAsSent(scenario),
): Readonly<Record<string, () => string>> {
  const kindOf = (productId: string) => scenario.products.find(({ id }) => id === productId)?.kind ?? 'seed';
  const lotKind = scenario.lots.map(({ productId }) => kindOf(productId));
  const depots = scenario.depots.map(({ position }) => position);
  return {
    'plan.json': () => planText(plan),
    'needs.csv': () => needsCsv(plan),
    'allocation.csv': () => allocationCsv(plan, lotKind),
    'pick-list.csv': () => pickListCsv(plan, scenario),
    'orders.csv': () => ordersCsv(plan),
    'order-list.txt': () => orderListText(plan, scenario),
    'deliveries.csv': () => deliveriesCsv(plan),
    'zones.csv': () => zonesCsv(plan),
    'zones.geojson': () => zonesGeojson(plan, zonePolygons),
    'routes.geojson': () => routesGeojson(plan, scenario.roads, depots),
    'problems.csv': () => problemsCsv(plan.problems),
  };
}
