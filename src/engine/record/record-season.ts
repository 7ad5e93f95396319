import { exactSum } from '../numerics/exact-sum.ts';
import { quantile } from '../numerics/quantile.ts';
import { dayNumber, isoDate, type Needs, type Plan, type Scenario, type SeasonOutlook } from '../vocabulary/index.ts';
import { round, roundAll, roundOrNull } from './rounding.ts';

export function recordSeason(scenario: Scenario, season: SeasonOutlook, needs: Needs): Plan['season'] {
  const { stations, onsets, windows, members, planningDays } = season;
  return {
    seasonName: season.seasonName,
    onsetDefinition: season.onsetDefinition,
    memberYears: members.map(({ year }) => year),
    stations: Array.from(stations, (station) => scenario.weather[station]?.id ?? ''),
    stationRiseM: Array.from(season.stationRiseM),
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
      latestSafe: windows.map(({ latestSafeDay }) => dateOrNull(latestSafeDay)),
    },
    roadState: Array.from(season.roadState.subarray(0, planningDays)),
    workday: Array.from(season.workday.subarray(0, planningDays)),
    sownChance: districtSownChance(scenario, season, needs),
    airBasis: Array.from(expectedDays(season, season.airBasis)),
    tminC: expectedExtremes(season, season.tminC),
    tmaxC: expectedExtremes(season, season.tmaxC),
    hotTmaxC: expectedExtremes(season, season.hotTmaxC),
  };
}

/** Chance of having begun to sow on each planning day, zones and crops weighed by planned hectares. */
function districtSownChance(scenario: Scenario, { windows, planningDays }: SeasonOutlook, needs: Needs): number[] {
  const total = exactSum(needs.plannedHa);
  return Array.from({ length: planningDays }, (_, day) => {
    const sown = exactSum(
      Array.from(needs.plannedHa, (hectares, row) => {
        const zone = needs.zone[row] as number;
        const window = (zone < 0 ? scenario.zones.length : zone) * scenario.crops.length + (needs.crop[row] as number);
        return hectares * (windows[window]?.sownChance[day] ?? 0);
      }),
    );
    return round(total > 0 ? sown / total : 0, 'share');
  });
}

/** The planning days of each station's outlook. */
function expectedDays({ stations, planningDays, outlookDays }: SeasonOutlook, column: ArrayLike<number>): number[] {
  return Array.from(stations).flatMap((_, place) =>
    Array.from({ length: planningDays }, (_, day) => column[place * outlookDays + day] as number),
  );
}

function expectedExtremes(season: SeasonOutlook, celsius: Float64Array): number[] {
  return roundAll(expectedDays(season, celsius), 'celsius');
}

/** ISO date of a day number; a quantile between two days gives the nearer one, the later at one half. */
function dateOrNull(day: number): string | null {
  return Number.isNaN(day) ? null : isoDate(dayNumber(Math.round(day)));
}
