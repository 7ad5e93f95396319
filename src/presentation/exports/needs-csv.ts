import type { Plan } from '../../engine/index.ts';
import { csvText } from './csv-text.ts';
import { idAt } from './id-at.ts';

const HEADER = [
  'zone_id',
  'community_id',
  'crop',
  'planned_ha',
  'seed_kg',
  'own_seed_kg',
  'inoculant_g',
  'product_id',
  'packs_needed',
  'sticker_packs',
  'water_l',
  'fertiliser_kg',
];

/** Needs as CSV: one row per zone, community and crop; zone_id blank outside all zones, product_id the reference product. */
export function needsCsv({ ids, needs }: Plan): string {
  const rows = needs.community.map((community, row) => [
    idAt(ids.zones, needs.zone[row]),
    idAt(ids.communities, community),
    idAt(ids.crops, needs.crop[row]),
    needs.plannedHa[row] ?? null,
    needs.seedKg[row] ?? null,
    needs.ownSeedKg[row] ?? null,
    needs.inoculantG[row] ?? null,
    idAt(ids.products, needs.product[row]),
    needs.packsNeeded[row] ?? null,
    needs.stickerPacks[row] ?? null,
    needs.waterL[row] ?? null,
    needs.fertiliserKg[row] ?? null,
  ]);
  return csvText(HEADER, rows);
}
