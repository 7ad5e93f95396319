import type { Crop } from '../vocabulary/crops.ts';
import { type Sourced, sourced } from '../vocabulary/provenance.ts';

const TRIALS =
  'on farms in the Guinea savanna of West Africa, 2015-16, Adjei-Nsiah et al. 2018 Agron. J. 110:1089-1096 (PMC7714251)';

/** Grain gained for each kilogram of phosphorus put in at sowing, kg; crops that are not named have no figure per kilogram. */
export const GRAIN_PER_KG_PHOSPHORUS: Readonly<Partial<Record<Crop, Sourced<number>>>> = {
  soybean: sourced(13.0, 'read', `+390 kg/ha, ${TRIALS}`),
  cowpea: sourced(9.85, 'read', `+296 kg/ha, ${TRIALS}`),
  groundnut: sourced(17.56, 'read', `+527 kg/ha, ${TRIALS}`),
};

/** Phosphorus that those trials gave, kg per ha: beyond it nobody knows from them what more would give. */
export const MOST_PHOSPHORUS_KG_PER_HA: Sourced<number> = sourced(
  30.0,
  'derived',
  '390 kg/ha at 13.00 kg for each kg of P; likewise 296 at 9.85 and 527 at 17.56 (Adjei-Nsiah et al. 2018)',
);

/** Standard deviation of the response between fields, over its mean. */
export const PHOSPHORUS_RELATIVE_SD: Sourced<number> = sourced(
  0.6,
  'assumed',
  'yields of farms differ by 50-60 % (memory); no published spread of the response was found',
);

/** What phosphorus and inoculant together give less than the sum of each alone, as a part of the smaller of the two. */
export const RESPONSES_OVERLAP: Sourced<number> = sourced(
  0.33,
  'derived',
  'soybean (447 + 452 - 777) / 447 = 0.27 (Ronner et al. 2016 FCR 186:133-145), chickpea (21 + 25 - 38) / 21 = 0.38 (Wolde-meskel et al. 2018 AEE 261:144-152); their mean, taken for every crop',
);
