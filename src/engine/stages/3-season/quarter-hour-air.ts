import { sunTimes, writeAirOfDay, writeSunLoads } from '../../science/sun-and-air.ts';
import type { Position } from '../../vocabulary/places.ts';
import { type DayNumber, dayNumber } from '../../vocabulary/units.ts';
import type { ExpectedExtremes } from './expected-extremes.ts';

const QUARTERS = 96;

export interface QuarterHourAir {
  /** [(weatherPlace * planningDays + day) * 96 + quarter] */
  readonly airC: Float32Array;
  readonly sunLoad: Float32Array;
  /** [weatherPlace * planningDays + day] */
  readonly sunriseMinute: Float64Array;
  readonly sunsetMinute: Float64Array;
}

/**
 * Shade air and sun at every quarter hour of every planning day, and the hours of daylight.
 *
 * @param extremes over `outlookDays`, the first of which are the planning days
 */
export function quarterHourAir(
  positions: readonly Position[],
  extremes: ExpectedExtremes,
  firstDay: DayNumber,
  planningDays: number,
  outlookDays: number,
  utcOffsetMinutes: number,
): QuarterHourAir {
  const rows = positions.length * planningDays;
  const sunriseMinute = new Float64Array(rows);
  const sunsetMinute = new Float64Array(rows);
  const airC = new Float32Array(rows * QUARTERS);
  const load = new Float32Array(rows * QUARTERS);
  positions.forEach(([lon, lat], place) => {
    for (let offset = 0; offset < planningDays; offset++) {
      const day = dayNumber(firstDay + offset);
      const row = place * planningDays + offset;
      const tminC = extremes.tminC[place * outlookDays + offset] as number;
      const tmaxC = extremes.tmaxC[place * outlookDays + offset] as number;
      const sun = sunTimes(day, lat, lon, utcOffsetMinutes);
      sunriseMinute[row] = sun.sunriseMinute;
      sunsetMinute[row] = sun.sunsetMinute;
      writeAirOfDay(tminC, tmaxC, sun.sunriseMinute, sun.sunsetMinute, airC, row * QUARTERS);
      writeSunLoads(day, lat, lon, utcOffsetMinutes, tminC, tmaxC, load, row * QUARTERS);
    }
  });
  return { airC, sunLoad: load, sunriseMinute, sunsetMinute };
}
