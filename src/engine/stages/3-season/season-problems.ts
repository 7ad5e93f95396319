import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SowingWindow } from '../../vocabulary/stage-results/season.ts';
import type { MemberChoice } from './members.ts';
import type { WeatherPlaces } from './nearest-station.ts';

/** A station farther away than this may have other rain (assumed). */
const FAR_KM = 50;
/** Past seasons below which quantiles are rough (derived: twenty, better thirty). */
const ENOUGH_SEASONS = 20;

/** What the parts of the outlook could not rest on. */
export interface SeasonGaps {
  readonly isSeasonNamed: boolean;
  /** Stations that may stand for a zone. */
  readonly eligible: readonly number[];
  readonly weather: WeatherPlaces;
  readonly choice: MemberChoice;
  readonly pastCount: number;
  readonly assumedAirDays: number;
  readonly unknownRoadDays: number;
  readonly windows: readonly SowingWindow[];
}

/** All problems of the season; none of them stops a plan. */
export function seasonProblems(scenario: Scenario, places: Places, gaps: SeasonGaps): Problem[] {
  const landOutsideZones = places.shares.zone.includes(-1);
  const counts = (zone: number) => zone < scenario.zones.length || landOutsideZones;
  const problems = gaps.isSeasonNamed ? [] : [problem('E3005')];
  if (scenario.weather.length === 0) problems.push(problem('E3001'));
  else {
    problems.push(...stationsWithoutPast(scenario, gaps.eligible), ...farStations(scenario, gaps.weather, counts));
    problems.push(...thinSeasons(gaps.choice, gaps.pastCount));
    if (gaps.assumedAirDays > 0) problems.push(problem('E3007', { facts: { days: gaps.assumedAirDays } }));
    if (gaps.unknownRoadDays > 0) problems.push(problem('E3010', { facts: { days: gaps.unknownRoadDays } }));
  }
  return [...problems, ...undatedWindows(scenario, gaps.windows, counts)];
}

function stationsWithoutPast({ weather }: Scenario, eligible: readonly number[]): Problem[] {
  return weather
    .filter((_, station) => !eligible.includes(station))
    .map(({ id }) => problem('E3009', { value: id, facts: { station: id } }));
}

/** Zones whose weather is measured far away. */
function farStations(scenario: Scenario, weather: WeatherPlaces, counts: (zone: number) => boolean): Problem[] {
  return [...weather.zoneStationKm.entries()]
    .filter(([zone, km]) => km > FAR_KM && counts(zone))
    .map(([zone, km]) => {
      const station = weather.stations[weather.zoneStation[zone] as number] as number;
      const facts = {
        zone: scenario.zones[zone]?.name ?? '',
        station: scenario.weather[station]?.id ?? '',
        km: Math.round(km),
        limitKm: FAR_KM,
      };
      return problem('E3002', {
        about: { part: 'zones', id: scenario.zones[zone]?.id ?? '' },
        value: scenario.zones[zone]?.id ?? null,
        facts,
      });
    });
}

/** What the list of past seasons cannot carry. */
function thinSeasons({ members, basis }: MemberChoice, pastCount: number): Problem[] {
  if (pastCount === 0) return [problem('E3003')];
  const problems = basis === 'all' ? [problem('E3006', { facts: { seasons: pastCount } })] : [];
  if (members.length < ENOUGH_SEASONS)
    problems.push(problem('E3004', { facts: { seasons: members.length, enough: ENOUGH_SEASONS } }));
  return problems;
}

/** Crops that no member season gives a sowing day, with the number of zones. */
function undatedWindows(
  { crops }: Scenario,
  windows: readonly SowingWindow[],
  counts: (zone: number) => boolean,
): Problem[] {
  const undated = windows.filter(({ zone, firstDay }) => counts(zone) && firstDay.every((day) => Number.isNaN(day)));
  return crops.flatMap((crop) => {
    const zones = undated.filter((each) => each.crop === crop).length;
    return zones === 0 ? [] : [problem('E3008', { value: crop, facts: { zones } })];
  });
}
