import type { OnsetDefinition } from '../../reference/onset-definitions.ts';
import { detectOnset, type OnsetFinding } from '../../science/onset.ts';
import { civilFromDay } from '../../vocabulary/calendar.ts';
import type { Scenario, SeasonSearch } from '../../vocabulary/scenario.ts';
import type { SeasonMember } from '../../vocabulary/stage-results/season.ts';
import { dayNumber } from '../../vocabulary/units.ts';
import { type DailyRecord, rainCompleteness } from './daily-record.ts';
import { type SearchWindow, searchWindow } from './season-in-play.ts';

/** Least share of recorded days that makes a past season count (assumed). */
const LEAST_COMPLETENESS = 0.9;

/** A past season at every weather place. */
export interface PastSeason {
  readonly year: number;
  /** Onset moved to the planning season, by its distance from the first search day; NaN where none was found. */
  readonly onset: Float64Array;
  /** 1 where the first candidate ran dry. */
  readonly falseStart: Uint8Array;
}

/** Years before the season's own in which a record is complete enough from the search to the end of the look-ahead. */
export function completeYears(
  record: DailyRecord,
  search: SeasonSearch,
  seasonYear: number,
  definition: OnsetDefinition,
): number[] {
  const years: number[] = [];
  if (record.rainMm.length === 0) return years;
  // A search that crosses New Year may have begun in the year before the first row.
  for (let year = civilFromDay(dayNumber(record.firstDay)).year - 1; year < seasonYear; year++) {
    const { from, to } = searchWindow(search, year);
    if (rainCompleteness(record, from, to + definition.searchDays) >= LEAST_COMPLETENESS) years.push(year);
  }
  return years;
}

/** Every past season that all weather places have recorded well enough, oldest first. */
export function pastSeasons(
  records: readonly DailyRecord[],
  search: SeasonSearch,
  seasonYear: number,
  definition: OnsetDefinition,
): PastSeason[] {
  const complete = records.map((record) => new Set(completeYears(record, search, seasonYear, definition)));
  const [first, ...others] = complete;
  if (!first) return [];
  const planned = searchWindow(search, seasonYear);
  return [...first]
    .filter((year) => others.every((years) => years.has(year)))
    .map((year) => {
      const span = searchWindow(search, year);
      const found = records.map((record) => onsetIn(record, span, span.to + definition.searchDays, definition));
      return {
        year,
        onset: Float64Array.from(found, ({ day }) => day - span.from + planned.from),
        falseStart: Uint8Array.from(found, ({ falseStarts }) => (falseStarts.length > 0 ? 1 : 0)),
      };
    });
}

/** What this season's own record, forecast included, says at each weather place; days are day numbers. */
export function onsetsThisSeason(
  records: readonly DailyRecord[],
  search: SeasonSearch,
  seasonYear: number,
  definition: OnsetDefinition,
): OnsetFinding[] {
  const span = searchWindow(search, seasonYear);
  return records.map((record) => {
    const lastRow = record.rainMm.findLastIndex((mm) => !Number.isNaN(mm));
    return onsetIn(record, span, record.firstDay + lastRow, definition);
  });
}

function onsetIn(
  record: DailyRecord,
  span: SearchWindow,
  lastKnown: number,
  definition: OnsetDefinition,
): OnsetFinding {
  const { firstDay, rainMm } = record;
  const until = Math.min(span.to, lastKnown) - firstDay;
  const found = detectOnset(rainMm, span.from - firstDay, until, lastKnown - firstDay, definition);
  return {
    status: found.status,
    day: found.day + firstDay,
    windowEnd: found.windowEnd + firstDay,
    falseStarts: found.falseStarts.map((day) => day + firstDay),
  };
}

/** `begun`: by this season's record at every place; `later`: past seasons whose onset comes after the as-of day; `all`: every one. */
export interface MemberChoice {
  readonly members: readonly SeasonMember[];
  readonly basis: 'begun' | 'later' | 'all' | 'this season only';
}

/**
 * The seasons that this one may turn out like. Where this season's record shows an onset, confirmed or not, every member
 * takes it there. Elsewhere a past season counts only if its onset came after the as-of day at every place still waiting
 * (or never came): one that would have begun by now says nothing of a season that has not. If none is left, all count.
 */
export function chooseMembers(
  past: readonly PastSeason[],
  thisSeason: readonly OnsetFinding[],
  scenario: Scenario,
): MemberChoice {
  const own = Float64Array.from(thisSeason, ({ day }) => day);
  if (past.length === 0) return { members: [{ year: scenario.seasonYear, onset: own }], basis: 'this season only' };
  const waiting = [...own.keys()].filter((place) => Number.isNaN(own[place]));
  const later = past.filter(({ onset }) => waiting.every((place) => !((onset[place] as number) <= scenario.asOf)));
  const chosen = later.length === 0 ? past : later;
  const members = chosen.map(({ year, onset }) => ({
    year,
    onset: onset.map((day, place) => (Number.isNaN(own[place]) ? day : (own[place] as number))),
  }));
  return { members, basis: waiting.length === 0 ? 'begun' : later.length === 0 ? 'all' : 'later' };
}
