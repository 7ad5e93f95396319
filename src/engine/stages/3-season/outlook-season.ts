import { onsetDefinitionOf } from '../../reference/onset-definitions.ts';
import { roadRainRule } from '../../reference/road-rain.ts';
import { isoWeekday } from '../../vocabulary/calendar.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import { EARLIER_DAYS } from '../../vocabulary/stage-results/season.ts';
import type { StageResult } from '../../vocabulary/stage-results/stage-result.ts';
import { dayNumber } from '../../vocabulary/units.ts';
import { type DailyRecord, dailyRecord, NO_RECORD } from './daily-record.ts';
import { expectedExtremes } from './expected-extremes.ts';
import { chooseMembers, completeYears, onsetsThisSeason, pastSeasons } from './members.ts';
import { assignStations, type WeatherPlaces } from './nearest-station.ts';
import { quarterHourAir } from './quarter-hour-air.ts';
import { roadOutlook } from './road-state.ts';
import { planningAsSeason, seasonInPlay } from './season-in-play.ts';
import { seasonProblems } from './season-problems.ts';
import { seasonProvenance } from './season-provenance.ts';
import { sowingWindows } from './sowing-windows.ts';
import { zoneOnsets } from './zone-onsets.ts';

/** Days looked at beyond the last planning day: a sowing window may open that much later. */
const DAYS_BEYOND_PLANNING = 75;

/**
 * When each zone can sow each crop, how hot each quarter of an hour is, which roads hold: from the daily weather record,
 * this season's days up to the as-of day, and the forecast. Never fails: without any record the plan still has air (an
 * assumed pair), daylight, passable roads and the sowing windows that the programme gives by date, each said in a problem.
 */
export function outlookSeason(scenario: Scenario, places: Places): StageResult<SeasonOutlook> {
  const { planning, seasonYear, asOf, utcOffsetMinutes } = scenario;
  const planningDays = planning.to - planning.from + 1;
  const outlookDays = planningDays + DAYS_BEYOND_PLANNING;
  const definition = onsetDefinitionOf(scenario.assumptions);
  const named = seasonInPlay(scenario);
  const search = named ?? planningAsSeason(scenario);

  const everyRecord = scenario.weather.map(dailyRecord);
  const hasPast = (record: DailyRecord) => completeYears(record, search, seasonYear, definition).length > 0;
  const eligible = stationsWithPast(everyRecord, hasPast);
  const weather = assignStations(scenario, places, eligible);
  const records = Array.from(weather.stations, (station) => everyRecord[station] ?? NO_RECORD);

  const past = pastSeasons(records, search, seasonYear, definition);
  const thisSeason = onsetsThisSeason(records, search, seasonYear, definition);
  const choice = chooseMembers(past, thisSeason, scenario);
  const { members } = choice;
  const { zoneStation } = weather;
  const windows = sowingWindows({ scenario, search, members, records, zoneStation, outlookDays });

  const extremes = expectedExtremes(records, weather.riseM, asOf, planning.from, outlookDays);
  const air = quarterHourAir(weather.positions, extremes, planning.from, planningDays, outlookDays, utcOffsetMinutes);
  const roadRule = roadRainRule(scenario.assumptions);
  const roads = roadOutlook(records, members, seasonYear, planning.from, planningDays, roadRule);

  return {
    result: {
      seasonName: search.name,
      onsetDefinition: definition.name,
      firstDay: planning.from,
      planningDays,
      outlookDays,
      stations: weather.stations,
      stationRiseM: weather.riseM,
      zoneStation,
      zoneStationKm: weather.zoneStationKm,
      siteStation: weather.siteStation,
      members,
      onsets: zoneOnsets(zoneStation, members, past, thisSeason),
      windows,
      tminC: extremes.tminC,
      tmaxC: extremes.tmaxC,
      hotTminC: extremes.hotTminC,
      hotTmaxC: extremes.hotTmaxC,
      earlierMeanC: earlierMeanAir(scenario, weather, everyRecord),
      airBasis: extremes.basis,
      ...air,
      roadState: roads.state,
      roadStateChance: roads.chance,
      workday: workdays(scenario, planningDays),
    },
    problems: seasonProblems(scenario, places, {
      isSeasonNamed: named !== null,
      eligible,
      weather,
      choice,
      pastCount: past.length,
      assumedAirDays: extremes.assumedDays,
      unknownRoadDays: roads.unknownDays,
      windows,
    }),
    provenance: seasonProvenance(scenario, definition, roadRule, past.length),
  };
}

/**
 * Stations that may stand for a zone: those with a complete past season, so that a gauge set up this year does not take
 * the past away from all; where none has one, all.
 */
function stationsWithPast(records: readonly DailyRecord[], hasPast: (record: DailyRecord) => boolean): number[] {
  const all = [...records.keys()];
  const withPast = all.filter((station) => hasPast(records[station] ?? NO_RECORD));
  return withPast.length > 0 ? withPast : all;
}

/** Middle of the expected extremes at each depot on the days before planning. */
function earlierMeanAir(
  { depots, asOf, planning }: Scenario,
  { stations, riseM, siteStation }: WeatherPlaces,
  everyRecord: readonly DailyRecord[],
): Float64Array {
  const places = depots.map((_, depot) => siteStation[depot] as number);
  const records = places.map((place) => everyRecord[stations[place] as number] ?? NO_RECORD);
  const rises = places.map((place) => riseM[place] as number);
  const firstDay = dayNumber(planning.from - EARLIER_DAYS);
  const { tminC, tmaxC } = expectedExtremes(records, rises, asOf, firstDay, EARLIER_DAYS);
  return tminC.map((low, i) => (low + (tmaxC[i] as number)) / 2);
}

function workdays({ planning }: Scenario, planningDays: number): Uint8Array {
  return Uint8Array.from({ length: planningDays }, (_, offset) => {
    const day = dayNumber(planning.from + offset);
    return planning.workdays.includes(isoWeekday(day)) && !planning.holidays.includes(day) ? 1 : 0;
  });
}
