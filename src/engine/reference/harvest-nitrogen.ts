import type { Crop } from '../vocabulary/crops.ts';
import { type Sourced, sourced } from '../vocabulary/provenance.ts';

/** Dry matter in harvested grain, fraction. */
export const GRAIN_DRY_FRACTION: Sourced<number> = sourced(0.91, 'memory', 'IPCC 2019 Refinement, volume 4 chapter 11');

/** Kernels in groundnut as harvested in shell, fraction. */
export const KERNEL_FRACTION: Sourced<number> = sourced(0.7, 'memory', 'usual shelling percentage; not seen');

const grain = (percent: number): Sourced<number> =>
  sourced(percent, 'memory', 'crude protein over 6.25 (groundnut 5.46); not seen');

/** Nitrogen in dry seed, percent; of groundnut the kernel. Chickpea, lentil and pea were read as 2.9-3.6 (Ayaz et al. 2004). */
export const GRAIN_N_PERCENT: Readonly<Record<Crop, Sourced<number>>> = {
  soybean: grain(6.2),
  groundnut: grain(4.6),
  cowpea: grain(3.9),
  common_bean: grain(3.7),
  chickpea: grain(3.4),
  pigeonpea: grain(3.5),
  mung_bean: grain(3.8),
  bambara: grain(3.2),
  faba_bean: grain(4.5),
  lentil: grain(4.1),
};

/** Residues by the inventory method: above-ground dry matter = slope * crop + intercept, both in t dry matter per ha. */
export interface ResidueCoefficients {
  readonly slope: number;
  readonly interceptT: number;
  /** Nitrogen in residues above and below ground, fraction. */
  readonly nAbove: number;
  readonly nBelow: number;
  /** Below-ground over above-ground biomass. */
  readonly rootShoot: number;
}

const IPCC =
  'IPCC 2019 Refinement, volume 4 chapter 11, tables 11.1A and 11.2, as transcribed in FADN2Footprint; nitrogen +/-75 %, roots +/-45 %';
const PULSES = sourced(
  { slope: 1.13, interceptT: 0.85, nAbove: 0.008, nBelow: 0.008, rootShoot: 0.19 },
  'read*',
  `beans and pulses; ${IPCC}`,
);

/** Null for groundnut: nothing is given for its roots. */
export const RESIDUES: Readonly<Record<Crop, Sourced<ResidueCoefficients> | null>> = {
  soybean: sourced(
    { slope: 0.93, interceptT: 1.35, nAbove: 0.008, nBelow: 0.008, rootShoot: 0.19 },
    'read*',
    `soybean; ${IPCC}`,
  ),
  groundnut: null,
  cowpea: PULSES,
  common_bean: PULSES,
  chickpea: PULSES,
  pigeonpea: PULSES,
  mung_bean: PULSES,
  bambara: PULSES,
  faba_bean: PULSES,
  lentil: PULSES,
};
