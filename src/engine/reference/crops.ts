import type { Crop } from '../vocabulary/crops.ts';
import { type Sourced, type Status, sourced } from '../vocabulary/provenance.ts';

/**
 * What is known of each crop. Ranges in the sources are given as their middle; the range stands in the source text. A
 * programme's own figure (file columns, `assumptions`) always comes before these, and so does a label.
 */
export interface CropFacts {
  /** Crops of one class are nodulated by the same rhizobia (assumed from published groups); the label decides. */
  readonly compatibility: string;
  /** Growth of its rhizobia: slow (Bradyrhizobium) keep better in a warm pack than fast (Rhizobium, Mesorhizobium). */
  readonly strain: 'slow' | 'fast';
  readonly seedRateKgPerHa: Sourced<number>;
  /** Grams of a thousand seeds as sown: groundnut shelled. */
  readonly thousandSeedG: Sourced<number>;
  /** Lightest thousand seeds on record; a weight well below it was probably taken on a hundred seeds. */
  readonly thousandSeedLowG: Sourced<number>;
  /** Fraction of seed that germinates which the seed rate reckons with. */
  readonly referenceGermination: Sourced<number>;
  /** Fraction of germinating seed that becomes a plant. */
  readonly emergence: Sourced<number>;
  /** Grain yield, t per ha; groundnut in shell, as statistics count it. */
  readonly yieldTPerHa: Sourced<number>;
  /** Days from sowing to ripe, for the latest day on which a crop can still ripen before the rains end. */
  readonly maturityDays: Sourced<number>;
  /** Days from the first to the last good sowing day. */
  readonly windowDays: Sourced<number>;
  /** Fraction of the yield lost for each day of sowing after the window. */
  readonly delayLossPerDay: Sourced<number>;
  /** Days after the window before that loss begins; its source stands with the loss. */
  readonly delayFreeDays: number;
  /** Living rhizobia per seed at sowing below which a flag is raised. */
  readonly floorCellsPerSeed: Sourced<number>;
  /** Yield gained by inoculation in t per ha, between fields; null where no on-farm mean in t was published. */
  readonly responseTPerHa: ResponseSpread | null;
  /** The same as a fraction of the yield, where it was published so. */
  readonly responseFraction: ResponseSpread | null;
}

export interface ResponseSpread {
  readonly mean: Sourced<number>;
  /** Standard deviation between fields. */
  readonly sd: Sourced<number>;
}

/** Living rhizobia per seed that a programme aims at: 1e6. */
export const GOAL_CELLS_PER_SEED: Sourced<number> = sourced(
  1e6,
  'read',
  '10^6 per soybean seed in France (Legume inoculants and quality control 2002, abstract); 1.2 x 10^6 in Brazil (ANPII)',
);

const from =
  (status: Status) =>
  (value: number, source: string): Sourced<number> =>
    sourced(value, status, source);
const read = from('read');
const derived = from('derived');
const memory = from('memory');
const assumed = from('assumed');

const FAOSTAT = 'mean of FAOSTAT Africa 2009-2018 as copied by Our World in Data (key_crop_yields)';
const HANDBOOK = 'tropical crops handbook, issuhub.com 5980 (title page not seen)';
const SSA = 'mean of sub-Saharan Africa, study of 2000-2022 (abstract, discovery.researcher.life 3732543)';
const PROTA = 'PROTA 1 (Brink & Belay 2006) and breeders’ sheets';
const STATISTICS = 'FAOSTAT and national statistics, order of magnitude';

const GERMINATION = assumed(0.85, 'usual minimum germination of certified seed; no published figure taken');
const EMERGENCE = derived(0.9, 'survival 5-15 points below germination, Saskatchewan Pulse Growers, seeding rates');
const WINDOW = assumed(21, 'as for soybean at Zaria; no figure found for this crop');
const DELAY = assumed(0.01, 'rounded down from soybean; no figure found for this crop');
const FLOOR = read(1e5, 'large-seeded legumes: Canada, Fertilizers Regulations C.R.C. c.666 s.10.2 (2006 to 2013)');
const FLOOR_MEDIUM = assumed(1e4, 'taken as medium seed, as sainfoin in Canada, Fertilizers Regulations s.10.2');

/** Same for every crop unless its own entry says otherwise. */
const COMMON = {
  referenceGermination: GERMINATION,
  emergence: EMERGENCE,
  windowDays: WINDOW,
  delayLossPerDay: DELAY,
  delayFreeDays: 0,
  floorCellsPerSeed: FLOOR,
  responseTPerHa: null,
  responseFraction: null,
};

export const CROP_FACTS: Readonly<Record<Crop, CropFacts>> = {
  soybean: {
    ...COMMON,
    maturityDays: memory(100, 'middle of 85-120 by maturity group, PROTA 1 (Brink & Belay 2006)'),
    compatibility: 'soybean',
    strain: 'slow',
    seedRateKgPerHa: derived(
      60,
      'middle of 50-70, northern Nigeria, 444,444 plants/ha (note restating Dugje et al. 2009)',
    ),
    thousandSeedG: memory(150, `middle of 100-200, ${PROTA}`),
    thousandSeedLowG: memory(100, PROTA),
    yieldTPerHa: derived(1.28, FAOSTAT),
    windowDays: derived(21, '15 June-6 July at Zaria (14 days at Kano), Eseigbe et al. 2024 Agronomy 14:2198'),
    delayLossPerDay: derived(0.012, '5.1-6.7 % in 5 days, West Africa (ajol.info gjs 292772)'),
    responseTPerHa: {
      mean: read(0.116, '1227 to 1343 kg/ha over 2082 on-farm trials, van Heerwaarden et al. 2018 (PMC5946711)'),
      sd: assumed(0.25, 'about a third of the fields show no gain; no published spread was found'),
    },
  },
  groundnut: {
    ...COMMON,
    maturityDays: read(105, 'middle of 90-110 erect kinds, Okello (NaSARRI); 140-150 for Chalimbana, Malawi'),
    compatibility: 'groundnut',
    strain: 'slow',
    seedRateKgPerHa: derived(75, 'kernels; middle of 50-60 (Spanish) to 80-100 (Virginia), Malawi (docest.com 419577)'),
    thousandSeedG: memory(500, 'kernels; middle of 300-700'),
    thousandSeedLowG: memory(300, 'kernels, 300-700'),
    yieldTPerHa: read(1.007, `in shell; ${SSA}`),
    windowDays: assumed(28, 'half of the 57 days (22 June-17 August) at Anantapur, Narahari Rao et al.'),
  },
  cowpea: {
    ...COMMON,
    maturityDays: read(80, '60 erect, 80 semi-spreading, 110 spreading, Ministry of Agriculture of Botswana'),
    compatibility: 'cowpea, mung bean, Bambara',
    strain: 'slow',
    seedRateKgPerHa: derived(
      22.2,
      'middle of 8-10 kg/acre, Kerala (farmextensionmanager.com); 12-25 in IITA guides (memory)',
    ),
    thousandSeedG: memory(175, 'middle of 100-250'),
    thousandSeedLowG: memory(100, '100-250'),
    yieldTPerHa: read(0.45, SSA),
    delayLossPerDay: assumed(
      0.01,
      'after 14 days without loss: late sowing cost nothing in Burkina Faso (Int. J. Biosci. 2023 23(6):224, read)',
    ),
    delayFreeDays: 14,
    responseFraction: {
      mean: derived(0.245, 'middle of +11 to 38 %, Guinea savanna, Ulzen et al. 2016 Front. Plant Sci. 7:1770'),
      sd: assumed(0.25, 'as wide as the mean; no published spread was found'),
    },
  },
  common_bean: {
    ...COMMON,
    maturityDays: memory(85, 'middle of 75-95 bush; climbing 100-120'),
    compatibility: 'common bean',
    strain: 'fast',
    seedRateKgPerHa: memory(
      80,
      'middle of 60-100 by seed size, CIAT/PABRA (40-50 in a weak source read for East Africa)',
    ),
    thousandSeedG: memory(380, 'middle of 160-600: small Mesoamerican below 250, large Andean above 400'),
    thousandSeedLowG: memory(160, '160-600'),
    yieldTPerHa: derived(0.841, `beans, dry; ${FAOSTAT}`),
  },
  chickpea: {
    ...COMMON,
    maturityDays: read(
      112,
      '112.3 at most in the mean, Halaba, updatepublishing.com/journal/index.php/jp/article/view/8480',
    ),
    compatibility: 'chickpea',
    strain: 'fast',
    seedRateKgPerHa: memory(110, 'middle of 80-140'),
    thousandSeedG: memory(170, 'desi, middle of 120-220; kabuli weighs 250-450'),
    thousandSeedLowG: memory(120, 'desi 120-220'),
    yieldTPerHa: read(1.6, 'Ethiopia 2011, n2africa.org farm evaluation quoting FAOSTAT 2012'),
    responseFraction: {
      mean: read(0.21, 'four regions of Ethiopia, Wolde-meskel et al. 2018 AEE 261:144-152'),
      sd: derived(0.09, '99 % of growers saw a gain (same source): 0.21 / 2.326 if fields spread normally'),
    },
  },
  pigeonpea: {
    ...COMMON,
    maturityDays: assumed(
      180,
      'anything from 80 to more than 365 days, tropical crops handbook; state your variety’s own',
    ),
    compatibility: 'pigeonpea',
    strain: 'slow',
    seedRateKgPerHa: derived(19.5, `middle of 9-30 sole crop, ${HANDBOOK} p.189`),
    thousandSeedG: memory(95, 'middle of 70-120 (53-59 in a handbook read, which looks too small)'),
    thousandSeedLowG: derived(53, `19,000 seeds/kg, ${HANDBOOK} p.189`),
    yieldTPerHa: memory(0.825, `middle of 0.75-0.9, ${STATISTICS}`),
  },
  mung_bean: {
    ...COMMON,
    maturityDays: read(63, 'middle of 60-65, Kenya, graduatefarmer.co.ke 2017'),
    compatibility: 'cowpea, mung bean, Bambara',
    strain: 'slow',
    seedRateKgPerHa: derived(12.5, 'middle of 10-15, Kenya (graduatefarmer.co.ke 2017)'),
    thousandSeedG: memory(50, 'middle of 30-70'),
    thousandSeedLowG: memory(30, '30-70'),
    yieldTPerHa: memory(0.5, `middle of 0.3-0.7, ${STATISTICS}`),
    floorCellsPerSeed: FLOOR_MEDIUM,
  },
  bambara: {
    ...COMMON,
    maturityDays: read(130, 'middle of 120-140, FAO Irrigation and Drainage Paper 66'),
    compatibility: 'cowpea, mung bean, Bambara',
    strain: 'slow',
    seedRateKgPerHa: derived(45, `middle of 30-60, ${HANDBOOK} p.281`),
    thousandSeedG: derived(635, `middle of 500-769, from 1300-2000 seeds/kg, ${HANDBOOK} p.281`),
    thousandSeedLowG: derived(500, `2000 seeds/kg, ${HANDBOOK} p.281`),
    yieldTPerHa: memory(0.725, `middle of 0.6-0.85, ${STATISTICS}`),
    delayLossPerDay: derived(0.02, 'more than 60 % in 30 days, Dodoma, Collinson et al. 2000 Experimental Agriculture'),
  },
  faba_bean: {
    ...COMMON,
    maturityDays: memory(135, 'middle of 120-150'),
    compatibility: 'faba bean, lentil',
    strain: 'fast',
    seedRateKgPerHa: memory(200, 'middle of 180-220'),
    thousandSeedG: memory(550, 'Ethiopian landraces, middle of 400-700 (400-1000 in all)'),
    thousandSeedLowG: memory(400, '400-1000'),
    yieldTPerHa: read(2.2, 'Ethiopia 2019/20, Mekonnen & Mnalku 2021 quoting CSA'),
  },
  lentil: {
    ...COMMON,
    maturityDays: memory(105, 'middle of 90-120'),
    compatibility: 'faba bean, lentil',
    strain: 'fast',
    seedRateKgPerHa: memory(65, 'middle of 50-80'),
    thousandSeedG: memory(47.5, 'middle of 25-70'),
    thousandSeedLowG: memory(25, '25-70'),
    yieldTPerHa: memory(1.1, `middle of 1.0-1.2, ${STATISTICS}`),
    floorCellsPerSeed: FLOOR_MEDIUM,
  },
};

type NumberFact = {
  [F in keyof CropFacts]: CropFacts[F] extends Sourced<number> ? F : never;
}[keyof CropFacts];

/** A fact of a crop, or the programme's own figure where its assumptions name `crop.fact`, as `soybean.seedRateKgPerHa`. */
export function cropFact(crop: Crop, fact: NumberFact, assumptions: Readonly<Record<string, number>>): Sourced<number> {
  const name = `${crop}.${fact}`;
  const own = assumptions[name];
  return own === undefined ? CROP_FACTS[crop][fact] : sourced(own, 'given', `scenario.json:assumptions.${name}`);
}
