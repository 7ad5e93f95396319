import { log } from '../numerics/elementary.ts';
import { CROP_FACTS, cropFact } from '../reference/crops.ts';
import { GRAIN_DRY_FRACTION, GRAIN_N_PERCENT, KERNEL_FRACTION, RESIDUES } from '../reference/harvest-nitrogen.ts';
import { REPEATED_INOCULATION } from '../reference/inoculation-response.ts';
import {
  EARLIER_NITROGEN_COEFFICIENTS,
  HARVEST_INDEX_LIMITS,
  NITROGEN_COEFFICIENTS,
} from '../reference/nitrogen-coefficients.ts';
import { GRAIN_PER_KG_PHOSPHORUS, MOST_PHOSPHORUS_KG_PER_HA } from '../reference/phosphorus-response.ts';
import type { Crop } from '../vocabulary/crops.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';

export function yieldOf({ scenario }: CheckedCase, crop: Crop): number {
  return scenario.yieldsTPerHa[crop] ?? cropFact(crop, 'yieldTPerHa', scenario.assumptions).value;
}

/** Gain by inoculation, t per ha; less where the land was inoculated lately. */
export function responseOf(c: CheckedCase, community: number, crop: Crop): number {
  const { responseTPerHa, responseFraction } = CROP_FACTS[crop];
  const whole = responseTPerHa ? responseTPerHa.mean.value : (responseFraction?.mean.value ?? 0) * yieldOf(c, crop);
  const year = at(c.scenario.communities, community).lastInoculatedYear;
  if (year === null) return whole;
  const { partNextYear, fullAfterYears } = REPEATED_INOCULATION.value;
  const years = Math.min(fullAfterYears, Math.max(1, c.scenario.seasonYear - year));
  return whole * (partNextYear + ((1 - partNextYear) * (years - 1)) / (fullAfterYears - 1));
}

/** Gain by the phosphorus of a lot of fertiliser at its rate, t per ha, no more than the trials gave; nought where it is not known. */
export function bagsResponseOf(c: CheckedCase, lot: number, crop: Crop): number {
  const product = lotAndProduct(c, lot)?.product;
  const phosphorusKg = ((product?.rateKgPerHa ?? 0) * (product?.phosphorusPercent ?? 0)) / 100;
  const perKg = GRAIN_PER_KG_PHOSPHORUS[crop]?.value ?? 0;
  return (Math.min(phosphorusKg, MOST_PHOSPHORUS_KG_PER_HA.value) * perKg) / 1000;
}

/** Part of the yield kept when sown so many days after the window. */
export function keptWhenLate(c: CheckedCase, crop: Crop, lateDays: number): number {
  const lossPerDay = cropFact(crop, 'delayLossPerDay', c.scenario.assumptions).value;
  return Math.max(0, 1 - lossPerDay * Math.max(0, lateDays - CROP_FACTS[crop].delayFreeDays));
}

/** Nitrogen taken off the field with a t of grain, kg; groundnut as kernels. */
export function grainNitrogenPerT(crop: Crop): number {
  const dry = GRAIN_DRY_FRACTION.value * (crop === 'groundnut' ? KERNEL_FRACTION.value : 1);
  return 10 * dry * GRAIN_N_PERCENT[crop].value;
}

/** Nitrogen in residues, kg per ha, by the inventory method; none told where no coefficients are given. */
export function residuePerHa(crop: Crop, grainT: number): number {
  const k = RESIDUES[crop]?.value;
  if (!k) return 0;
  const harvest = grainT * GRAIN_DRY_FRACTION.value;
  const above = k.interceptT + k.slope * harvest;
  return 1000 * (k.nAbove * above + k.nBelow * k.rootShoot * (harvest + above));
}

/** Nitrogen fixed for each t of grain by the method of 2008, kg. */
export function earlierPerT(crop: Crop): number {
  const k = EARLIER_NITROGEN_COEFFICIENTS[crop].value;
  return (k.shootNPercent * k.belowGroundFactor * k.ndfaPercent) / (10 * k.harvestIndex);
}

/** Nitrogen fixed, kg per ha (Herridge et al. 2022): grain to shoots by the harvest index, shoots to crop, crop to the air's part. */
export function nitrogenPerHa(crop: Crop, grainT: number): number {
  if (grainT <= 0) return 0;
  const k = NITROGEN_COEFFICIENTS[crop].value;
  const { least, most } = HARVEST_INDEX_LIMITS.value;
  const shootsT = grainT / Math.min(most, Math.max(least, k.harvestIntercept + k.harvestSlope * log(grainT)));
  const shootPercent = k.shootNPercent - k.shootNDropPerT * shootsT;
  return shootsT * 10 * shootPercent * k.belowGroundFactor * (k.ndfaPercent / 100);
}
