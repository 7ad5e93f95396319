import type { WeatherStation } from '../../vocabulary/scenario.ts';

/** A station's record without gaps: one entry a day from its first to its last row, NaN where nothing was recorded. */
export interface DailyRecord {
  readonly firstDay: number;
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  readonly rainMm: Float64Array;
}

/** The record of a place that no station measures. */
export const NO_RECORD: DailyRecord = {
  firstDay: 0,
  tminC: new Float64Array(0),
  tmaxC: new Float64Array(0),
  rainMm: new Float64Array(0),
};

export function dailyRecord(station: WeatherStation): DailyRecord {
  const firstDay = station.days[0] ?? 0;
  const length = station.days.length === 0 ? 0 : (station.days.at(-1) as number) - firstDay + 1;
  const spread = (column: Float64Array): Float64Array => {
    const dense = new Float64Array(length).fill(Number.NaN);
    station.days.forEach((day, row) => {
      dense[day - firstDay] = column[row] as number;
    });
    return dense;
  };
  return { firstDay, tminC: spread(station.tminC), tmaxC: spread(station.tmaxC), rainMm: spread(station.rainMm) };
}

/** Value of one column on a day; NaN outside the record. */
export function valueOn(record: DailyRecord, column: 'tminC' | 'tmaxC' | 'rainMm', day: number): number {
  return record[column][day - record.firstDay] ?? Number.NaN;
}

/** Share of the days from `from` to `to` on which rain was recorded. */
export function rainCompleteness(record: DailyRecord, from: number, to: number): number {
  let recorded = 0;
  for (let day = from; day <= to; day++) if (!Number.isNaN(valueOn(record, 'rainMm', day))) recorded++;
  return recorded / (to - from + 1);
}
