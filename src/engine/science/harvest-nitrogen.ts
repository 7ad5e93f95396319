import {
  GRAIN_DRY_FRACTION,
  GRAIN_N_PERCENT,
  KERNEL_FRACTION,
  RESIDUES,
  type ResidueCoefficients,
} from '../reference/harvest-nitrogen.ts';
import type { Crop } from '../vocabulary/crops.ts';

/** Nitrogen that leaves the field with each t of grain as harvested (groundnut in shell), kg. */
export function grainNitrogenKgPerT(crop: Crop): number {
  const kernel = crop === 'groundnut' ? KERNEL_FRACTION.value : 1;
  return 1000 * GRAIN_DRY_FRACTION.value * kernel * (GRAIN_N_PERCENT[crop].value / 100);
}

export interface ResidueEstimate {
  readonly aboveDryKg: number;
  readonly belowDryKg: number;
  readonly nitrogenKg: number;
}

/**
 * Nitrogen in what a hectare's crop leaves behind, kg, by the inventory method of the IPCC (annual crop). Another quantity than
 * nitrogen fixed: it holds nitrogen from the soil as well, and the two are neither added nor exchanged.
 *
 * @param grainKgPerHa as harvested
 * @param removed fraction of the straw taken off the field
 */
export function estimateResidue(c: ResidueCoefficients, grainKgPerHa: number, removed = 0): ResidueEstimate {
  const cropDryKg = grainKgPerHa * GRAIN_DRY_FRACTION.value;
  const aboveDryKg = cropDryKg * c.slope + c.interceptT * 1000;
  const belowDryKg = (cropDryKg + aboveDryKg) * c.rootShoot;
  return { aboveDryKg, belowDryKg, nitrogenKg: aboveDryKg * c.nAbove * (1 - removed) + belowDryKg * c.nBelow };
}

/** The same as a straight line in the grain: kg per hectare sown, and kg per t of grain. Null where no coefficients are given. */
export function residueLine(crop: Crop): { readonly perHa: number; readonly perT: number } | null {
  const coefficients = RESIDUES[crop]?.value;
  if (!coefficients) return null;
  const perHa = estimateResidue(coefficients, 0).nitrogenKg;
  return { perHa, perT: estimateResidue(coefficients, 1000).nitrogenKg - perHa };
}
