import { tenTo } from '../numerics/elementary.ts';
import { CROP_FACTS } from '../reference/crops.ts';
import {
  FAST_GROWER_FACTOR,
  LIQUID_FACTOR,
  ON_SEED,
  REFERENCE_CELSIUS,
  STORE_AIR,
  SURVIVAL_SETS,
  type SurvivalSet,
} from '../reference/survival-sets.ts';
import type { Crop } from '../vocabulary/crops.ts';
import type { Store } from '../vocabulary/scenario.ts';
import type { Product } from '../vocabulary/supply.ts';

/**
 * Survival set of a pack: the default for a carrier that its label calls sterile, the cautious one where it is not or
 * nobody says; faster for the fast-growing rhizobia of bean, chickpea, faba bean and lentil, and in a liquid.
 */
export function survivalSet(product: Product, crop: Crop): SurvivalSet {
  const base = (product.carrierSterile === true ? SURVIVAL_SETS.default : SURVIVAL_SETS.cautious).value;
  const strain = CROP_FACTS[crop].strain === 'fast' ? FAST_GROWER_FACTOR.value : 1;
  const carrier = product.carrier === 'liquid' ? LIQUID_FACTOR.value : 1;
  return { ...base, rateFactor: strain * carrier };
}

/**
 * log10 of the cells lost per day in a sealed pack at a temperature: 1 / D(T), D(T) = D40 * 10^((40 - T) / z). The curve of
 * thermal death, on the sets of reference/survival-sets.ts. NaN above the set's range (60 °C): unknown, test before use.
 * Below 4 °C the curve runs on, at next to nothing; freezing is not modelled and never done.
 */
export function packLog10PerDay(celsius: number, set: SurvivalSet): number {
  if (celsius > set.validToC) return Number.NaN;
  return (set.rateFactor / set.daysPerLog10) * tenTo((celsius - REFERENCE_CELSIUS) / set.zCelsius);
}

/**
 * log10 of the cells lost on coated seed in so many hours: a fast first loss, then a steady one, both weakly warmer with
 * heat (assumed; see ON_SEED). NaN beyond 21 days or before coating.
 */
export function onSeedLog10Loss(hours: number, celsius: number): number {
  const { firstLog10, firstHours, log10PerDay, referenceCelsius, zCelsius, validDays } = ON_SEED.value;
  if (!(hours >= 0 && hours <= validDays * 24)) return Number.NaN;
  const at25 = firstLog10 * Math.min(1, hours / firstHours) + log10PerDay * (hours / 24);
  return at25 * tenTo((celsius - referenceCelsius) / zCelsius);
}

/** Temperature of packs in a community's store, °C, by the day's mean air (assumed offsets, reference/survival-sets.ts). */
export function storeCelsius(store: Store, airMeanC: number): number {
  const air = STORE_AIR[store].value;
  return 'celsius' in air ? air.celsius : airMeanC + air.kelvin;
}
