import type { Status } from '../vocabulary/provenance.ts';

/**
 * A rule for the onset of planting rains: a window of `windowDays` days with enough rain and enough wet days, not
 * followed by a run of `dryRunDays` dry days within the next `searchDays` days. A wet day has more than `wetDayMm`.
 */
export interface OnsetDefinition {
  readonly name: string;
  readonly totalMm: number;
  /** Whether the total suffices when it is just met. */
  readonly totalRule: 'at-least' | 'more-than';
  readonly windowDays: number;
  readonly wetDayMm: number;
  readonly minWetDays: number;
  /** Length of the dry run that spoils a start; 0: no test. */
  readonly dryRunDays: number;
  /** Days after the window that the dry run is looked for in; 0: no test. */
  readonly searchDays: number;
  /** Which day of the window is the date: the two differ by up to `windowDays` - 1. */
  readonly dateConvention: 'first-wet-day' | 'window-end';
  readonly source: string;
  readonly status: Status;
}

/** What the planner takes where the programme states nothing else. */
export const CLIMATE_SERVICE_ONSET: OnsetDefinition = {
  name: 'climate-service',
  totalMm: 20,
  totalRule: 'at-least',
  windowDays: 3,
  wetDayMm: 1,
  minWetDays: 1,
  dryRunDays: 7,
  searchDays: 21,
  dateConvention: 'first-wet-day',
  source: 'onset rule of the climate-service map rooms of Senegal, Ethiopia and Djibouti (python-maprooms, enacts)',
  status: 'read',
};

/** The numbers of the rule that a programme may replace in its assumptions, as `onset.totalMm`. */
const REPLACEABLE = ['totalMm', 'windowDays', 'wetDayMm', 'minWetDays', 'dryRunDays', 'searchDays'] as const;

/** The definition in force: the climate-service rule with the programme's own numbers in it. */
export function onsetDefinitionOf(assumptions: Readonly<Record<string, number>>): OnsetDefinition {
  const own: Partial<Record<(typeof REPLACEABLE)[number], number>> = {};
  for (const key of REPLACEABLE) {
    const value = assumptions[`onset.${key}`];
    if (value === undefined) continue;
    own[key] = key.endsWith('Mm') ? Math.max(0, value) : Math.max(key === 'windowDays' ? 1 : 0, Math.round(value));
  }
  if (Object.keys(own).length === 0) return CLIMATE_SERVICE_ONSET;
  const source = `${CLIMATE_SERVICE_ONSET.source}; own figures in scenario.json:assumptions`;
  return { ...CLIMATE_SERVICE_ONSET, ...own, name: 'climate-service, own figures', source, status: 'given' };
}

/**
 * Published rules side by side: the choice moves the mean date by two to three weeks. Rules of another form (fuzzy,
 * water balance, spells by amount) are not written here.
 */
export const ONSET_DEFINITIONS: readonly OnsetDefinition[] = [
  CLIMATE_SERVICE_ONSET,
  {
    ...CLIMATE_SERVICE_ONSET,
    name: 'sivakumar-20',
    dryRunDays: 8,
    searchDays: 30,
    source: 'Sivakumar 1988, Agricultural and Forest Meteorology 42:295-305: no dry spell longer than 7 days in 30',
    status: 'memory',
  },
  {
    ...CLIMATE_SERVICE_ONSET,
    name: 'sivakumar-25',
    totalMm: 25,
    searchDays: 30,
    dateConvention: 'window-end',
    source: 'defaults of rain_season in xclim, citing Sivakumar 1988: 25 mm, no run of 7 days in 30',
    status: 'read',
  },
  {
    ...CLIMATE_SERVICE_ONSET,
    name: 'two-day-20',
    windowDays: 2,
    wetDayMm: 0.85,
    dryRunDays: 10,
    searchDays: 30,
    dateConvention: 'window-end',
    source: 'ClimateObject add_start_rain, after Stern, Dennett & Garbutt 1981, Journal of Climatology 1:59-68',
    status: 'read',
  },
  {
    ...CLIMATE_SERVICE_ONSET,
    name: 'five-day-20',
    windowDays: 5,
    wetDayMm: 0.85,
    minWetDays: 3,
    source: 'defaults of the Climate Data Tools (CDT)',
    status: 'read',
  },
  {
    ...CLIMATE_SERVICE_ONSET,
    name: 'three-wet-in-five',
    totalMm: 25,
    totalRule: 'more-than',
    windowDays: 5,
    wetDayMm: 0.1,
    minWetDays: 3,
    dryRunDays: 8,
    searchDays: 30,
    source: 'Jolliffe & Dodd 1994 as coded in ClimIndVis (longest dry run at most 7 in 30 days)',
    status: 'read-2',
  },
  {
    ...CLIMATE_SERVICE_ONSET,
    name: 'garcia',
    totalRule: 'more-than',
    dryRunDays: 11,
    searchDays: 30,
    source: 'Garcia et al. 2007 as coded in ClimIndVis (longest dry run at most 10 in 30 days)',
    status: 'read-2',
  },
  {
    ...CLIMATE_SERVICE_ONSET,
    name: 'no-dry-spell-test',
    dryRunDays: 0,
    searchDays: 0,
    source:
      'the first window of the climate-service rule, taken at its word: a false start in 40 to 50 percent of years',
    status: 'derived',
  },
];

/** FAO/AGRHYMET planting dekad: rain of the dekad itself, then of the next two together. */
export const PLANTING_DEKAD = {
  dekadMm: 25,
  followingMm: 20,
  source: 'FAO 1986, Early agrometeorological crop yield assessment (w9483e)',
  status: 'read' as Status,
};

/** A store of soil water that rain fills and the crop empties: the season ends when it is empty. */
export const SEASON_END = {
  capacityMm: 60,
  useMmPerDay: 5,
  emptyMm: 0.5,
  source: 'defaults of end_season in rpicsa',
  status: 'read' as Status,
};
