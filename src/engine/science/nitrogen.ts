import { log } from '../numerics/elementary.ts';
import {
  EARLIER_NITROGEN_COEFFICIENTS,
  HARVEST_INDEX_LIMITS,
  type NdfaRegion,
  NITROGEN_COEFFICIENTS,
  SOYBEAN_NDFA,
} from '../reference/nitrogen-coefficients.ts';
import type { Crop } from '../vocabulary/crops.ts';

/** The steps from grain to nitrogen fixed, for one hectare. */
export interface NitrogenEstimate {
  readonly harvestIndex: number;
  readonly shootDryMatterT: number;
  readonly shootNPercent: number;
  readonly shootNKg: number;
  /** Shoots and roots. */
  readonly cropNKg: number;
  readonly ndfaPercent: number;
  readonly fixedKg: number;
}

/**
 * Nitrogen fixed by a hectare of a crop, from its grain yield in t per ha (groundnut in shell), by Herridge et al. 2022:
 * shoot dry matter = grain / harvest index; shoot N = dry matter * % N; crop N = shoot N * below-ground factor; fixed =
 * crop N * % from the air. Not residue nitrogen, and not fertiliser saved. The method cannot show a larger share from the
 * air where inoculation brought rhizobia that were absent.
 */
export function estimateNitrogen(
  crop: Crop,
  grainTPerHa: number,
  region: NdfaRegion = 'rest-of-world',
): NitrogenEstimate {
  const c = NITROGEN_COEFFICIENTS[crop].value;
  const { least, most } = HARVEST_INDEX_LIMITS.value;
  const harvestIndex = Math.min(most, Math.max(least, c.harvestSlope * log(grainTPerHa) + c.harvestIntercept));
  const shootDryMatterT = grainTPerHa / harvestIndex;
  const shootNPercent = c.shootNPercent - c.shootNDropPerT * shootDryMatterT;
  const shootNKg = shootDryMatterT * 1000 * (shootNPercent / 100);
  const cropNKg = shootNKg * c.belowGroundFactor;
  const ndfaPercent = crop === 'soybean' ? SOYBEAN_NDFA[region].value.percent : c.ndfaPercent;
  return {
    harvestIndex,
    shootDryMatterT,
    shootNPercent,
    shootNKg,
    cropNKg,
    ndfaPercent,
    fixedKg: cropNKg * (ndfaPercent / 100),
  };
}

/** Nitrogen fixed, kg per ha: the last step of `estimateNitrogen`, for hot loops, which must not make objects. */
export function nitrogenFixedKgPerHa(crop: Crop, grainTPerHa: number, region: NdfaRegion = 'rest-of-world'): number {
  const c = NITROGEN_COEFFICIENTS[crop].value;
  const limits = HARVEST_INDEX_LIMITS.value;
  const index = c.harvestSlope * log(grainTPerHa) + c.harvestIntercept;
  const shootDryMatterT = grainTPerHa / Math.min(limits.most, Math.max(limits.least, index));
  const shootNPercent = c.shootNPercent - c.shootNDropPerT * shootDryMatterT;
  const ndfaPercent = crop === 'soybean' ? SOYBEAN_NDFA[region].value.percent : c.ndfaPercent;
  return shootDryMatterT * 1000 * (shootNPercent / 100) * c.belowGroundFactor * (ndfaPercent / 100);
}

/** Nitrogen fixed per t of grain, kg, by the method of 2008, whose harvest index does not depend on the yield. */
export function earlierNitrogenKgPerT(crop: Crop): number {
  const { harvestIndex, shootNPercent, belowGroundFactor, ndfaPercent } = EARLIER_NITROGEN_COEFFICIENTS[crop].value;
  return (1000 / harvestIndex) * (shootNPercent / 100) * belowGroundFactor * (ndfaPercent / 100);
}
