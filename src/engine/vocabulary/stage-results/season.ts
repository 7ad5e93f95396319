import type { Crop } from '../crops.ts';
import type { Status } from '../provenance.ts';
import type { DayNumber } from '../units.ts';

/** One past season (or this one) as the planning season could go: dates already moved to the planning season's days. */
export interface SeasonMember {
  readonly year: number;
  /** Onset day per weather place; NaN where no onset was found in that season. */
  readonly onset: Float64Array;
}

export type OnsetStatus = 'confirmed' | 'unconfirmed' | 'expected' | 'no data';

export interface ZoneOnset {
  /** `confirmed` or `unconfirmed` by this season's own record; `expected` from past seasons. */
  readonly status: OnsetStatus;
  readonly p20: number;
  readonly p50: number;
  readonly p80: number;
  /** Share of past seasons whose first candidate was a false start; NaN without past seasons. */
  readonly falseStartShare: number;
  readonly pastSeasons: number;
}

/** When a zone sows a crop: first and last day per member, NaN where that season had no onset. */
export interface SowingWindow {
  readonly zone: number;
  readonly crop: Crop;
  readonly anchor: 'onset' | 'cessation' | 'date';
  readonly firstOffsetDays: number;
  readonly lastOffsetDays: number;
  readonly status: Status;
  readonly firstDay: Float64Array;
  readonly lastDay: Float64Array;
  /** Last day from which the crop still ripens before the rains end in four seasons of five; NaN where no end is known. */
  readonly latestSafeDay: number;
  /** Chance of having begun to sow by each outlook day (share of members whose first day has come). */
  readonly sownChance: Float64Array;
}

/**
 * Days run from `firstDay` (planning.from) for `outlookDays` days, the first `planningDays` of which may be driven.
 * A weather place is a station at the height of the places that take its air.
 */
/** Days before planning for which the air at depots is told: a year, longer than an inoculant is kept. */
export const EARLIER_DAYS = 365;

export interface SeasonOutlook {
  readonly seasonName: string;
  readonly onsetDefinition: string;
  readonly firstDay: DayNumber;
  readonly planningDays: number;
  readonly outlookDays: number;
  /** Index into scenario.weather, per weather place; a single -1 where the scenario has no station. */
  readonly stations: Int32Array;
  /** Height of each weather place above its station, m in steps of 100. */
  readonly stationRiseM: Float64Array;
  /** Weather place of each zone, and the distance to it; the extra last entry serves communities outside all zones. */
  readonly zoneStation: Int32Array;
  readonly zoneStationKm: Float64Array;
  /** Weather place of each site (depots, then hand-over places). */
  readonly siteStation: Int32Array;
  readonly members: readonly SeasonMember[];
  /** Per zone; the extra last entry serves communities outside all zones. */
  readonly onsets: readonly ZoneOnset[];
  /** Every zone (and the extra one) for every planned crop: windows[zone * crops + crop]. */
  readonly windows: readonly SowingWindow[];
  /** Expected daily extremes, [weatherPlace * outlookDays + day]: observed, forecast, else the median of past seasons. */
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  /** The same of a day as hot as one in ten: ninth decile of past seasons, or the day itself where it is known. */
  readonly hotTminC: Float64Array;
  readonly hotTmaxC: Float64Array;
  /** Expected mean air at each depot on the days before the first planning day, [depot * EARLIER_DAYS + day], the last one last. */
  readonly earlierMeanC: Float64Array;
  /** Where a day's extremes come from. 0 observed, 1 forecast, 2 past seasons, 3 assumed. */
  readonly airBasis: Int8Array;
  /** Shade air at each quarter hour of local clock time, [(weatherPlace * planningDays + day) * 96 + quarter]. */
  readonly airC: Float32Array;
  /** Sun load 0 to 1 (1000 W/m2 = 1) at each quarter hour, same layout. */
  readonly sunLoad: Float32Array;
  /** Local clock minutes of sunrise and sunset, [weatherPlace * planningDays + day]. */
  readonly sunriseMinute: Float64Array;
  readonly sunsetMinute: Float64Array;
  /** Road state of each planning day, index into ROAD_STATES, and the chance of each state, [day * 3 + state]. */
  readonly roadState: Int8Array;
  readonly roadStateChance: Float64Array;
  /** 1 where vehicles may run: a workday, no holiday. */
  readonly workday: Uint8Array;
}
