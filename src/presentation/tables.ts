import type { Plan, Scenario } from '../engine/index.ts';
import { allocationCsv } from './exports/allocation-csv.ts';
import { deliveriesCsv } from './exports/deliveries-csv.ts';
import { needsCsv } from './exports/needs-csv.ts';
import { problemsCsv } from './exports/problems-csv.ts';
import { routesGeojson } from './exports/routes-geojson.ts';
import { zonesCsv } from './exports/zones-csv.ts';
import { zonesGeojson } from './exports/zones-geojson.ts';

/** Files that a plan can be saved as, by name; each is made when asked for. */
export function planTables(plan: Plan, scenario: Scenario): Readonly<Record<string, () => string>> {
  const kindOf = (productId: string) => scenario.products.find(({ id }) => id === productId)?.kind ?? 'seed';
  const lotKind = scenario.lots.map(({ productId }) => kindOf(productId));
  const depots = scenario.depots.map(({ position }) => position);
  const zonePolygons = scenario.zones.map(({ geometry }) => (geometry.kind === 'area' ? geometry.polygons : null));
  return {
    'plan.json': () => `${JSON.stringify(plan)}\n`,
    'needs.csv': () => needsCsv(plan),
    'allocation.csv': () => allocationCsv(plan, lotKind),
    'deliveries.csv': () => deliveriesCsv(plan),
    'zones.csv': () => zonesCsv(plan),
    'zones.geojson': () => zonesGeojson(plan, zonePolygons),
    'routes.geojson': () => routesGeojson(plan, scenario.roads, depots),
    'problems.csv': () => problemsCsv(plan.problems),
  };
}
