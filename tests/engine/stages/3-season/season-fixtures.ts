import { parseIsoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import type { MultiPolygon, Position } from '../../../../src/engine/vocabulary/places.ts';
import type { Scenario, WeatherStation } from '../../../../src/engine/vocabulary/scenario.ts';
import type { Places } from '../../../../src/engine/vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../../../src/engine/vocabulary/stage-results/season.ts';
import type { DayNumber } from '../../../../src/engine/vocabulary/units.ts';
import { blankPlaces, zoneShares } from '../../blank-places.ts';
import {
  blankCommunity,
  blankDepot,
  blankPlanning,
  blankScenario,
  blankStation,
  blankZone,
} from '../../blank-scenario.ts';

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

export const CHIGWA: Position = [30.05, -14.95];
export const MUDZI: Position = [30.45, -14.95];

/** Days in order, each as [ISO date, tmin °C, tmax °C, rain mm]; NaN where nothing was recorded. */
export function station(
  id: string,
  position: Position,
  rows: readonly [string, number, number, number][],
): WeatherStation {
  return blankStation({
    id,
    position,
    days: Int32Array.from(rows, (row) => day(row[0])),
    tminC: Float64Array.from(rows, (row) => row[1]),
    tmaxC: Float64Array.from(rows, (row) => row[2]),
    rainMm: Float64Array.from(rows, (row) => row[3]),
  });
}

/** Season from 1 to 30 November 2026; known up to the evening of 10 November; driven from 11 to 20 November. */
export const scenarioOf = (weather: readonly WeatherStation[], changes: Partial<Scenario> = {}): Scenario =>
  blankScenario({
    planning: blankPlanning(day('2026-11-11'), 10, { workdays: [1, 2, 3, 4, 5], holidays: [day('2026-11-12')] }),
    seasons: [{ name: 'main', from: { month: 11, day: 1 }, to: { month: 11, day: 30 } }],
    crops: ['soybean', 'cowpea'],
    communities: [CHIGWA, MUDZI].map((position, i) =>
      blankCommunity({ id: `C${i + 1}`, crops: [], geometry: { kind: 'point', position } }),
    ),
    zones: ['Chigwa', 'Mudzi'].map((name, i) =>
      blankZone({
        id: `Z${i + 1}`,
        name,
        geometry: { kind: 'area', polygons: ZONE_POLYGONS[i] as MultiPolygon },
      }),
    ),
    depots: [blankDepot({ position: [30.2, -14.95] })],
    weather,
    ...changes,
  });

/** Two communities, each in its zone; sites: the depot between them, then their hand-over places. */
export const places: Places = blankPlaces(scenarioOf([]), {
  zonePolygons: ZONE_POLYGONS,
  zoneAreaHa: new Float64Array(2).fill(12_000),
  shares: zoneShares([
    [0, 0, 1],
    [1, 1, 1],
  ]),
});

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
