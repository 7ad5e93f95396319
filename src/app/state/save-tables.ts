import { saveFile } from '../../adapters/browser/save-file.ts';
import type { Decision, Plan, Scenario } from '../../engine/index.ts';

export const TABLE_NAMES = [
  'plan.json',
  'needs.csv',
  'allocation.csv',
  'orders.csv',
  'deliveries.csv',
  'zones.csv',
  'zones.geojson',
  'routes.geojson',
  'problems.csv',
] as const;
export type TableName = (typeof TABLE_NAMES)[number];

/** Saves a table of the plan. What makes it is loaded when it is first asked for. */
export async function saveTable(name: TableName, plan: Plan, scenario: Scenario): Promise<void> {
  const { planTables } = await import('../../presentation/tables.ts');
  saveFile(name, planTables(plan, scenario)[name]?.() ?? '');
}

/** The decisions as a file that a scenario folder can hold. */
export function saveDecisions(decisions: readonly Decision[]): void {
  saveFile('decisions.json', `${JSON.stringify({ format: 'nodulary-decisions/1', decisions }, null, 2)}\n`);
}
