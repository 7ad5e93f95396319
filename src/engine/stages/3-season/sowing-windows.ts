import { quantile } from '../../numerics/quantile.ts';
import { cropFact } from '../../reference/crops.ts';
import { detectSeasonEnd } from '../../science/onset.ts';
import { sowingChance } from '../../science/sowing-chance.ts';
import type { Crop } from '../../vocabulary/crops.ts';
import type { Status } from '../../vocabulary/provenance.ts';
import type { CropWindow, Scenario, SeasonSearch } from '../../vocabulary/scenario.ts';
import type { SeasonMember, SowingWindow } from '../../vocabulary/stage-results/season.ts';
import type { DailyRecord } from './daily-record.ts';
import { searchWindow } from './season-in-play.ts';

/** Days after the last search day within which the soil store must have emptied, else the season has no end (assumed). */
const LONGEST_SEASON_DAYS = 180;

/** A sowing is safe where the rains outlast the crop in four seasons of five. */
const SAFE_QUANTILE = 0.2;

/** What the windows of one scenario are made from. */
export interface WindowGround {
  readonly scenario: Scenario;
  readonly search: SeasonSearch;
  readonly members: readonly SeasonMember[];
  /** Per weather place. */
  readonly records: readonly DailyRecord[];
  readonly zoneStation: ArrayLike<number>;
  readonly outlookDays: number;
}

interface Rule {
  readonly anchor: CropWindow['anchor'];
  readonly firstOffsetDays: number;
  readonly lastOffsetDays: number;
  readonly status: Status;
}

/** Sowing window of every zone (and the extra one) for every planned crop: [zone * crops + crop]. */
export function sowingWindows(ground: WindowGround): SowingWindow[] {
  const { scenario, zoneStation, records } = ground;
  const ends = records.map((_, place) => seasonEnds(ground, place));
  return Array.from({ length: scenario.zones.length + 1 }, (_, zone) =>
    scenario.crops.map((crop) => {
      const rule = windowRule(ground, zone, crop);
      const anchors = anchorDays(ground, rule.anchor, zoneStation[zone] as number, ends);
      const firstDay = anchors.map((day) => day + rule.firstOffsetDays);
      const maturityDays = cropFact(crop, 'maturityDays', scenario.assumptions).value;
      return {
        zone,
        crop,
        anchor: rule.anchor.kind,
        firstOffsetDays: rule.firstOffsetDays,
        lastOffsetDays: rule.lastOffsetDays,
        status: rule.status,
        firstDay,
        lastDay: anchors.map((day) => day + rule.lastOffsetDays),
        latestSafeDay: quantile(ends[zoneStation[zone] as number] ?? [], SAFE_QUANTILE) - Math.round(maturityDays),
        sownChance: sowingChance(firstDay, scenario.planning.from, ground.outlookDays),
      };
    }),
  ).flat();
}

/** The programme's own row for zone and crop, else its row for every zone, else the crop's usual days from the onset. */
function windowRule({ scenario, search }: WindowGround, zone: number, crop: Crop): Rule {
  const rows = scenario.cropWindows.filter(
    (row) => row.crop === crop && (row.season === null || row.season === search.name),
  );
  const zoneId = scenario.zones[zone]?.id ?? null;
  const own =
    rows.find((row) => row.zoneId !== null && row.zoneId === zoneId) ?? rows.find((row) => row.zoneId === null);
  if (own) return { ...own, status: 'given' };
  const windowDays = cropFact(crop, 'windowDays', scenario.assumptions);
  return {
    anchor: { kind: 'onset' },
    firstOffsetDays: 0,
    lastOffsetDays: Math.max(0, Math.round(windowDays.value)),
    status: windowDays.status,
  };
}

/** The day that the offsets count from, per member; NaN where that season has none. */
function anchorDays(
  { members }: WindowGround,
  anchor: CropWindow['anchor'],
  place: number,
  ends: readonly Float64Array[],
): Float64Array {
  if (anchor.kind === 'date') return new Float64Array(members.length).fill(anchor.on);
  if (anchor.kind === 'onset') return Float64Array.from(members, ({ onset }) => onset[place] as number);
  return ends[place] ?? new Float64Array(members.length).fill(Number.NaN);
}

/** Day on which each member's rains end at a weather place, moved to this season; NaN where they do not. */
function seasonEnds({ search, scenario, members, records }: WindowGround, place: number): Float64Array {
  const planned = searchWindow(search, scenario.seasonYear);
  return Float64Array.from(members, ({ year }) => {
    const span = searchWindow(search, year);
    return seasonEndDay(records[place], span.from, span.to) - span.from + planned.from;
  });
}

/** The season may end from the last search day on: before it, an empty store is a dry spell of the young season. */
function seasonEndDay(record: DailyRecord | undefined, from: number, earliest: number): number {
  if (!record) return Number.NaN;
  const latest = Math.min(earliest + LONGEST_SEASON_DAYS, record.firstDay + record.rainMm.length - 1);
  const [start, first, last] = [from, earliest, latest].map((day) => day - record.firstDay) as [number, number, number];
  return detectSeasonEnd(record.rainMm, start, first, last) + record.firstDay;
}
