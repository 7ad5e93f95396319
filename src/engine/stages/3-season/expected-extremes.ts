import { quantile } from '../../numerics/quantile.ts';
import { civilFromDay, dayOfMonthDay } from '../../vocabulary/calendar.ts';
import { sourced } from '../../vocabulary/provenance.ts';
import { type DayNumber, dayNumber } from '../../vocabulary/units.ts';
import { type DailyRecord, valueOn } from './daily-record.ts';

/** Taken where no past season tells: a hot day of the wet-and-dry tropics, so that the plan errs towards heat. */
export const ASSUMED_EXTREMES = sourced({ tminC: 20, tmaxC: 34 }, 'assumed', 'a hot day of the seasonal tropics');

/** Days either side of the calendar day that a past season's usual extremes are taken from. */
export const CLIMATE_HALF_WIDTH_DAYS = 3;

/** Where a day's extremes come from, as in SeasonOutlook.airBasis. */
const BASIS = { observed: 0, forecast: 1, pastSeasons: 2, assumed: 3 } as const;

export interface ExpectedExtremes {
  /** [weatherPlace * days + day] */
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  readonly basis: Int8Array;
  /** Days of the outlook, over all weather places, for which the assumed pair was taken. */
  readonly assumedDays: number;
}

/**
 * Expected lowest and highest air of each day: observed, else forecast, else the median over past years of the same
 * calendar day and the three days either side. An extreme that is missing is filled from that median, and so are both
 * where the filled pair would stand the wrong way round.
 *
 * @param records per weather place
 */
export function expectedExtremes(
  records: readonly DailyRecord[],
  asOf: DayNumber,
  firstDay: DayNumber,
  days: number,
): ExpectedExtremes {
  const tminC = new Float64Array(records.length * days);
  const tmaxC = new Float64Array(records.length * days);
  const basis = new Int8Array(records.length * days);
  records.forEach((record, place) => {
    for (let offset = 0; offset < days; offset++) {
      const expected = extremesOn(record, asOf, dayNumber(firstDay + offset));
      tminC[place * days + offset] = expected.tminC;
      tmaxC[place * days + offset] = expected.tmaxC;
      basis[place * days + offset] = expected.basis;
    }
  });
  return { tminC, tmaxC, basis, assumedDays: basis.filter((b) => b === BASIS.assumed).length };
}

function extremesOn(record: DailyRecord, asOf: DayNumber, day: DayNumber) {
  const low = valueOn(record, 'tminC', day);
  const high = valueOn(record, 'tmaxC', day);
  if (low <= high) return { tminC: low, tmaxC: high, basis: day <= asOf ? BASIS.observed : BASIS.forecast };
  const usualLow = usualOn(record, 'tminC', asOf, day);
  const usualHigh = usualOn(record, 'tmaxC', asOf, day);
  const tminC = Number.isNaN(low) ? usualLow : low;
  const tmaxC = Number.isNaN(high) ? usualHigh : high;
  if (tminC <= tmaxC) return { tminC, tmaxC, basis: BASIS.pastSeasons };
  if (usualLow <= usualHigh) return { tminC: usualLow, tmaxC: usualHigh, basis: BASIS.pastSeasons };
  return { ...ASSUMED_EXTREMES.value, basis: BASIS.assumed };
}

/** Median over past years of the days round the same calendar day; NaN where nothing was recorded. */
function usualOn(record: DailyRecord, column: 'tminC' | 'tmaxC', asOf: DayNumber, day: DayNumber): number {
  const { year, month, day: dayOfMonth } = civilFromDay(day);
  const values: number[] = [];
  for (let pastYear = year - 1; ; pastYear--) {
    const middle = dayOfMonthDay(pastYear, { month, day: dayOfMonth });
    if (middle + CLIMATE_HALF_WIDTH_DAYS < record.firstDay) return quantile(values, 0.5);
    const last = Math.min(middle + CLIMATE_HALF_WIDTH_DAYS, asOf);
    for (let near = middle - CLIMATE_HALF_WIDTH_DAYS; near <= last; near++) values.push(valueOn(record, column, near));
  }
}
