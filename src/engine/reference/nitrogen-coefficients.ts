import type { Crop } from '../vocabulary/crops.ts';
import { type Sourced, sourced } from '../vocabulary/provenance.ts';

/**
 * Coefficients of Herridge, Giller, Jensen & Peoples 2022 (Plant and Soil 474:1-15, 10.1007/s11104-021-05166-7), read as
 * transcribed for the FAOSTAT cropland nutrient budget by Einarsson (10.5281/zenodo.7133336). Their update replaces
 * Herridge et al. 2008: the harvest index now depends on the yield.
 */
export interface NitrogenCoefficients {
  /** Harvest index = slope * ln(grain yield in t per ha) + intercept. */
  readonly harvestSlope: number;
  readonly harvestIntercept: number;
  /** Nitrogen in shoots, percent = `shootNPercent` less `shootNDropPerT` for each t per ha of shoot dry matter. */
  readonly shootNPercent: number;
  readonly shootNDropPerT: number;
  /** Nitrogen of the whole crop over that of its shoots. */
  readonly belowGroundFactor: number;
  /** Share of the crop's nitrogen that comes from the air, percent, and its standard deviation (Peoples et al. 2021). */
  readonly ndfaPercent: number;
  readonly ndfaSdPercent: number;
}

export type NdfaRegion = 'rest-of-world' | 'brazil' | 'europe';

const SOURCE = 'Herridge et al. 2022 as transcribed by Einarsson (10.5281/zenodo.7133336)';

const pulse = (
  belowGroundFactor: number,
  shootNPercent: number,
  ndfaPercent: number,
  ndfaSdPercent: number,
): NitrogenCoefficients => ({
  harvestSlope: 0.0804,
  harvestIntercept: 0.2839,
  shootNPercent,
  shootNDropPerT: 0,
  belowGroundFactor,
  ndfaPercent,
  ndfaSdPercent,
});

const otherPulse = sourced(pulse(1.4, 2.5, 62, 13.4), 'read*', `other pulses; ${SOURCE}`);

export const NITROGEN_COEFFICIENTS: Readonly<Record<Crop, Sourced<NitrogenCoefficients>>> = {
  soybean: sourced(
    {
      harvestSlope: 0.1178,
      harvestIntercept: 0.2775,
      shootNPercent: 3.913,
      shootNDropPerT: 0.118,
      belowGroundFactor: 1.4,
      ndfaPercent: 61,
      ndfaSdPercent: 14,
    },
    'read*',
    SOURCE,
  ),
  groundnut: sourced(
    { ...pulse(1.4, 2.7, 62, 13.4), harvestSlope: 0.1343, harvestIntercept: 0.2614 },
    'read*',
    `grain in shell; ${SOURCE}`,
  ),
  // The transcription leaves cowpea blank; Peoples et al. 2021 place it in the group of 62 percent.
  cowpea: sourced(pulse(1.4, 2.5, 62, 13.4), 'derived', `as other pulses; ${SOURCE}`),
  common_bean: sourced(pulse(1.4, 2.5, 38, 11.1), 'read*', SOURCE),
  chickpea: sourced(pulse(2, 1.9, 62, 13.4), 'read*', SOURCE),
  pigeonpea: sourced({ ...pulse(2, 1.9, 74, 11.8), harvestSlope: 0.0517, harvestIntercept: 0.1647 }, 'read*', SOURCE),
  mung_bean: otherPulse,
  bambara: otherPulse,
  faba_bean: sourced(pulse(1.4, 2.5, 74, 11.8), 'read*', SOURCE),
  lentil: otherPulse,
};

/** Soybean alone was found to differ by region: percent from the air and its standard deviation. */
export const SOYBEAN_NDFA: Readonly<Record<NdfaRegion, Sourced<{ readonly percent: number; readonly sd: number }>>> = {
  'rest-of-world': sourced(
    { percent: 61, sd: 14 },
    'read',
    'Africa included; Peoples et al. 2021 Plant and Soil 469:1-14',
  ),
  brazil: sourced({ percent: 78, sd: 6.3 }, 'read', 'Peoples et al. 2021 Plant and Soil 469:1-14'),
  europe: sourced({ percent: 44, sd: 13.8 }, 'read', 'Peoples et al. 2021 Plant and Soil 469:1-14'),
};

/** Limits of the harvest index, set by the transcriber from the supplement's range. */
export const HARVEST_INDEX_LIMITS = sourced({ least: 0.1, most: 0.5 }, 'read*', SOURCE);

/** Standard deviation of an estimate of nitrogen fixed over the estimate: the display range. */
export const NITROGEN_RELATIVE_SD: Sourced<number> = sourced(
  0.35,
  'assumed',
  'middle of 30-40 %; the share from the air alone gives 16-29 % (derived from Peoples et al. 2021)',
);

/** Herridge, Peoples & Boddey 2008 (Plant and Soil 311:1-18): the method before, kept for comparison alone. */
export interface EarlierCoefficients {
  readonly harvestIndex: number;
  readonly shootNPercent: number;
  readonly belowGroundFactor: number;
  readonly ndfaPercent: number;
}

const EARLIER = 'Herridge, Peoples & Boddey 2008; harvest index read in a transcription, the rest from memory';

const earlier = (
  harvestIndex: number,
  shootNPercent: number,
  belowGroundFactor: number,
  ndfaPercent: number,
): Sourced<EarlierCoefficients> =>
  sourced({ harvestIndex, shootNPercent, belowGroundFactor, ndfaPercent }, 'memory', EARLIER);

const earlierPulse = earlier(0.35, 2.2, 1.4, 63);

export const EARLIER_NITROGEN_COEFFICIENTS: Readonly<Record<Crop, Sourced<EarlierCoefficients>>> = {
  soybean: earlier(0.4, 3, 1.5, 68),
  groundnut: earlier(0.4, 2.3, 1.4, 68),
  cowpea: earlierPulse,
  common_bean: earlier(0.35, 2.2, 1.4, 40),
  chickpea: earlier(0.35, 2.2, 2, 63),
  pigeonpea: earlier(0.35, 2.2, 2, 63),
  mung_bean: earlierPulse,
  bambara: earlierPulse,
  faba_bean: earlier(0.35, 2.2, 1.4, 75),
  lentil: earlierPulse,
};
