import { quantile } from '../../numerics/quantile.ts';
import { LAPSE_K_PER_KM } from '../../reference/solar.ts';
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
  /** A day as hot as one in ten: the ninth decile over past years; the day itself where it was observed or is forecast. */
  readonly hotTminC: Float64Array;
  readonly hotTmaxC: Float64Array;
  readonly basis: Int8Array;
  /** Days of the outlook, over all weather places, for which the assumed pair was taken. */
  readonly assumedDays: number;
}

/**
 * Expected lowest and highest air of each day: observed, else forecast, else the median over past years of the same
 * calendar day and the three days either side. An extreme that is missing is filled from that median, and so are both
 * where the filled pair would stand the wrong way round. A weather place above its station is cooler, below it warmer.
 *
 * @param records per weather place
 * @param riseM height of each weather place above its station
 */
export function expectedExtremes(
  records: readonly DailyRecord[],
  riseM: ArrayLike<number>,
  asOf: DayNumber,
  firstDay: DayNumber,
  days: number,
): ExpectedExtremes {
  const column = () => new Float64Array(records.length * days);
  const [tminC, tmaxC, hotTminC, hotTmaxC] = [column(), column(), column(), column()];
  const basis = new Int8Array(records.length * days);
  records.forEach((record, place) => {
    for (let offset = 0; offset < days; offset++) {
      const expected = extremesOn(record, asOf, dayNumber(firstDay + offset));
      const cooler = expected.basis === BASIS.assumed ? 0 : (LAPSE_K_PER_KM.value * (riseM[place] as number)) / 1000;
      const at = place * days + offset;
      tminC[at] = expected.tminC - cooler;
      tmaxC[at] = expected.tmaxC - cooler;
      hotTminC[at] = expected.hotTminC - cooler;
      hotTmaxC[at] = expected.hotTmaxC - cooler;
      basis[at] = expected.basis;
    }
  });
  return { tminC, tmaxC, hotTminC, hotTmaxC, basis, assumedDays: basis.filter((b) => b === BASIS.assumed).length };
}

const HOT_DECILE = 0.9;

function extremesOn(record: DailyRecord, asOf: DayNumber, day: DayNumber) {
  const low = valueOn(record, 'tminC', day);
  const high = valueOn(record, 'tmaxC', day);
  if (low <= high) {
    const basis = day <= asOf ? BASIS.observed : BASIS.forecast;
    return { tminC: low, tmaxC: high, hotTminC: low, hotTmaxC: high, basis };
  }
  const pastLows = pastValues(record, 'tminC', asOf, day);
  const pastHighs = pastValues(record, 'tmaxC', asOf, day);
  const usual = { tminC: quantile(pastLows, 0.5), tmaxC: quantile(pastHighs, 0.5) };
  const filled = {
    tminC: Number.isNaN(low) ? usual.tminC : low,
    tmaxC: Number.isNaN(high) ? usual.tmaxC : high,
  };
  const expected = filled.tminC <= filled.tmaxC ? filled : usual;
  if (expected.tminC <= expected.tmaxC) {
    const hotTminC = Math.max(expected.tminC, quantile(pastLows, HOT_DECILE) || expected.tminC);
    const hotTmaxC = Math.max(expected.tmaxC, quantile(pastHighs, HOT_DECILE) || expected.tmaxC);
    return { ...expected, hotTminC: Math.min(hotTminC, hotTmaxC), hotTmaxC, basis: BASIS.pastSeasons };
  }
  const { tminC, tmaxC } = ASSUMED_EXTREMES.value;
  return { tminC, tmaxC, hotTminC: tminC, hotTmaxC: tmaxC, basis: BASIS.assumed };
}

/** What past years recorded on the days round the same calendar day; empty or NaN where nothing was. */
function pastValues(record: DailyRecord, column: 'tminC' | 'tmaxC', asOf: DayNumber, day: DayNumber): number[] {
  const { year, month, day: dayOfMonth } = civilFromDay(day);
  const values: number[] = [];
  for (let pastYear = year - 1; ; pastYear--) {
    const middle = dayOfMonthDay(pastYear, { month, day: dayOfMonth });
    if (middle + CLIMATE_HALF_WIDTH_DAYS < record.firstDay) return values;
    const last = Math.min(middle + CLIMATE_HALF_WIDTH_DAYS, asOf);
    for (let near = middle - CLIMATE_HALF_WIDTH_DAYS; near <= last; near++) values.push(valueOn(record, column, near));
  }
}
