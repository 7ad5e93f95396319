import { acos, asin, cos, exp, sin, tan } from '../numerics/elementary.ts';
import {
  AIR_COURSE,
  CLEAR_SKY_TRANSMITTANCE,
  RANGE_TRANSMITTANCE,
  SOLAR_CONSTANT_MJ_PER_M2_MINUTE,
  SUNRISE_ZENITH_DEGREES,
} from '../reference/solar.ts';
import { dayOfYear } from '../vocabulary/calendar.ts';
import type { DayNumber } from '../vocabulary/units.ts';

const RADIAN = Math.PI / 180;
/** Julian day of 1970-01-01 0h UTC. */
const JULIAN_DAY_OF_EPOCH = 2440587.5;

const within = (low: number, value: number, high: number) => Math.max(low, Math.min(high, value));

// ------------------------------------------------------------------------------------------------ clock and sun

export interface SolarPosition {
  /** Degrees from the equinox of date, 0 to 360. */
  readonly trueLongitude: number;
  readonly declinationDegrees: number;
  /** Sundial less clock, minutes. */
  readonly equationOfTimeMinutes: number;
}

/**
 * Low-precision place of the sun (Meeus 1998, Astronomical Algorithms, ch. 25 and eq 28.3, as in the NOAA solar
 * calculator). Coefficients: memory, confirmed against Meeus' worked example 25.a.
 *
 * @param julianDay days and part of a day, universal time
 */
export function solarPosition(julianDay: number): SolarPosition {
  const t = (julianDay - 2451545) / 36525;
  const meanLongitude = (280.46646 + t * (36000.76983 + t * 0.0003032)) * RADIAN;
  const anomaly = (357.52911 + t * (35999.05029 - t * 0.0001537)) * RADIAN;
  const eccentricity = 0.016708634 - t * (0.000042037 + t * 1.267e-7);
  const centre =
    sin(anomaly) * (1.914602 - t * (0.004817 + t * 0.000014)) +
    sin(2 * anomaly) * (0.019993 - t * 0.000101) +
    sin(3 * anomaly) * 0.000289;
  const longitude = meanLongitude / RADIAN + centre;
  const node = (125.04 - 1934.136 * t) * RADIAN;
  const apparent = (longitude - 0.00569 - 0.00478 * sin(node)) * RADIAN;
  const meanObliquity = 23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 60) / 60;
  const obliquity = (meanObliquity + 0.00256 * cos(node)) * RADIAN;
  const half = tan(obliquity / 2);
  const y = half * half;
  const equation =
    y * sin(2 * meanLongitude) -
    2 * eccentricity * sin(anomaly) +
    4 * eccentricity * y * sin(anomaly) * cos(2 * meanLongitude) -
    0.5 * y * y * sin(4 * meanLongitude) -
    1.25 * eccentricity * eccentricity * sin(2 * anomaly);
  return {
    trueLongitude: longitude - 360 * Math.floor(longitude / 360),
    declinationDegrees: asin(sin(obliquity) * sin(apparent)) / RADIAN,
    equationOfTimeMinutes: (4 * equation) / RADIAN,
  };
}

export interface SunTimes {
  readonly sunriseMinute: number;
  readonly solarNoonMinute: number;
  readonly sunsetMinute: number;
}

/**
 * Sunrise, solar noon and sunset of a civil day, in minutes of the local clock (fractions kept). Where the sun does not
 * rise, or does not set, the two stand at solar noon, or twelve hours either side of it.
 *
 * @param lat degrees north
 * @param lon degrees east
 * @param utcOffsetMinutes local clock less UTC
 */
export function sunTimes(day: DayNumber, lat: number, lon: number, utcOffsetMinutes: number): SunTimes {
  const meanNoon = 720 - 4 * lon + utcOffsetMinutes;
  // Where clock and longitude lie on two sides of the date line, the noon of this civil day is a whole day off.
  const clockNoon = meanNoon - 1440 * Math.round((meanNoon - 720) / 1440);
  const event = (side: -1 | 0 | 1): number => {
    let minute = clockNoon;
    // The sun is taken at the event itself; each pass shrinks the error about a thousandfold, to a hundredth of a second.
    for (let pass = 0; pass < 2; pass++) {
      const sun = solarPosition(JULIAN_DAY_OF_EPOCH + day + (minute - utcOffsetMinutes) / 1440);
      minute = clockNoon - sun.equationOfTimeMinutes + side * 4 * dayHalfDegrees(lat, sun.declinationDegrees);
    }
    return minute;
  };
  return { sunriseMinute: event(-1), solarNoonMinute: event(0), sunsetMinute: event(1) };
}

/** Hour angle of sunrise in degrees: cos H = cos 90.833° / (cos φ cos δ) - tan φ tan δ. */
function dayHalfDegrees(lat: number, declinationDegrees: number): number {
  const phi = lat * RADIAN;
  const delta = declinationDegrees * RADIAN;
  const cosine = cos(SUNRISE_ZENITH_DEGREES.value * RADIAN) / (cos(phi) * cos(delta)) - tan(phi) * tan(delta);
  return acos(within(-1, cosine, 1)) / RADIAN;
}

// ------------------------------------------------------------------------------------------------ radiation

/** Inverse relative distance from earth to sun; FAO-56 eq 23. */
export const inverseDistance = (yearDay: number) => 1 + 0.033 * cos((2 * Math.PI * yearDay) / 365);

/** Solar declination in radians; FAO-56 eq 24. */
export const declination = (yearDay: number) => 0.409 * sin((2 * Math.PI * yearDay) / 365 - 1.39);

/** Sunset hour angle in radians, geometric horizon; FAO-56 eq 25. */
export const sunsetHourAngle = (latRadians: number, declinationRadians: number) =>
  acos(within(-1, -tan(latRadians) * tan(declinationRadians), 1));

/** Extraterrestrial radiation, MJ per m² and day; FAO-56 eq 21. Of limited validity beyond 55 degrees of latitude. */
export function extraterrestrialRadiation(lat: number, yearDay: number): number {
  const phi = lat * RADIAN;
  const delta = declination(yearDay);
  const sunset = sunsetHourAngle(phi, delta);
  const geometry = sunset * sin(phi) * sin(delta) + cos(phi) * cos(delta) * sin(sunset);
  return ((24 * 60) / Math.PI) * SOLAR_CONSTANT_MJ_PER_M2_MINUTE.value * inverseDistance(yearDay) * geometry;
}

/** Part of the sun's radiation that reaches the ground, read off the day's temperature range; FAO-56 eq 50, capped by eq 36. */
export const skyTransmittance = (tminC: number, tmaxC: number) =>
  Math.min(CLEAR_SKY_TRANSMITTANCE.value, RANGE_TRANSMITTANCE.value * Math.sqrt(Math.max(0, tmaxC - tminC)));

/**
 * Sun on level ground as a share of 1 kW per m², 0 to 1: FAO-56 eq 28 for a short moment, times the transmittance of
 * the day. The hour angle counts from solar noon by the clock.
 *
 * @param minute local clock minute
 */
export function sunLoad(
  day: DayNumber,
  lat: number,
  lon: number,
  utcOffsetMinutes: number,
  tminC: number,
  tmaxC: number,
  minute: number,
): number {
  const yearDay = dayOfYear(day);
  const universal = minute - utcOffsetMinutes;
  const sun = solarPosition(JULIAN_DAY_OF_EPOCH + day + universal / 1440);
  const hourAngle = ((universal + 4 * lon + sun.equationOfTimeMinutes) / 4 - 180) * RADIAN;
  const phi = lat * RADIAN;
  const delta = declination(yearDay);
  const altitudeSine = sin(phi) * sin(delta) + cos(phi) * cos(delta) * cos(hourAngle);
  const beamKwPerM2 = (SOLAR_CONSTANT_MJ_PER_M2_MINUTE.value * 1000) / 60;
  return within(0, beamKwPerM2 * inverseDistance(yearDay) * altitudeSine * skyTransmittance(tminC, tmaxC), 1);
}

/** Cosine and sine of the hour angle's steps from one quarter hour to the next. */
const QUARTERS = 96;
const QUARTER_COSINE = Float64Array.from({ length: QUARTERS }, (_, q) => cos((q * 3.75 * Math.PI) / 180));
const QUARTER_SINE = Float64Array.from({ length: QUARTERS }, (_, q) => sin((q * 3.75 * Math.PI) / 180));

/**
 * `sunLoad` at every quarter hour of a day, written from `at` on. The sundial's lead over the clock is that of noon, which
 * is within fifteen seconds of every hour's.
 */
export function writeSunLoads(
  day: DayNumber,
  lat: number,
  lon: number,
  utcOffsetMinutes: number,
  tminC: number,
  tmaxC: number,
  into: Float32Array,
  at: number,
): void {
  const yearDay = dayOfYear(day);
  const sun = solarPosition(JULIAN_DAY_OF_EPOCH + day + (720 - utcOffsetMinutes) / 1440);
  const midnight = ((4 * lon + sun.equationOfTimeMinutes - utcOffsetMinutes) / 4 - 180) * RADIAN;
  const [cosine, sine] = [cos(midnight), sin(midnight)];
  const phi = lat * RADIAN;
  const delta = declination(yearDay);
  const [level, swing] = [sin(phi) * sin(delta), cos(phi) * cos(delta)];
  const beamKwPerM2 = (SOLAR_CONSTANT_MJ_PER_M2_MINUTE.value * 1000) / 60;
  const most = beamKwPerM2 * inverseDistance(yearDay) * skyTransmittance(tminC, tmaxC);
  for (let q = 0; q < QUARTERS; q++) {
    const hourCosine = cosine * (QUARTER_COSINE[q] as number) - sine * (QUARTER_SINE[q] as number);
    into[at + q] = within(0, most * (level + swing * hourCosine), 1);
  }
}

// ------------------------------------------------------------------------------------------------ shade air

/**
 * Shade air, °C, at a minute of the day: Parton & Logan 1981 in its original form (form: memory; coefficients: read-2).
 * Only times since sunrise and sunset enter, so clock minutes give the same as solar time. Before sunrise the hours
 * since the evening before are counted over midnight with this day's own extremes, as if the day before had been like
 * it; the curve drops to the minimum where the day branch begins, 10 minutes before sunrise.
 *
 * @param minute 0 to 1440, on the same clock as sunrise and sunset
 */
export function airCelsius(
  tminC: number,
  tmaxC: number,
  sunriseMinute: number,
  sunsetMinute: number,
  minute: number,
): number {
  const { maximumLagHours, nightDecay, minimumLagHours } = AIR_COURSE.value;
  const dayHours = (sunsetMinute - sunriseMinute) / 60;
  const dayBranch = (hours: number) =>
    tminC + (tmaxC - tminC) * sin((Math.PI * (hours - minimumLagHours)) / (dayHours + 2 * maximumLagHours));
  const hoursUp = (minute - sunriseMinute) / 60;
  if (hoursUp >= minimumLagHours && minute < sunsetMinute) return dayBranch(hoursUp);
  const hoursDark = (minute - sunsetMinute) / 60 + (minute < sunsetMinute ? 24 : 0);
  const nightHours = Math.max(24 - dayHours, 1e-6);
  return tminC + (dayBranch(dayHours) - tminC) * exp((-nightDecay * hoursDark) / nightHours);
}

/**
 * `airCelsius` at every quarter hour of a day, written from `at` on: the same curve by turning its sine on and shrinking its
 * night from step to step.
 */
export function writeAirOfDay(
  tminC: number,
  tmaxC: number,
  sunriseMinute: number,
  sunsetMinute: number,
  into: Float32Array,
  at: number,
): void {
  const { maximumLagHours, nightDecay, minimumLagHours } = AIR_COURSE.value;
  const dayHours = (sunsetMinute - sunriseMinute) / 60;
  const firstUp = Math.max(0, Math.ceil((sunriseMinute + 60 * minimumLagHours) / 15));
  const firstDark = Math.max(firstUp, Math.ceil(sunsetMinute / 15));
  const perHour = Math.PI / (dayHours + 2 * maximumLagHours);
  const start = perHour * ((firstUp * 15 - sunriseMinute) / 60 - minimumLagHours);
  const [turnCosine, turnSine] = [cos(perHour / 4), sin(perHour / 4)];
  let [cosine, sine] = [cos(start), sin(start)];
  for (let q = firstUp; q < Math.min(QUARTERS, firstDark); q++) {
    into[at + q] = tminC + (tmaxC - tminC) * sine;
    [cosine, sine] = [cosine * turnCosine - sine * turnSine, sine * turnCosine + cosine * turnSine];
  }
  const decayPerHour = -nightDecay / Math.max(24 - dayHours, 1e-6);
  const sunsetExcess = (tmaxC - tminC) * sin(perHour * (dayHours - minimumLagHours));
  const shrink = exp(decayPerHour / 4);
  const writeNight = (from: number, to: number, hoursDark: number) => {
    let excess = sunsetExcess * exp(decayPerHour * hoursDark);
    for (let q = from; q < to; q++) {
      into[at + q] = tminC + excess;
      excess *= shrink;
    }
  };
  writeNight(0, Math.min(QUARTERS, firstUp), 24 - sunsetMinute / 60);
  writeNight(firstDark, QUARTERS, (firstDark * 15 - sunsetMinute) / 60);
}

/**
 * The same by a second model, to show how far models differ: Cesaraccio et al. 2001, International Journal of
 * Biometeorology 45:161-169 (read-2). The maximum stands four hours before sunset; the night falls with the square root
 * of time to the next day's minimum. Before sunrise this day's own extremes stand for the evening before.
 */
export function airCelsiusBySquareRootNight(
  tminC: number,
  tmaxC: number,
  nextTminC: number,
  sunriseMinute: number,
  sunsetMinute: number,
  minute: number,
): number {
  const peakMinute = sunsetMinute - 240;
  const sunsetC = tmaxC - 0.39 * (tmaxC - nextTminC);
  if (minute > sunriseMinute && minute <= peakMinute)
    return tminC + (tmaxC - tminC) * sin(((Math.PI / 2) * (minute - sunriseMinute)) / (peakMinute - sunriseMinute));
  if (minute > peakMinute && minute < sunsetMinute)
    return sunsetC + (tmaxC - sunsetC) * sin((Math.PI / 2) * (1 + (minute - peakMinute) / 240));
  const minutesDark = minute - sunsetMinute + (minute < sunsetMinute ? 1440 : 0);
  const nightMinutes = sunriseMinute + 1440 - sunsetMinute;
  return sunsetC + (nextTminC - sunsetC) * Math.sqrt(minutesDark / nightMinutes);
}
