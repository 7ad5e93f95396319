import { CROP_FACTS } from '../reference/crops.ts';
import { REPEATED_INOCULATION } from '../reference/inoculation-response.ts';
import { GRAIN_PER_KG_PHOSPHORUS, MOST_PHOSPHORUS_KG_PER_HA } from '../reference/phosphorus-response.ts';
import type { Crop } from '../vocabulary/crops.ts';

/** Gain in grain by inoculation, t per ha: mean and standard deviation between fields. A spread, never a promise. */
export interface ResponseEstimate {
  readonly meanTPerHa: number;
  readonly sdTPerHa: number;
}

/** What on-farm trials found for a crop, at a yield without inoculation; null where none was published for it. */
export function expectedResponse(crop: Crop, grainTPerHa: number): ResponseEstimate | null {
  const { responseTPerHa, responseFraction } = CROP_FACTS[crop];
  if (responseTPerHa) return { meanTPerHa: responseTPerHa.mean.value, sdTPerHa: responseTPerHa.sd.value };
  if (!responseFraction) return null;
  return {
    meanTPerHa: responseFraction.mean.value * grainTPerHa,
    sdTPerHa: responseFraction.sd.value * grainTPerHa,
  };
}

/**
 * Part of the response that is left where land was inoculated so many years ago: rhizobia brought then may still be there.
 * All of it where nobody knows of any, because the trials' mean is over fields of every kind (assumed).
 */
export function repeatFactor(yearsSince: number | null): number {
  if (yearsSince === null) return 1;
  const { partNextYear, fullAfterYears } = REPEATED_INOCULATION.value;
  const part = Math.min(1, Math.max(0, yearsSince - 1) / (fullAfterYears - 1));
  return partNextYear + (1 - partNextYear) * part;
}

/**
 * Grain gained by phosphorus, t per ha, in the mean of trials: by the kilogram, up to what the trials gave. Nought for a crop that has no
 * published figure, NaN where the phosphorus is not known.
 */
export function phosphorusResponseTPerHa(crop: Crop, phosphorusKgPerHa: number): number {
  const perKg = GRAIN_PER_KG_PHOSPHORUS[crop]?.value ?? 0;
  return (perKg * Math.min(phosphorusKgPerHa, MOST_PHOSPHORUS_KG_PER_HA.value)) / 1000;
}

/** Gain over what there was without, as a fraction. */
export function relativeGain(without: number, withIt: number): number {
  return (withIt - without) / without;
}

/** What two inputs together give beyond the sum of each alone; below nought where they overlap. */
export function jointGain(first: number, second: number, both: number): number {
  return both - (first + second);
}

/** Rate of a nutrient, kg per ha, behind a gain in grain and the grain that each kg of it gave. */
export function nutrientRateKgPerHa(gainKgPerHa: number, gainPerKg: number): number {
  return gainKgPerHa / gainPerKg;
}

/** Worth of the gain over what the input cost, in one currency; above 1 it pays. */
export function valueCostRatio(gainWorth: number, inputCost: number): number {
  return gainWorth / inputCost;
}
