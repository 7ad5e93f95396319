import type { Plan } from '../../engine/index.ts';
import { csvText } from './csv-text.ts';
import { ZONE_COLUMNS, zoneRows } from './zone-rows.ts';

/** Zones as CSV: what each gets and gives; a row with a blank zone_id stands for land outside all zones. */
export function zonesCsv(plan: Plan): string {
  return csvText(ZONE_COLUMNS, zoneRows(plan));
}
