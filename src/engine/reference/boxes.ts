import type { Carriage } from '../vocabulary/fleet.ts';
import { type Sourced, sourced } from '../vocabulary/provenance.ts';

/** What keeps packs cool on the road: heats, insulation, and how much warmer than shade the air around a box is. */

export const ICE_MELT_J_PER_KG: Sourced<number> = sourced(
  333_550,
  'memory',
  'latent heat of fusion; 334 J/g read at case.edu/artsci/phys/courses/demos/specthe.htm',
);
export const WATER_J_PER_KG_K: Sourced<number> = sourced(
  4186,
  'read',
  'specific heat of water 4.18 to 4.19 kJ/kgK, case.edu/artsci/phys/courses/demos/specthe.htm',
);
export const PACKS_J_PER_KG_K: Sourced<number> = sourced(
  2700,
  'derived',
  'peat at 45 % moisture: 0.45 of water and 0.55 of dry peat at 1.31 to 1.90 kJ/kgK (Gnatowski et al. 2022, Appl. Sci. 12:1579; Moene & van Dam, Table 2.2)',
);
export const LINER_J_PER_K: Sourced<number> = sourced(
  1500,
  'assumed',
  'inner wall of a carrier, about 1 kg of plastic',
);

/** Carton without box: 13 500 J/K and 2 W/K for 5 kg; loss per kilogram constant, hence the time constant too. */
export const CARTON_TAU_HOURS: Sourced<number> = sourced(
  1.875,
  'derived',
  '13 500 J/K / 2 W/K, carton of 5 kg of peat',
);

/** Boxes of up to `CARRIER_LITRES` count as carriers. */
export const CARRIER_LITRES: Sourced<number> = sourced(5, 'memory', 'storage volume classes of WHO PQS E004');
export const CARRIER_UA_W_PER_K: Sourced<number> = sourced(
  0.3,
  'derived',
  'middle of 0.25 to 0.35 W/K, from least cold lives at +43 °C and their ice',
);
export const BOX_UA_W_PER_K: Sourced<number> = sourced(
  0.55,
  'derived',
  'middle of 0.45 to 0.65 W/K, from least cold lives at +43 °C and their ice',
);

/** Ambient temperature at which a box's cold life is rated. Hours of it are no limit of travel: they give the insulation. */
export const COLD_LIFE_AMBIENT_CELSIUS: Sourced<number> = sourced(
  43,
  'read',
  'cold life: hours below the upper limit with ice packs at +43 °C, dlca.logcluster.org, cold chain',
);

/** Packs leave the depot at the temperature of its cool store; at this one where the file gives a store but no temperature. */
export const COOL_STORE_CELSIUS: Sourced<number> = sourced(8, 'assumed', 'upper end of a fridge, 2 to 8 °C');

/** A cool store without power drifts towards the day's mean air with this time constant. */
export const COOL_STORE_DRIFT_HOURS: Sourced<number> = sourced(
  10,
  'assumed',
  'a closed household fridge with packs; no published figure taken: read its own thermometer',
);

/** Packs at or above this count as spoiled until a named person clears them. */
export const HOT_LIMIT_CELSIUS: Sourced<number> = sourced(40, 'assumed', 'guard threshold; common practice, no source');
/** The hot band: effective air this much higher throughout. */
export const HOT_BAND_KELVIN: Sourced<number> = sourced(2, 'assumed', 'error of hourly air from daily extremes');

/**
 * How much warmer than shade air the air around a box is: `fixed` always, or `perSun` times the sun load (1 = 1000 W/m2) less
 * `sky`, never below nought. A light box in the open has 0.45 of its faces in the sun (assumed).
 */
export interface AirOffset {
  readonly fixed: number;
  readonly perSun: number;
  readonly sky: number;
}

const SUNLIT = 0.45;
const shaded = sourced<AirOffset>({ fixed: 2, perSun: 0, sky: 0 }, 'assumed', 'shaded and ventilated bed');
const openParked = sourced<AirOffset>(
  { fixed: 0, perSun: SUNLIT * 26.4, sky: SUNLIT * 3.9 },
  'derived',
  'sol-air temperature of a light surface, 0.0264 m2K/W and 3.9 K (ASHRAE Fundamentals)',
);
const openMoving = sourced<AirOffset>(
  { fixed: 0, perSun: SUNLIT * 9.5, sky: SUNLIT * 1.4 },
  'derived',
  'sol-air temperature with an outer film of 47.5 W/m2K at about 40 km/h',
);
const cabinInShade = sourced<AirOffset>(
  { fixed: 10, perSun: 0, sky: 0 },
  'assumed',
  'shade cuts the hourly rise of a parked cabin from 23 to 13 K (Selover et al. 2016, AMS TJ14.5, read); taken as reached at once',
);
const cabinParked = sourced<AirOffset>(
  { fixed: 0, perSun: 24, sky: 0 },
  'derived',
  'McLaren, Null & Quinn 2005, Pediatrics 116:e109; Null: 22 to 25 K after an hour in the sun, taken as reached at once',
);

/** While moving, parked in the sun, parked in shade. */
export interface CarriageAir {
  readonly moving: Sourced<AirOffset>;
  readonly parked: Sourced<AirOffset>;
  readonly shade: Sourced<AirOffset>;
}

export const AIR_OFFSETS: Readonly<Record<Carriage, CarriageAir>> = {
  covered_bed: { moving: shaded, parked: shaded, shade: shaded },
  open_bed: { moving: openMoving, parked: openParked, shade: shaded },
  pannier: { moving: openMoving, parked: openParked, shade: shaded },
  closed_cabin: { moving: shaded, parked: cabinParked, shade: cabinInShade },
};

/** How a box stands or rides. */
export type Ride = keyof CarriageAir;

/** Under the label rule an hour above the label's limit ranks as such a share of a load's value, whatever the model says. */
export const LABEL_HOUR_SHARE: Sourced<number> = sourced(
  0.005,
  'assumed',
  'a whole day above the limit ranks as an eighth',
);

/** Room that a kilogram of inoculant takes in a box or store where no label gives its volume, litres. */
export const BOX_LITRES_PER_KG: Sourced<number> = sourced(2, 'assumed', '0.2 L for a sachet of 100 g');
