import type { CropHandover } from './handover-goods.ts';

/** Batches that every sheet lists, kg of seed. */
export const LADDER_KG = [1, 2, 5, 10] as const;

/** Seed that one grower coats, in half kilograms; without a count of growers what one pack coats; at least half a kilogram. */
export function growerBatchKg({ coatedKg, sharing, inoculant, rates }: CropHandover): number {
  const growers = sharing.every((share) => share.growers !== null)
    ? sharing.reduce((sum, { growers: count }) => sum + (count ?? 0), 0)
    : 0;
  const [first] = inoculant;
  const packCoatsKg = first && rates ? first.product.packG / rates.doseGPerKg : coatedKg;
  const batch = growers > 0 ? coatedKg / growers : Math.min(packCoatsKg, coatedKg);
  return Math.max(0.5, Math.floor(batch * 2 + 1e-9) / 2);
}
