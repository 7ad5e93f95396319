import type { Plan } from '../../engine/index.ts';
import { idAt } from './id-at.ts';

/** What is said of each zone, in the columns of zones.csv; the last row may stand for the land outside all zones. */
export const ZONE_COLUMNS = [
  'zone_id',
  'communities',
  'farmers',
  'planned_ha',
  'seed_kg',
  'inoculant_packs',
  'share_met',
  'hectares_reached',
  'nitrogen_kg_p10',
  'nitrogen_kg_p50',
  'nitrogen_kg_p90',
] as const;

export function zoneRows({ ids, outcomes }: Plan): (string | number | null)[][] {
  const { zones } = outcomes;
  return zones.zone.map((zone, row) => {
    const nitrogen = zones.nitrogenKg[row];
    return [
      idAt(ids.zones, zone),
      zones.communities[row] ?? null,
      zones.farmers[row] ?? null,
      zones.plannedHa[row] ?? null,
      zones.seedKg[row] ?? null,
      zones.inoculantPacks[row] ?? null,
      zones.shareMet[row] ?? null,
      zones.reachedHa[row] ?? null,
      nitrogen?.p10 ?? null,
      nitrogen?.p50 ?? null,
      nitrogen?.p90 ?? null,
    ];
  });
}
