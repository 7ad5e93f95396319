import { cropFact } from '../../reference/crops.ts';
import { GAIN_AFTER_ROTATION, UNPUBLISHED_RESPONSE } from '../../reference/inoculation-practice.ts';
import { expectedResponse } from '../../science/yield-response.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';

/** What a hectare with seed, and what inoculating a hectare that has seed, is worth; per crop of the scenario. */
export interface LandWorth {
  readonly seed: readonly number[];
  readonly inoculant: readonly number[];
}

/**
 * By the policy. `land`: every hectare alike, with seed one, inoculated one more. `gain`: expected grain of a hectare and the mean gain that trials found for inoculant (never a promise: the gain between fields is a spread
 * about it), at the scenario's grain prices; in tonnes where a planned crop has no price.
 */
export function worthOfLand({ crops, yieldsTPerHa, prices, assumptions, policy }: Scenario): LandWorth {
  if (policy.hectareValue === 'land') return { seed: crops.map(() => 1), inoculant: crops.map(() => 1) };
  const isPriced = crops.every((crop) => prices.grainPerT[crop] !== undefined);
  const priceOf = (crop: (typeof crops)[number]) => (isPriced ? (prices.grainPerT[crop] ?? 1) : 1);
  const yieldOf = (crop: (typeof crops)[number]) =>
    yieldsTPerHa[crop] ?? cropFact(crop, 'yieldTPerHa', assumptions).value;
  return {
    seed: crops.map((crop) => yieldOf(crop) * priceOf(crop)),
    inoculant: crops.map((crop) => {
      const response = expectedResponse(crop, yieldOf(crop));
      return (response?.meanTPerHa ?? UNPUBLISHED_RESPONSE.value * yieldOf(crop)) * priceOf(crop);
    }),
  };
}

/**
 * Part of the gain still to be had where land was inoculated before: rhizobia stay in the soil for some years. Whole where it was never
 * inoculated or nobody says.
 */
export function gainAfterRotation(seasonYear: number, lastInoculatedYear: number | null): number {
  if (lastInoculatedYear === null) return 1;
  const { afterOneYear, wholeAfterYears } = GAIN_AFTER_ROTATION.value;
  const years = Math.max(1, seasonYear - lastInoculatedYear);
  return Math.min(1, afterOneYear + ((1 - afterOneYear) * (years - 1)) / (wholeAfterYears - 1));
}
