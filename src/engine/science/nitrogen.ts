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

/** Nitrogen fixed, kg per ha: the last step of `estimateNitrogen`. */
export function nitrogenFixedKgPerHa(crop: Crop, grainTPerHa: number, region: NdfaRegion = 'rest-of-world'): number {
  return grainTPerHa > 0 ? estimateNitrogen(crop, grainTPerHa, region).fixedKg : 0;
}

/** The coefficients of the method over a list of crops, for loops that must put nothing on the heap. */
export interface NitrogenColumns {
  readonly harvestSlope: Float64Array;
  readonly harvestIntercept: Float64Array;
  readonly shootNPercent: Float64Array;
  readonly shootNDropPerT: Float64Array;
  readonly belowGroundFactor: Float64Array;
  readonly ndfaPercent: Float64Array;
}

export function nitrogenColumns(crops: readonly Crop[]): NitrogenColumns {
  const column = (of: Exclude<keyof NitrogenColumns, 'ndfaPercent'>) =>
    Float64Array.from(crops, (crop) => NITROGEN_COEFFICIENTS[crop].value[of]);
  return {
    harvestSlope: column('harvestSlope'),
    harvestIntercept: column('harvestIntercept'),
    shootNPercent: column('shootNPercent'),
    shootNDropPerT: column('shootNDropPerT'),
    belowGroundFactor: column('belowGroundFactor'),
    ndfaPercent: Float64Array.from(crops, (crop) => estimateNitrogen(crop, 1).ndfaPercent),
  };
}

/**
 * `nitrogenFixedKgPerHa` of many grain yields at once, each times what a draw makes of its crop's estimate.
 *
 * @param cropOf per yield, place of its crop in the columns
 * @param grainTPerHa nought, less or NaN: nothing is fixed
 * @param factor per crop
 * @param into kg per ha, as long as the yields
 */
export function fixNitrogen(
  columns: NitrogenColumns,
  cropOf: Int32Array,
  grainTPerHa: Float64Array,
  factor: Float64Array,
  into: Float64Array,
): void {
  const { harvestSlope, harvestIntercept, shootNPercent, shootNDropPerT, belowGroundFactor, ndfaPercent } = columns;
  const { least, most } = HARVEST_INDEX_LIMITS.value;
  // In a loop of its own, which is small enough for the logarithm to be built into it: elsewhere each puts a number on the heap.
  for (let i = 0; i < grainTPerHa.length; i++) into[i] = log(grainTPerHa[i] as number);
  for (let i = 0; i < grainTPerHa.length; i++) {
    const grain = grainTPerHa[i] as number;
    const logarithm = into[i] as number;
    into[i] = 0;
    if (!(grain > 0)) continue;
    const c = cropOf[i] as number;
    const index = (harvestSlope[c] as number) * logarithm + (harvestIntercept[c] as number);
    const shootT = grain / Math.min(most, Math.max(least, index));
    const shootN = (shootNPercent[c] as number) - (shootNDropPerT[c] as number) * shootT;
    const cropKg = shootT * 1000 * (shootN / 100) * (belowGroundFactor[c] as number);
    into[i] = (factor[c] as number) * (cropKg * ((ndfaPercent[c] as number) / 100));
  }
}

/** Nitrogen fixed per t of grain, kg, by the method of 2008, whose harvest index does not depend on the yield. */
export function earlierNitrogenKgPerT(crop: Crop): number {
  const { harvestIndex, shootNPercent, belowGroundFactor, ndfaPercent } = EARLIER_NITROGEN_COEFFICIENTS[crop].value;
  return (1000 / harvestIndex) * (shootNPercent / 100) * belowGroundFactor * (ndfaPercent / 100);
}
