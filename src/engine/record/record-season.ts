import { quantile } from '../numerics/quantile.ts';
import { dayNumber, isoDate, type Plan, type Scenario, type SeasonOutlook } from '../vocabulary/index.ts';
import { roundAll, roundOrNull } from './rounding.ts';

export function recordSeason(scenario: Scenario, season: SeasonOutlook): Plan['season'] {
  const { stations, onsets, windows, members, planningDays } = season;
  return {
    seasonName: season.seasonName,
    onsetDefinition: season.onsetDefinition,
    memberYears: members.map(({ year }) => year),
    stations: Array.from(stations, (station) => scenario.weather[station]?.id ?? ''),
    zoneStation: Array.from(season.zoneStation),
    zoneStationKm: roundAll(season.zoneStationKm, 'kilometres'),
    onset: {
      status: onsets.map(({ status }) => status),
      p20: onsets.map(({ p20 }) => dateOrNull(p20)),
      p50: onsets.map(({ p50 }) => dateOrNull(p50)),
      p80: onsets.map(({ p80 }) => dateOrNull(p80)),
      falseStartShare: onsets.map(({ falseStartShare }) => roundOrNull(falseStartShare, 'share')),
      pastSeasons: onsets.map(({ pastSeasons }) => pastSeasons),
    },
    memberOnset: members.flatMap(({ onset }) => Array.from(onset, dateOrNull)),
    windows: {
      zone: windows.map(({ zone }) => zone),
      crop: windows.map(({ crop }) => scenario.crops.indexOf(crop)),
      anchor: windows.map(({ anchor }) => anchor),
      firstOffsetDays: windows.map(({ firstOffsetDays }) => firstOffsetDays),
      lastOffsetDays: windows.map(({ lastOffsetDays }) => lastOffsetDays),
      firstP20: windows.map(({ firstDay }) => dateOrNull(quantile(firstDay, 0.2))),
      firstP50: windows.map(({ firstDay }) => dateOrNull(quantile(firstDay, 0.5))),
      firstP80: windows.map(({ firstDay }) => dateOrNull(quantile(firstDay, 0.8))),
      lastP50: windows.map(({ lastDay }) => dateOrNull(quantile(lastDay, 0.5))),
    },
    roadState: Array.from(season.roadState.subarray(0, planningDays)),
    workday: Array.from(season.workday.subarray(0, planningDays)),
    tminC: expectedExtremes(season, season.tminC),
    tmaxC: expectedExtremes(season, season.tmaxC),
  };
}

/** The planning days of each station's outlook. */
function expectedExtremes({ stations, planningDays, outlookDays }: SeasonOutlook, celsius: Float64Array): number[] {
  return Array.from(stations).flatMap((_, place) =>
    roundAll(celsius.subarray(place * outlookDays, place * outlookDays + planningDays), 'celsius'),
  );
}

/** ISO date of a day number; a quantile between two days gives the nearer one, the later at one half. */
function dateOrNull(day: number): string | null {
  return Number.isNaN(day) ? null : isoDate(dayNumber(Math.round(day)));
}
