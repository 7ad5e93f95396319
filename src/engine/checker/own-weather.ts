import { type OnsetDefinition, SEASON_END } from '../reference/onset-definitions.ts';
import { LAPSE_K_PER_KM } from '../reference/solar.ts';
import { civilFromDay, dayFromCivil, dayOfMonthDay, daysInMonth } from '../vocabulary/calendar.ts';
import type { Scenario, SeasonSearch, WeatherStation } from '../vocabulary/scenario.ts';
import { type DayNumber, dayNumber } from '../vocabulary/units.ts';

/** One station's record, every day from its first to its last; NaN where nothing is known. */
export interface OwnRecord {
  readonly first: number;
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  readonly rainMm: Float64Array;
}

export function openRecord({ days, tminC, tmaxC, rainMm }: WeatherStation): OwnRecord {
  const first = days[0] ?? 0;
  const length = days.length === 0 ? 0 : (days[days.length - 1] as number) - first + 1;
  const column = () => new Float64Array(length).fill(Number.NaN);
  const record = { first, tminC: column(), tmaxC: column(), rainMm: column() };
  days.forEach((day, i) => {
    record.tminC[day - first] = tminC[i] as number;
    record.tmaxC[day - first] = tmaxC[i] as number;
    record.rainMm[day - first] = rainMm[i] as number;
  });
  return record;
}

/** Value of a column on a day; NaN before and after the record. */
export function onDay(record: OwnRecord, column: 'tminC' | 'tmaxC' | 'rainMm', day: number): number {
  return record[column][day - record.first] ?? Number.NaN;
}

/** The same date of another year; 29 February becomes 28 February. */
export function inYear(day: number, year: number): DayNumber {
  const { month, day: dayOfMonth } = civilFromDay(dayNumber(day));
  return dayFromCivil(year, month, Math.min(dayOfMonth, daysInMonth(year, month)));
}

export interface Extremes {
  readonly tminC: number;
  readonly tmaxC: number;
  /** Maximum of a day as hot as one in ten. */
  readonly hotTmaxC: number;
}

/** So much cooler the air is at a height above the station. */
export function atHeight({ tminC, tmaxC, hotTmaxC }: Extremes, riseM: number): Extremes {
  const kelvin = (riseM / 1000) * LAPSE_K_PER_KM.value;
  return { tminC: tminC - kelvin, tmaxC: tmaxC - kelvin, hotTmaxC: hotTmaxC - kelvin };
}

/**
 * Expected extremes of a day: what was observed or forecast; what is missing, and a pair that stands the wrong way round, by
 * the median of the same date give or take three days in the years before it. Null where nothing tells.
 */
export function expectedExtremes(record: OwnRecord, asOf: number, day: number): Extremes | null {
  const known = { tminC: onDay(record, 'tminC', day), tmaxC: onDay(record, 'tmaxC', day) };
  if (known.tminC <= known.tmaxC) return { ...known, hotTmaxC: known.tmaxC };
  const highs = pastOn(record, 'tmaxC', asOf, day);
  const usual = { tminC: middle(pastOn(record, 'tminC', asOf, day)), tmaxC: middle(highs) };
  const filled = {
    tminC: Number.isNaN(known.tminC) ? usual.tminC : known.tminC,
    tmaxC: Number.isNaN(known.tmaxC) ? usual.tmaxC : known.tmaxC,
  };
  const expected = filled.tminC <= filled.tmaxC ? filled : usual;
  if (!(expected.tminC <= expected.tmaxC)) return null;
  return { ...expected, hotTmaxC: highs.length > 0 ? Math.max(expected.tmaxC, ninthDecile(highs)) : expected.tmaxC };
}

/** Nine tenths of the way through the values in order, straight between the two beside it. */
function ninthDecile(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = 0.9 * (sorted.length - 1);
  const below = sorted[Math.floor(place)] as number;
  return below + (place % 1) * ((sorted[Math.ceil(place)] as number) - below);
}

function pastOn(record: OwnRecord, column: 'tminC' | 'tmaxC', asOf: number, day: number): number[] {
  const year = civilFromDay(dayNumber(day)).year;
  const past: number[] = [];
  for (let y = civilFromDay(dayNumber(record.first)).year - 1; y < year; y++)
    for (let shift = -3; shift <= 3; shift++) {
      const near = inYear(day, y) + shift;
      const value = near <= asOf ? onDay(record, column, near) : Number.NaN;
      if (!Number.isNaN(value)) past.push(value);
    }
  return past;
}

export function middle(values: number[]): number {
  if (values.length === 0) return Number.NaN;
  values.sort((a, b) => a - b);
  const half = values.length / 2;
  return values.length % 2 === 1
    ? (values[half - 0.5] as number)
    : ((values[half - 1] as number) + (values[half] as number)) / 2;
}

/** The season looked for: of those not over when planning begins the one that ends first, else the one that ends last. */
export function seasonInPlay({ seasons, seasonYear, planning }: Scenario): SeasonSearch | null {
  const untilOf = (search: SeasonSearch) => searchWindow(search, seasonYear).until;
  const byEnd = [...seasons].sort((a, b) => untilOf(a) - untilOf(b));
  return byEnd.find((search) => untilOf(search) >= planning.from) ?? byEnd.at(-1) ?? null;
}

export function searchWindow(
  search: SeasonSearch,
  year: number,
): { readonly from: DayNumber; readonly until: DayNumber } {
  const from = dayOfMonthDay(year, search.from);
  const until = dayOfMonthDay(year, search.to);
  return { from, until: until < from ? dayOfMonthDay(year + 1, search.to) : until };
}

/** Onset as the definition says, looked for window by window; null where there is none. Days as day numbers. */
export function findOnset(
  record: OwnRecord,
  from: number,
  until: number,
  lastKnown: number,
  rule: OnsetDefinition,
): { readonly day: number; readonly confirmed: boolean } | null {
  const wet = (day: number) => onDay(record, 'rainMm', day) > rule.wetDayMm;
  for (let start = from; start + rule.windowDays - 1 <= Math.min(until, lastKnown); start++) {
    const end = start + rule.windowDays - 1;
    const window = Array.from({ length: rule.windowDays }, (_, i) => start + i);
    const total = window.reduce((sum, day) => sum + onDay(record, 'rainMm', day), 0);
    const enough = rule.totalRule === 'at-least' ? total >= rule.totalMm : total > rule.totalMm;
    const wetDays = window.filter(wet);
    if (!enough || wetDays.length < rule.minWetDays) continue;
    if (longestDryRun(wet, end + 1, Math.min(end + rule.searchDays, lastKnown)) >= (rule.dryRunDays || Infinity))
      continue;
    const day = rule.dateConvention === 'window-end' ? end : (wetDays[0] ?? start);
    return { day, confirmed: end + rule.searchDays <= lastKnown };
  }
  return null;
}

/** Longest season after its last search day. */
const DAYS_AFTER_SEARCH = 180;
/** Sums of tenths of a millimetre are not exact. */
const ROUNDING_MM = 1e-6;

/**
 * The day on which a season's rains are over: the first from the last search day on whose soil store, empty when the search
 * began, holds next to nothing; NaN where the record never shows it.
 */
export function endOfRains(record: OwnRecord, from: number, until: number): number {
  const { capacityMm, useMmPerDay, emptyMm } = SEASON_END;
  const last = record.first + record.rainMm.length - 1;
  let held = 0;
  for (let day = from; day <= Math.min(last, until + DAYS_AFTER_SEARCH); day++) {
    const rain = onDay(record, 'rainMm', day);
    held += (Number.isNaN(rain) ? 0 : rain) - useMmPerDay;
    if (held < 0) held = 0;
    else if (held > capacityMm) held = capacityMm;
    if (day >= until && held <= emptyMm + ROUNDING_MM) return day;
  }
  return Number.NaN;
}

function longestDryRun(wet: (day: number) => boolean, from: number, until: number): number {
  let longest = 0;
  let run = 0;
  for (let day = from; day <= until; day++) {
    run = wet(day) ? 0 : run + 1;
    longest = Math.max(longest, run);
  }
  return longest;
}
