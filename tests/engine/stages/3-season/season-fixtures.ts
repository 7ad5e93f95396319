import { parseIsoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import type { MultiPolygon, Position } from '../../../../src/engine/vocabulary/places.ts';
import type { Community, Scenario, WeatherStation, Zone } from '../../../../src/engine/vocabulary/scenario.ts';
import type { Places, SeasonOutlook } from '../../../../src/engine/vocabulary/stage-results.ts';
import type { DayNumber } from '../../../../src/engine/vocabulary/units.ts';

/** An invented district on a southern-hemisphere plateau: zone Mudzi east of zone Chigwa, a depot between them. */
export const day = (iso: string): DayNumber => {
  const found = parseIsoDate(iso);
  if (found === null) throw new Error(`not a date: ${iso}`);
  return found;
};

const square = (west: number, south: number): MultiPolygon => [
  [
    [
      [west, south],
      [west + 0.1, south],
      [west + 0.1, south + 0.1],
      [west, south + 0.1],
      [west, south],
    ],
  ],
];

const ZONE_POLYGONS = [square(30, -15), square(30.4, -15)];

const zones: Zone[] = ['Chigwa', 'Mudzi'].map((name, i) => ({
  id: `Z${i + 1}`,
  name,
  closedFrom: null,
  closedTo: null,
  geometry: { kind: 'area', polygons: ZONE_POLYGONS[i] as MultiPolygon },
}));

const COMMUNITY_POSITIONS: Position[] = [
  [30.05, -14.95],
  [30.45, -14.95],
];

const communities = COMMUNITY_POSITIONS.map(
  (position, i): Community => ({
    id: `C${i + 1}`,
    name: `Community ${i + 1}`,
    zoneId: null,
    farmers: null,
    farmersWomen: null,
    crops: [],
    marketDay: null,
    priority: 1,
    lastInoculatedYear: null,
    store: 'none',
    closedFrom: null,
    closedTo: null,
    elevationM: null,
    geometry: { kind: 'point', position },
  }),
);

/** Days in order, each as [ISO date, tmin °C, tmax °C, rain mm]; NaN where nothing was recorded. */
export function station(
  id: string,
  position: Position,
  rows: readonly [string, number, number, number][],
): WeatherStation {
  return {
    id,
    position,
    elevationM: null,
    days: Int32Array.from(rows, (row) => day(row[0])),
    tminC: Float64Array.from(rows, (row) => row[1]),
    tmaxC: Float64Array.from(rows, (row) => row[2]),
    rainMm: Float64Array.from(rows, (row) => row[3]),
  };
}

export const CHIGWA: Position = [30.05, -14.95];
export const MUDZI: Position = [30.45, -14.95];

/** Season from 1 to 30 November 2026; known up to the evening of 10 November; driven from 11 to 20 November. */
export function scenarioOf(weather: readonly WeatherStation[], changes: Partial<Scenario> = {}): Scenario {
  return {
    name: 'Plateau (invented)',
    seasonYear: 2026,
    asOf: day('2026-11-10'),
    forecastHorizonDays: 10,
    timeZone: 'Africa/Lusaka',
    utcOffsetMinutes: 120,
    currency: 'ZMW',
    planning: {
      from: day('2026-11-11'),
      to: day('2026-11-20'),
      workdays: [1, 2, 3, 4, 5],
      holidays: [day('2026-11-12')],
      roadHours: null,
    },
    seasons: [{ name: 'main', from: { month: 11, day: 1 }, to: { month: 11, day: 30 } }],
    policy: {
      fairness: 'equal-share',
      equalOver: 'community',
      reservePercent: 0,
      contingencyPercent: 0,
      cellsPerSeedFloor: 1e5,
      heatRule: 'label',
      hoursAboveStorage: null,
      carry: 'apart',
      marketDays: 'prefer',
      promisePrice: null,
      trainingMinutes: 0,
      releaseMmInThreeDays: null,
    },
    prices: { nitrogenPerKg: null, grainPerT: {}, icePerKg: null, perDiem: null },
    yieldsTPerHa: {},
    assumptions: {},
    crops: ['soybean', 'cowpea'],
    communities,
    zones,
    handoverPoints: [],
    cropWindows: [],
    depots: [],
    products: [],
    lots: [],
    vehicles: [],
    roads: [],
    weather,
    handovers: [],
    defaults: [],
    origins: [],
    sha256: '',
    ...changes,
  };
}

/** Two communities, each in its zone; sites: the depot between them, then their hand-over places. */
export const places: Places = {
  communityPolygons: [null, null],
  zonePolygons: ZONE_POLYGONS,
  communityAreaHa: new Float64Array(2).fill(Number.NaN),
  zoneAreaHa: new Float64Array(2).fill(12_000),
  shares: { community: Int32Array.of(0, 1), zone: Int32Array.of(0, 1), share: Float64Array.of(1, 1) },
  handoverPlaces: COMMUNITY_POSITIONS.map((position, i) => ({
    pointId: null,
    name: `Community ${i + 1}`,
    position,
    status: 'assumed',
    communities: [i],
    opensMinute: null,
    closesMinute: null,
    store: 'none',
  })),
  communityPlace: Int32Array.of(0, 1),
  sites: [
    { kind: 'depot', index: 0, position: [30.2, -14.95] },
    { kind: 'handover', index: 0, position: CHIGWA },
    { kind: 'handover', index: 1, position: MUDZI },
  ],
  travel: {
    classes: [],
    vehicleClass: new Int32Array(0),
    closureSets: [[]],
    dayClosureSet: new Int32Array(10),
    tables: [],
    graph: {
      nodeCount: 0,
      arcOffsets: new Int32Array(1),
      arcTo: new Int32Array(0),
      arcKm: new Float64Array(0),
      arcPieces: [],
      siteNode: [],
      siteAccessKm: [],
    },
  },
  unreachable: [],
};

/** Rain from 1 November of a year, one number a day; 20 to 30 °C throughout. */
export const rainFrom = (year: number, rainMm: readonly number[]): [string, number, number, number][] =>
  rainMm.map((mm, i) => {
    const date = new Date(Date.UTC(year, 10, 1 + i)).toISOString().slice(0, 10);
    return [date, 20, 30, mm];
  });

export const codes = (problems: readonly { code: string }[]) => problems.map(({ code }) => code);

export const windowOf = (season: SeasonOutlook, zone: number, crop: string) => {
  const found = season.windows.find((window) => window.zone === zone && window.crop === crop);
  if (!found) throw new Error(`no window for ${crop} in zone ${zone}`);
  return found;
};
