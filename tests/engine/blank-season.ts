import type { Scenario, SeasonOutlook } from '../../src/engine/index.ts';
import { EARLIER_DAYS } from '../../src/engine/vocabulary/stage-results/season.ts';

const DAYS_AFTER_PLANNING = 75;
const QUARTERS = 96;

/**
 * One weather place for all, its days of one low and high and 25 °C at every hour, no sun; dry roads, every day worked,
 * light from 6 to 18 h; nothing told of rains.
 */
export function blankSeason(
  scenario: Scenario,
  parts: Partial<SeasonOutlook> = {},
  [lowC, highC]: readonly [number, number] = [20, 30],
): SeasonOutlook {
  const { planning, zones, depots, communities } = scenario;
  const planningDays = planning.to - planning.from + 1;
  const outlookDays = planningDays + DAYS_AFTER_PLANNING;
  return {
    seasonName: 'main',
    onsetDefinition: '',
    firstDay: planning.from,
    planningDays,
    outlookDays,
    stations: new Int32Array(1),
    stationRiseM: new Float64Array(1),
    zoneStation: new Int32Array(zones.length + 1),
    zoneStationKm: new Float64Array(zones.length + 1),
    siteStation: new Int32Array(depots.length + communities.length),
    members: [],
    onsets: [],
    windows: [],
    tminC: new Float64Array(outlookDays).fill(lowC),
    tmaxC: new Float64Array(outlookDays).fill(highC),
    hotTminC: new Float64Array(outlookDays).fill(lowC),
    hotTmaxC: new Float64Array(outlookDays).fill(highC),
    earlierMeanC: new Float64Array(depots.length * EARLIER_DAYS).fill((lowC + highC) / 2),
    airBasis: new Int8Array(outlookDays).fill(2),
    airC: new Float32Array(planningDays * QUARTERS).fill(25),
    sunLoad: new Float32Array(planningDays * QUARTERS),
    sunriseMinute: new Float64Array(planningDays).fill(360),
    sunsetMinute: new Float64Array(planningDays).fill(1080),
    roadState: new Int8Array(planningDays),
    roadStateChance: new Float64Array(planningDays * 3),
    workday: new Uint8Array(planningDays).fill(1),
    ...parts,
  };
}

/**
 * Seasons in which every crop is sown in every zone from one planning day to another, given as offsets; NaN for a season
 * without onset.
 */
export function sownSeasons(
  { planning, zones, crops }: Scenario,
  seasons: readonly (readonly [first: number, last: number])[],
): Pick<SeasonOutlook, 'members' | 'windows'> {
  const outlookDays = planning.to - planning.from + 1 + DAYS_AFTER_PLANNING;
  return {
    members: seasons.map(([first], m) => ({ year: 2000 + m, onset: Float64Array.of(planning.from + first) })),
    windows: Array.from({ length: zones.length + 1 }, (_, zone) =>
      crops.map((crop) => ({
        zone,
        crop,
        anchor: 'onset' as const,
        firstOffsetDays: 0,
        lastOffsetDays: 21,
        status: 'assumed' as const,
        firstDay: Float64Array.from(seasons, ([first]) => planning.from + first),
        lastDay: Float64Array.from(seasons, ([, last]) => planning.from + last),
        latestSafeDay: Number.NaN,
        sownChance: new Float64Array(outlookDays),
      })),
    ).flat(),
  };
}
