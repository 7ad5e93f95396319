import type { Needs, Plan } from '../vocabulary/index.ts';
import { roundAll } from './rounding.ts';

export function recordNeeds(needs: Needs): Plan['needs'] {
  return {
    zone: Array.from(needs.zone),
    community: Array.from(needs.community),
    crop: Array.from(needs.crop),
    plannedHa: roundAll(needs.plannedHa, 'hectares'),
    seedKg: roundAll(needs.seedKg, 'kilograms'),
    ownSeedKg: roundAll(needs.ownSeedKg, 'kilograms'),
    inoculantG: roundAll(needs.inoculantG, 'grams'),
    product: Array.from(needs.product),
    packsNeeded: roundAll(needs.packsNeeded, 'packs'),
    stickerPacks: roundAll(needs.stickerPacks, 'packs'),
    waterL: roundAll(needs.waterL, 'litres'),
    fertiliserKg: roundAll(needs.fertiliserKg, 'kilograms'),
  };
}
