import { sourced } from '../vocabulary/provenance.ts';

/** Solar constant, MJ per m² and minute. */
export const SOLAR_CONSTANT_MJ_PER_M2_MINUTE = sourced(
  0.082,
  'read-2',
  'Allen et al. 1998, FAO Irrigation and Drainage Paper 56, eq 21',
);

/** Sun's zenith angle at clock sunrise and sunset: half a solar disc and refraction below the horizon. */
export const SUNRISE_ZENITH_DEGREES = sourced(
  90.833,
  'memory',
  'convention of the NOAA solar calculator; reproduces published sunrise times within 20 s',
);

/** Largest part of the sun's radiation that reaches the ground, under a clear sky at sea level. */
export const CLEAR_SKY_TRANSMITTANCE = sourced(0.75, 'read-2', 'FAO-56 eq 36');

/** Transmittance per square root of the day's temperature range, K^-0.5, away from the coast. */
export const RANGE_TRANSMITTANCE = sourced(0.16, 'read-2', 'FAO-56 eq 50, interior locations');

/** Cooling of the air with height: a place this much higher than its station is so much cooler, K per km. */
export const LAPSE_K_PER_KM = sourced(6.5, 'read-2', 'FAO-56 eq 7: 0.0065 K per m; no local figure taken');

/** Heights are told apart in steps of this, metres: two thirds of a kelvin, a third of what the model errs by (assumed). */
export const HEIGHT_STEP_M = 100;

/** Daily course of the air 1.5 m above ground. Hours; the night coefficient has no unit. */
export const AIR_COURSE = sourced(
  { maximumLagHours: 1.86, nightDecay: 2.2, minimumLagHours: -0.17 },
  'read-2',
  'Parton & Logan 1981, Agricultural Meteorology 23:205-216, 150 cm air',
);
