import { acos, cos, exp, sin, tan } from '../numerics/elementary.ts';
import { AIR_OFFSETS, type Ride } from '../reference/boxes.ts';
import {
  AIR_COURSE,
  CLEAR_SKY_TRANSMITTANCE,
  RANGE_TRANSMITTANCE,
  SOLAR_CONSTANT_MJ_PER_M2_MINUTE,
  SUNRISE_ZENITH_DEGREES,
} from '../reference/solar.ts';
import { dayOfYear } from '../vocabulary/calendar.ts';
import type { Carriage } from '../vocabulary/fleet.ts';
import type { Position } from '../vocabulary/places.ts';
import { dayNumber } from '../vocabulary/units.ts';

const RAD = Math.PI / 180;

/** Sun by Spencer's Fourier series (1971, Search 2(5):172; read in chillR): another chain than the plan's. */
function spencer(day: number): { readonly declination: number; readonly equationMinutes: number } {
  const g = (2 * Math.PI * (dayOfYear(dayNumber(day)) - 0.5)) / 365.25;
  const [s1, c1, s2, c2, s3, c3] = [sin(g), cos(g), sin(2 * g), cos(2 * g), sin(3 * g), cos(3 * g)];
  return {
    declination:
      0.006918 - 0.399912 * c1 + 0.070257 * s1 - 0.006758 * c2 + 0.000907 * s2 - 0.002697 * c3 + 0.00148 * s3,
    equationMinutes: 229.18 * (0.000075 + 0.001868 * c1 - 0.032077 * s1 - 0.014615 * c2 - 0.040849 * s2),
  };
}

export interface OwnSun {
  readonly rise: number;
  readonly noon: number;
  readonly set: number;
}

/** Sunrise, noon and sunset by the local clock, minutes. */
export function ownSun(day: number, [lon, lat]: Position, utcOffsetMinutes: number): OwnSun {
  const { declination, equationMinutes } = spencer(day);
  const cosine =
    cos(SUNRISE_ZENITH_DEGREES.value * RAD) / (cos(lat * RAD) * cos(declination)) - tan(lat * RAD) * tan(declination);
  const half = (acos(Math.min(1, Math.max(-1, cosine))) / RAD) * 4;
  const mean = 720 - 4 * lon + utcOffsetMinutes - equationMinutes;
  const noon = mean - 1440 * Math.round((mean - 720) / 1440);
  return { rise: noon - half, noon, set: noon + half };
}

/** Minutes between two entries of an air table. */
const STEP = 5;
const ENTRIES = 1440 / STEP + 1;

/** Shade air, °C, and sun load, 0 to 1, every five minutes of one day. */
export interface AirTable {
  readonly airC: Float64Array;
  readonly sunLoad: Float64Array;
}

export function airOfDay(
  day: number,
  position: Position,
  utcOffsetMinutes: number,
  tminC: number,
  tmaxC: number,
): AirTable {
  const sun = ownSun(day, position, utcOffsetMinutes);
  const table = { airC: new Float64Array(ENTRIES), sunLoad: new Float64Array(ENTRIES) };
  for (let i = 0; i < ENTRIES; i++) {
    table.airC[i] = partonLogan(tminC, tmaxC, sun, i * STEP);
    table.sunLoad[i] = loadAt(day, position, sun.noon, tminC, tmaxC, i * STEP);
  }
  return table;
}

/** Parton & Logan 1981, original form, as the evidence gives it: hours since sunrise by day, since sunset by night. */
function partonLogan(tminC: number, tmaxC: number, { rise, set }: OwnSun, minute: number): number {
  const { maximumLagHours: a, nightDecay: b, minimumLagHours: lag } = AIR_COURSE.value;
  const y = (set - rise) / 60;
  const byDay = (m: number) => tminC + (tmaxC - tminC) * sin((Math.PI * m) / (y + 2 * a));
  const sinceStart = (minute - rise) / 60 - lag;
  if (sinceStart >= 0 && minute < set) return byDay(sinceStart);
  const dark = (minute >= set ? minute - set : minute + 1440 - set) / 60;
  return tminC + (byDay(y - lag) - tminC) * exp((-b * dark) / (24 - y));
}

/** Sun on level ground over 1 kW/m2: FAO-56 eq 23, 24, 28, times the transmittance of eq 50 capped by eq 36. */
function loadAt(day: number, [, lat]: Position, noon: number, tminC: number, tmaxC: number, minute: number): number {
  const j = (2 * Math.PI * dayOfYear(dayNumber(day))) / 365;
  const declination = 0.409 * sin(j - 1.39);
  const altitude =
    sin(lat * RAD) * sin(declination) + cos(lat * RAD) * cos(declination) * cos(((minute - noon) / 4) * RAD);
  const kwPerM2 = (SOLAR_CONSTANT_MJ_PER_M2_MINUTE.value / 0.06) * (1 + 0.033 * cos(j)) * Math.max(0, altitude);
  const sky = Math.min(
    CLEAR_SKY_TRANSMITTANCE.value,
    RANGE_TRANSMITTANCE.value * Math.sqrt(Math.max(0, tmaxC - tminC)),
  );
  return Math.min(1, kwPerM2 * sky);
}

/** Shade air at a minute, straight between the five-minute entries. */
export function shadeAir({ airC }: AirTable, minute: number): number {
  return between(airC, minute);
}

/** Air as a box feels it, by how it rides (offsets: reference/boxes.ts). */
export function airAround(table: AirTable, carriage: Carriage, ride: Ride, minute: number): number {
  const { fixed, perSun, sky } = AIR_OFFSETS[carriage][ride].value;
  const warming = perSun === 0 ? 0 : Math.max(0, perSun * between(table.sunLoad, minute) - sky);
  return between(table.airC, minute) + fixed + warming;
}

function between(column: Float64Array, minute: number): number {
  const x = Math.min(1440, Math.max(0, minute)) / STEP;
  const i = Math.min(ENTRIES - 2, Math.floor(x));
  const low = column[i] as number;
  return low + (x - i) * ((column[i + 1] as number) - low);
}
