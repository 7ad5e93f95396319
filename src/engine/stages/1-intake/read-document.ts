import { civilFromDay, isoDate, type MonthDay } from '../../vocabulary/calendar.ts';
import { CROPS } from '../../vocabulary/crops.ts';
import { sourced } from '../../vocabulary/provenance.ts';
import { SCENARIO_PARTS } from '../../vocabulary/records.ts';
import type { Policy, Prices, Scenario, SeasonSearch } from '../../vocabulary/scenario.ts';
import { type DayNumber, dayNumber } from '../../vocabulary/units.ts';
import { type CellKind, CLOCK, DATE, listOf, MONTH_DAY, TEXT, whole } from './cell-kinds.ts';
import {
  FORECAST_HORIZON_DAYS,
  NO_COST,
  NO_CURRENCY,
  NO_HOLIDAYS,
  SCENARIO_NAME,
  SEASON,
  SEASON_LEAD_DAYS,
  WORKDAYS,
} from './defaults.ts';
import { IntakeReport } from './intake-report.ts';
import { entryAt, type JsonDocument, noteUnknownEntries, openDocument } from './open-document.ts';
import { readAssumptions, readOwnYields, readPolicy, readPrices } from './read-policy.ts';
import { readSpan } from './read-span.ts';
import type { CellDefault, RowReader } from './row-reader.ts';

const FORMAT = 'nodulary-scenario/1';
const NO_DOCUMENT: JsonDocument = { file: 'scenario.json', value: {} };
const MOST_PLANNING_DAYS = 366;
const YEAR = whole({ atLeast: 1900, atMost: 2200 });

/** What scenario.json says, before the other files are read. */
export interface ScenarioDocument {
  readonly name: string;
  readonly seasonYear: number;
  readonly asOf: DayNumber;
  readonly forecastHorizonDays: number;
  /** Null where none was given. */
  readonly timeZone: string | null;
  readonly currency: string;
  readonly contact: string | null;
  readonly planning: Scenario['planning'];
  readonly seasons: readonly SeasonSearch[];
  readonly policy: Policy;
  readonly prices: Prices;
  /** What a crew member is paid a day where the fleet's row does not say. */
  readonly perDiem: CellDefault;
  readonly ownYieldsTPerHa: Scenario['yieldsTPerHa'];
  readonly assumptions: Readonly<Record<string, number>>;
}

/**
 * scenario.json: format, name*, seasonYear*, asOf*, forecastHorizonDays, timeZone*, currency*, contact, planning {from*, to*,
 * workdays, holidays, roadHours}, seasons, policy, prices, yields, assumptions, files. Where an entry that every plan
 * needs does not hold, the report blocks and the numbers returned are NaN, so that the other files can still be read.
 */
export function readDocument(sentReport: IntakeReport, sent: JsonDocument | null): ScenarioDocument {
  // Without a document (said already) an empty one is read to nobody.
  const [report, json] = sent === null ? [new IntakeReport(), NO_DOCUMENT] : [sentReport, sent];
  if (entryAt(json.value, 'format') !== FORMAT) {
    report.add('E1200', { file: json.file, column: 'format', facts: { expected: FORMAT } });
  }
  noteUnknown(report, json);
  const row = openDocument(report, json);
  const asOf = row.required('asOf', DATE);
  const planning = readPlanning(row);
  const seasonYear = row.required('seasonYear', YEAR);
  const prices = readPrices(row);
  const scenario: ScenarioDocument = {
    name: row.orDefault('name', TEXT, SCENARIO_NAME),
    seasonYear,
    asOf,
    forecastHorizonDays: row.orDefault(
      'forecastHorizonDays',
      whole({ atLeast: 0, atMost: MOST_PLANNING_DAYS }),
      FORECAST_HORIZON_DAYS,
    ),
    timeZone: row.orNull('timeZone', TEXT),
    currency: readCurrency(row),
    contact: row.orNull('contact', TEXT),
    planning,
    seasons: readSeasons(report, json, planning),
    policy: readPolicy(row),
    prices,
    perDiem: prices.perDiem === null ? NO_COST : sourced(prices.perDiem, 'given', 'scenario.json: prices.perDiem'),
    ownYieldsTPerHa: readOwnYields(row),
    assumptions: readAssumptions(row, entryAt(json.value, 'assumptions')),
  };
  if (row.kept(scenario) === null) report.add('E1201', { file: json.file });
  else checkCalendar(row, scenario);
  return scenario;
}

function readPlanning(row: RowReader): Scenario['planning'] {
  const [opens, closes] = readSpan(row, ['planning.roadHours.opens', 'planning.roadHours.closes'], CLOCK);
  return {
    from: row.required('planning.from', DATE),
    to: row.required('planning.to', DATE),
    workdays: row.orDefault('planning.workdays', WEEKDAYS, WORKDAYS),
    holidays: sortedOnce(row.orDefault('planning.holidays', listOf(DATE), NO_HOLIDAYS)),
    roadHours: opens === null || closes === null ? null : { opens, closes },
  };
}

const sortedOnce = <T extends number>(values: readonly T[]): readonly T[] => [...new Set(values)].sort((a, b) => a - b);

/** ISO 8601 weekdays, Monday 1; at least one. */
const WEEKDAYS: CellKind<readonly number[]> = {
  none: [],
  read: (text) => {
    const range = { atLeast: 1, atMost: 7 };
    const reading = listOf(whole(range)).read(text);
    if ('fault' in reading) return reading;
    return reading.value.length === 0
      ? { fault: 'E1302', facts: range }
      : { ...reading, value: sortedOnce(reading.value) };
  },
};

function readCurrency(row: RowReader): string {
  const currency = row.orDefault('currency', TEXT, NO_CURRENCY);
  // ISO 4217: three capital letters. Whether the code is in use is not for a planner to judge.
  if (!/^[A-Z]{3}$/.test(currency)) row.note('E1206', { column: 'currency', value: currency });
  return currency;
}

function readSeasons(report: IntakeReport, json: JsonDocument, planning: Scenario['planning']): SeasonSearch[] {
  const sent = entryAt(json.value, 'seasons') ?? [];
  if (!Array.isArray(sent)) {
    report.add('E1209', { file: json.file, column: 'seasons', facts: { expected: 'list' } });
  }
  const seasons = (Array.isArray(sent) ? sent : []).flatMap((_, index) => {
    const row = openDocument(report, json);
    const season = row.kept<SeasonSearch>({
      name: row.required(`seasons.${index}.name`, TEXT),
      from: row.required(`seasons.${index}.searchFrom`, MONTH_DAY),
      to: row.required(`seasons.${index}.searchTo`, MONTH_DAY),
    });
    return season === null ? [] : [season.value];
  });
  if (seasons.length > 0) return seasons;
  report.countDefault(`${json.file}:seasons`, SEASON);
  const from = dayNumber(planning.from - SEASON_LEAD_DAYS);
  return [{ name: SEASON.value, from: monthDay(from), to: monthDay(planning.to) }];
}

function monthDay(day: DayNumber): MonthDay {
  const { month, day: dayOfMonth } = civilFromDay(day);
  return { month, day: dayOfMonth };
}

function checkCalendar(row: RowReader, { planning, seasonYear }: ScenarioDocument): void {
  const [from, to] = [isoDate(planning.from), isoDate(planning.to)];
  const days = planning.to - planning.from + 1;
  if (days < 1) row.note('E1202', { column: 'planning.to', value: to, facts: { from } });
  if (days > MOST_PLANNING_DAYS) row.note('E1203', { column: 'planning.to', value: to, facts: { from, days } });
  const year = civilFromDay(planning.from).year;
  if (year < seasonYear || year > seasonYear + 1) {
    row.note('E1208', { column: 'seasonYear', value: String(seasonYear), facts: { from } });
  }
}

function noteUnknown(report: IntakeReport, json: JsonDocument): void {
  const known: Readonly<Record<string, readonly string[]>> = {
    '': [
      'format',
      'name',
      'seasonYear',
      'asOf',
      'forecastHorizonDays',
      'timeZone',
      'currency',
      'contact',
      'planning',
      'seasons',
      'policy',
      'prices',
      'yields',
      'assumptions',
      'files',
    ],
    planning: ['from', 'to', 'workdays', 'holidays', 'roadHours'],
    policy: [
      'fairness',
      'equalOver',
      'priorityWeights',
      'hectareValue',
      'orderBudget',
      'reservePercent',
      'contingencyPercent',
      'cellsPerSeedFloor',
      'heatRule',
      'hoursAboveStorage',
      'carry',
      'marketDays',
      'promisePrice',
      'trainingMinutes',
      'restAfterHours',
      'restMinutes',
      'release',
    ],
    'policy.release': ['mmInThreeDays'],
    prices: ['nitrogen', 'grain', 'ice', 'perDiem'],
    'prices.grain': CROPS,
    yields: CROPS,
    files: SCENARIO_PARTS,
  };
  for (const [path, names] of Object.entries(known)) noteUnknownEntries(report, json, path, names);
}
