import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CLIMATE_SERVICE_ONSET } from '../../../../src/engine/reference/onset-definitions.ts';
import { detectOnset } from '../../../../src/engine/science/onset.ts';
import { outlookSeason } from '../../../../src/engine/stages/3-season/outlook-season.ts';
import { dayFromCivil } from '../../../../src/engine/vocabulary/calendar.ts';
import type { Position } from '../../../../src/engine/vocabulary/places.ts';
import type { Scenario, Zone } from '../../../../src/engine/vocabulary/scenario.ts';
import { sharedFolder } from '../../../shared-folder.ts';
import { day, places, scenarioOf, station } from './season-fixtures.ts';

type Row = [string, number, number, number];

/** Rows of a scenario's weather up to a date, by station; a zone and a depot are put at each station. */
function outlookAtStations(name: string, lastDate: string, changes: Partial<Scenario>) {
  const rows = new Map<string, { position: Position; rows: Row[] }>();
  const number = (cell: string | undefined) => (cell ? Number(cell) : Number.NaN);
  const file = readFileSync(`${sharedFolder}/scenarios/${name}/weather.csv`, 'utf8');
  for (const line of file.trim().split('\n').slice(1)) {
    const [id = '', lat, lon, date = '', low, high, mm] = line.split(',');
    if (date > lastDate) continue;
    const found = rows.get(id) ?? { position: [number(lon), number(lat)], rows: [] };
    rows.set(id, found);
    // Intake takes both extremes as missing where the minimum stands above the maximum.
    const extremes = number(low) > number(high) ? [Number.NaN, Number.NaN] : [number(low), number(high)];
    found.rows.push([date, extremes[0] as number, extremes[1] as number, number(mm)]);
  }
  const weather = [...rows].map(([id, found]) => station(id, found.position, found.rows));
  const zones = weather.map(
    ({ id, position }): Zone => ({
      id,
      name: id,
      closedFrom: null,
      closedTo: null,
      geometry: { kind: 'point', position },
    }),
  );
  const sites = weather.map(({ position }, index) => ({ kind: 'depot' as const, index, position }));
  const began = performance.now();
  const outlook = outlookSeason(scenarioOf(weather, { ...changes, zones }), {
    ...places,
    zonePolygons: zones.map(() => null),
    sites,
  });
  return { ...outlook, weather, milliseconds: performance.now() - began };
}

const planning = (from: string, to: string): Scenario['planning'] => ({
  from: day(from),
  to: day(to),
  workdays: [1, 2, 3, 4, 5, 6],
  holidays: [],
  roadHours: null,
});

describe.skipIf(sharedFolder === null)('forty years at two stations of the Sahel, planned from 11 June 1980', () => {
  const asOf = day('1980-06-10');
  const outlook = outlookAtStations('sahel-east', '1980-06-20', {
    seasonYear: 1980,
    asOf,
    utcOffsetMinutes: 0,
    planning: planning('1980-06-11', '1980-07-31'),
    seasons: [{ name: 'main', from: { month: 5, day: 1 }, to: { month: 8, day: 15 } }],
  });
  const { result, weather } = outlook;
  const niamey = weather.findIndex(({ id }) => id === 'Niamey_Aero');

  it('the members are those past seasons that had not begun by 10 June at the station still waiting', () => {
    expect(result.onsets[niamey]?.status).toBe('expected');
    const record = weather[niamey];
    const onsetDay = (year: number) => {
      const rain = new Map(Array.from(record?.days ?? [], (d, i) => [d, record?.rainMm[i] ?? Number.NaN]));
      const may1 = dayFromCivil(year, 5, 1);
      const season = Array.from({ length: 128 }, (_, i) => rain.get(dayFromCivil(year, 5, 1 + i)) ?? Number.NaN);
      return detectOnset(season, 0, dayFromCivil(year, 8, 15) - may1, 127, CLIMATE_SERVICE_ONSET).day;
    };
    const chosen = new Set(result.members.map(({ year }) => year));
    const JUNE_10 = 40;
    for (const { year, onset } of result.members) {
      expect(onsetDay(year)).toBeGreaterThan(JUNE_10);
      expect((onset[niamey] as number) - day('1980-05-01')).toBe(onsetDay(year));
    }
    const left = [1953, 1955, 1957, 1968, 1969, 1977, 1979].filter((year) => !chosen.has(year));
    expect(left).toHaveLength(7);
    for (const year of left) expect(onsetDay(year)).toBeLessThanOrEqual(JUNE_10);
    expect(result.members.length + left.length).toBe(result.onsets[niamey]?.pastSeasons);
  });
  it.each([
    ['Niamey_Aero', 34.0, 23.6],
    ["Birni N'Konni", 33.7, 23.4],
  ])('%s: the expected air of July is near the mean of all Julys, %f and %f °C (derived)', (id, tmax, tmin) => {
    const place = weather.findIndex((each) => each.id === id);
    const july = Array.from(
      { length: 31 },
      (_, i) => place * result.outlookDays + day('1980-07-01') - result.firstDay + i,
    );
    const mean = (column: Float64Array) => july.reduce((sum, at) => sum + (column[at] as number), 0) / july.length;
    // Half a degree: these are medians of a skewed month, the published figures means.
    expect(Math.abs(mean(result.tmaxC) - tmax)).toBeLessThan(0.5);
    expect(Math.abs(mean(result.tminC) - tmin)).toBeLessThan(0.5);
  });
  it('takes less than a second', () => expect(outlook.milliseconds).toBeLessThan(1000));
});

it.skipIf(sharedFolder === null)('three stations with twenty years take less than a second', () => {
  const outlook = outlookAtStations('rwanda-sectors', '2026-03-04', {
    asOf: day('2026-03-04'),
    planning: planning('2026-03-05', '2026-04-10'),
    seasons: [{ name: 'B', from: { month: 2, day: 1 }, to: { month: 4, day: 15 } }],
  });
  expect(outlook.result.onsets[0]?.pastSeasons).toBe(20); // 2006 to 2025, nothing missing
  expect(outlook.milliseconds).toBeLessThan(1000);
});
