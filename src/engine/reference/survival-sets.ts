import { type Sourced, sourced } from '../vocabulary/provenance.ts';
import type { Store } from '../vocabulary/scenario.ts';

/**
 * How fast rhizobia die in a sealed pack: log10 of the cells lost per day is `rateFactor / daysPerLog10` at 40 °C and grows
 * tenfold every `zCelsius`. Good from `validFromC` to `validToC`; nothing is known above.
 */
export interface SurvivalSet {
  readonly name: string;
  /** Days at 40 °C for one log10 (90 percent) to be lost, D40. */
  readonly daysPerLog10: number;
  readonly zCelsius: number;
  /** Fast-growing rhizobia and liquid carriers lose at a multiple of the rate of peat with slow growers. */
  readonly rateFactor: number;
  readonly validFromC: number;
  readonly validToC: number;
}

/** Temperature at which `daysPerLog10` holds. */
export const REFERENCE_CELSIUS = 40;

const set = (name: string, daysPerLog10: number, zCelsius: number): SurvivalSet => ({
  name,
  daysPerLog10,
  zCelsius,
  rateFactor: 1,
  validFromC: 4,
  validToC: 60,
});

/**
 * Sets by name. No rate, z or activation energy for rhizobia in peat is published: the default is fitted to published
 * bounds (25 to 60 °C, and one year at 4 °C) and shown with its rate halved and doubled.
 */
export const SURVIVAL_SETS = {
  default: sourced(
    set('default', 28, 18),
    'derived',
    'sealed moist sterile peat, Bradyrhizobium: fitted to bounds of Roughley et al. 1995, Aarons & Ahmad 1986, Trop. Agric. 57(3), Kremer & Peterson 1983',
  ),
  cautious: sourced(
    set('cautious', 14, 14),
    'assumed',
    'unknown or non-sterile packs, and go or wait: twice the rate at 40 °C',
  ),
  /** The same rate at 40 °C, less steep: loses more below 40 °C and less above. */
  'cautious-flat': sourced(set('cautious-flat', 14, 15), 'assumed', 'planning curve for exposure on the road'),
} as const satisfies Readonly<Record<string, Sourced<SurvivalSet>>>;

/** Rate of fast growers over slow growers. */
export const FAST_GROWER_FACTOR: Sourced<number> = sourced(
  2.2,
  'derived',
  'bounds at 35 °C over 28 days, (9.6 - 8.3) / (9.6 - 9.0), Roughley et al. 1995',
);

/** Rate of a protected liquid over the default for peat, at 28 °C. Unprotected liquid has no shelf life in warm rooms. */
export const LIQUID_FACTOR: Sourced<number> = sourced(
  1.5,
  'derived',
  '2.10 log10 in 183 days at 28 °C, Maitra et al. 2021 Agronomy 11:1009, over the default there',
);

/**
 * Loss on coated seed: `firstLog10` over the first `firstHours`, beside a steady `log10PerDay`, both at 25 °C and tenfold
 * every `zCelsius`. Another process than in the pack (drying): the two are never mixed. A factor of 2 either way.
 */
export const ON_SEED = sourced(
  { firstLog10: 0.4, firstHours: 2, log10PerDay: 0.094, referenceCelsius: 25, zCelsius: 68, validDays: 21 },
  'assumed',
  'fit to mid-points of Appl. Environ. Microbiol. 35:94-96 (1978), 15-30 °C (derived); the first loss was measured in dry soil, not in shade',
);

/** From coating to sowing in the morning's batch: what the plan reckons every seed loses. */
export const COATED_SEED_WAIT = sourced({ hours: 6, celsius: 30 }, 'assumed', 'coated at dawn, in the soil by noon');

/** What a community's store makes of the mean air: `kelvin` is added, or `celsius` is held whatever the air. */
export type StoreAir = { readonly kelvin: number } | { readonly celsius: number };

const ROOM = sourced({ kelvin: 2 }, 'assumed', 'a room under an iron roof is a little warmer than the mean air');

export const STORE_AIR: Readonly<Record<Store, Sourced<StoreAir>>> = {
  none: ROOM,
  room: ROOM,
  clay_pot: sourced({ kelvin: -4 }, 'assumed', 'a wet clay pot cools by evaporation'),
  fridge: sourced({ celsius: 5 }, 'assumed', 'household fridge, within 2-8 °C'),
};
