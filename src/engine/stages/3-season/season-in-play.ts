import { civilFromDay, dayOfMonthDay } from '../../vocabulary/calendar.ts';
import type { Scenario, SeasonSearch } from '../../vocabulary/scenario.ts';
import type { DayNumber } from '../../vocabulary/units.ts';

/** Days between which an onset is looked for in one year. */
export interface SearchWindow {
  readonly from: DayNumber;
  readonly to: DayNumber;
}

/** The search of a season whose year is `year`; a search that ends before it begins ends in the next year. */
export function searchWindow(search: SeasonSearch, year: number): SearchWindow {
  const from = dayOfMonthDay(year, search.from);
  const sameYear = dayOfMonthDay(year, search.to);
  return { from, to: sameYear < from ? dayOfMonthDay(year + 1, search.to) : sameYear };
}

/**
 * The season planned for: the first of the list whose search has not ended when planning begins, else the last. Null
 * where the scenario names no season.
 */
export function seasonInPlay({ seasons, seasonYear, planning }: Scenario): SeasonSearch | null {
  return seasons.find((search) => searchWindow(search, seasonYear).to >= planning.from) ?? seasons.at(-1) ?? null;
}

/** Where no season is named: onsets are looked for in the planning period itself. */
export function planningAsSeason({ planning }: Scenario): SeasonSearch {
  return { name: 'planning period', from: civilFromDay(planning.from), to: civilFromDay(planning.to) };
}
