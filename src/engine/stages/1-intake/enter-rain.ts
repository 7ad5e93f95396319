import { parseIsoDate } from '../../vocabulary/calendar.ts';
import type { Decision } from '../../vocabulary/decisions.ts';
import type { WeatherStation } from '../../vocabulary/scenario.ts';
import type { DayNumber } from '../../vocabulary/units.ts';

/**
 * Stations with the rain that was measured since the files were made. A day that the files only forecast and that is over now is
 * not taken for observed: where nobody measured, its rain is missing.
 *
 * @param sentAsOf the as-of day of the files
 * @param asOf the day reached since
 */
export function enterRain(
  stations: readonly WeatherStation[],
  decisions: readonly Decision[],
  sentAsOf: DayNumber,
  asOf: DayNumber,
): readonly WeatherStation[] {
  const measured = new Map<string, Map<number, number>>();
  for (const decision of decisions) {
    const day = decision.kind === 'rain' ? parseIsoDate(decision.date) : null;
    if (decision.kind !== 'rain' || day === null) continue;
    measured.set(decision.stationId, (measured.get(decision.stationId) ?? new Map()).set(day, decision.mm));
  }
  if (measured.size === 0 && asOf === sentAsOf) return stations;
  return stations.map((station) => {
    const rain = measured.get(station.id) ?? new Map<number, number>();
    const days = Int32Array.from([...new Set([...station.days, ...rain.keys()])].sort((a, b) => a - b));
    const sent = new Map(Array.from(station.days, (day, i) => [day, i]));
    const column = (values: Float64Array) =>
      Float64Array.from(days, (day) => values[sent.get(day) ?? -1] ?? Number.NaN);
    const sentRain = column(station.rainMm);
    return {
      ...station,
      days,
      tminC: column(station.tminC),
      tmaxC: column(station.tmaxC),
      rainMm: Float64Array.from(days, (day, i) => {
        const isOverForecast = day > sentAsOf && day <= asOf;
        return rain.get(day) ?? (isOverForecast ? Number.NaN : (sentRain[i] as number));
      }),
    };
  });
}
