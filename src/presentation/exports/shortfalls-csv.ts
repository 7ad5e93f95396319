import type { Plan } from '../../engine/index.ts';
import { csvText } from './csv-text.ts';
import { idAt } from './id-at.ts';

const HEADER = ['community_id', 'crop', 'commodity', 'short_kg', 'hectares', 'reason', 'product_id'];

/** Shortfalls as CSV, one row per community, crop and reason. `short_kg` is kg of seed: missing, or not coated. */
export function shortfallsCsv({ ids, allocation: { shares, shortfalls } }: Plan): string {
  const rows = shortfalls.shareRow.map((shareRow, i) => [
    idAt(ids.communities, shares.community[shareRow]),
    idAt(ids.crops, shares.crop[shareRow]),
    shortfalls.commodity[i] ?? null,
    shortfalls.shortKg[i] ?? null,
    shortfalls.hectares[i] ?? null,
    shortfalls.reason[i] ?? null,
    idAt(ids.products, shortfalls.product[i]),
  ]);
  return csvText(HEADER, rows);
}
