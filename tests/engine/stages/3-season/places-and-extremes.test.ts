import { describe, expect, it } from 'vitest';
import { outlookSeason } from '../../../../src/engine/stages/3-season/outlook-season.ts';
import type { Scenario, WeatherStation } from '../../../../src/engine/vocabulary/scenario.ts';
import { blankCommunity, blankDepot } from '../../blank-scenario.ts';
import { CHIGWA, codes, day, MUDZI, places, rainFrom, scenarioOf, station } from './season-fixtures.ts';

/** One station at 1,000 m; the depot at 1,010 m, one community at 1,520 m, one whose height nobody states. */
const at = (elevationM: number | null): WeatherStation => ({
  ...station('S', CHIGWA, rainFrom(2026, Array(20).fill(0))),
  elevationM,
});
const heights = (first: number | null, second: number | null): Partial<Scenario> => ({
  depots: [blankDepot({ position: [30.2, -14.95], elevationM: 1010 })],
  communities: [CHIGWA, MUDZI].map((position, i) =>
    blankCommunity({
      id: `C${i + 1}`,
      crops: [],
      geometry: { kind: 'point', position },
      elevationM: i ? second : first,
    }),
  ),
});

describe('air at the height of a place', () => {
  const { result } = outlookSeason(scenarioOf([at(1000)], heights(1520, null)), places);
  const maximumAt = (site: number) => result.tmaxC[(result.siteStation[site] as number) * result.outlookDays];

  it('500 m above its station a community is 3.25 K cooler (6.5 K per km); ten metres make no difference', () => {
    expect(maximumAt(0)).toBe(30);
    expect(maximumAt(1)).toBeCloseTo(26.75, 12);
    expect([...result.stationRiseM]).toEqual([0, 500]);
  });
  it('a place whose height is not stated has its station’s air, and so have zones', () => {
    expect(maximumAt(2)).toBe(30);
    expect([...result.zoneStation]).toEqual([0, 0, 0]);
  });
  it('nothing is corrected where the station’s height is not stated', () => {
    const unknown = outlookSeason(scenarioOf([at(null)], heights(1520, 400)), places).result;
    expect([...unknown.stationRiseM]).toEqual([0]);
  });
  it('below its station a place is warmer', () => {
    const low = outlookSeason(scenarioOf([at(1000)], heights(480, null)), places).result;
    expect(low.tmaxC[(low.siteStation[1] as number) * low.outlookDays]).toBeCloseTo(33.25, 12);
  });
  it('the onset is the station’s, at whatever height', () => {
    const rain = Array(20).fill(0).with(2, 25).with(9, 5).with(15, 5);
    const wet = { ...station('S', CHIGWA, rainFrom(2026, rain)), elevationM: 1000 };
    const [member] = outlookSeason(scenarioOf([wet], heights(1520, null)), places).result.members;
    expect(member?.onset).toHaveLength(2);
    expect(member?.onset[0]).toBe(member?.onset[1]);
  });
});

describe('a day as hot as one in ten', () => {
  const rows = Array.from({ length: 10 }, (_, y) =>
    Array.from({ length: 7 }, (_, i): [string, number, number, number] => {
      return [`${2016 + y}-11-${11 + i}`, 10, 20 + y, 0];
    }),
  ).flat();
  const { result } = outlookSeason(scenarioOf([station('S', CHIGWA, rows)]), places);
  const on = (iso: string) => day(iso) - result.firstDay;
  it('is the ninth decile of the seven days round it in ten years, each of 20 to 29 °C seven times: 28.1 °C', () => {
    // 70 values in order, seven of each: place 0.9 x 69 = 62.1 counted from nought; the 62nd is 28, the 63rd 29.
    expect(result.hotTmaxC[on('2026-11-14')]).toBeCloseTo(28.1, 9);
    expect(result.tmaxC[on('2026-11-14')]).toBe(24.5);
    expect(result.hotTminC[on('2026-11-14')]).toBe(10);
  });
  it('is the day itself where that was observed or is forecast', () => {
    const known = [...rows, ['2026-11-14', 12, 22, 0] as [string, number, number, number]];
    const season = outlookSeason(scenarioOf([station('S', CHIGWA, known)]), places).result;
    expect(season.hotTmaxC[on('2026-11-14')]).toBe(22);
  });
});

describe('seasons of an odd kind', () => {
  const dry = (year: number, from: string, days: number): [string, number, number, number][] =>
    Array.from({ length: days }, (_, i) => {
      const date = new Date(Date.UTC(year, 0, 1) + (day(`${year}-${from}`) - day(`${year}-01-01`) + i) * 864e5);
      return [date.toISOString().slice(0, 10), 20, 30, 0];
    });
  /** December to February of one season, 25 mm on a day and 5 mm every third day after. */
  const season = (year: number, onset: string) =>
    dry(year, '12-01', 110).map(([date, low, high]): [string, number, number, number] => {
      const since = day(date) - day(onset);
      return [date, low, high, since < 0 ? 0 : since === 0 ? 25 : since % 3 === 0 ? 5 : 0];
    });
  const search = { name: 'late', from: { month: 12, day: 1 }, to: { month: 2, day: 15 } };
  const across = (rows: [string, number, number, number][]) =>
    outlookSeason(scenarioOf([station('S', CHIGWA, rows)], { seasons: [search] }), places);

  it('a season across New Year: an onset in January belongs to the year in which the search began', () => {
    const { result } = across([
      ...season(2023, '2024-01-10'),
      ...season(2024, '2024-12-20'),
      ...season(2025, '2026-02-02'),
    ]);
    expect(result.members.map(({ year }) => year)).toEqual([2023, 2024, 2025]);
    // Moved by their distance from the first of December.
    expect(result.members.map(({ onset }) => onset[0])).toEqual(['2027-01-10', '2026-12-20', '2027-02-02'].map(day));
  });
  it('one season only: one member, told as too few', () => {
    const { result, problems } = across(season(2024, '2024-12-20'));
    expect(result.members).toHaveLength(1);
    expect(result.onsets[0]).toMatchObject({ status: 'expected', p20: day('2026-12-20'), p80: day('2026-12-20') });
    expect(problems.find(({ code }) => code === 'E3004')).toMatchObject({ weight: 'noted', facts: { seasons: 1 } });
  });
  it('a station a thousand kilometres away is used, and said to be far', () => {
    const far = station('FAR', [39.5, -14.95], season(2024, '2024-12-20'));
    const { result, problems } = outlookSeason(scenarioOf([far], { seasons: [search] }), places);
    expect(result.zoneStationKm[0]).toBeGreaterThan(1000);
    expect(problems.find(({ code }) => code === 'E3002')).toMatchObject({ weight: 'noted', value: 'Z1' });
    expect(codes(problems)).not.toContain('E3003');
  });
  it('several seasons a year: the first whose search has not ended when planning begins', () => {
    const seasons = [
      { name: 'long', from: { month: 3, day: 1 }, to: { month: 4, day: 30 } },
      { name: 'short', from: { month: 10, day: 1 }, to: { month: 12, day: 15 } },
    ];
    const rows = rainFrom(2026, Array(20).fill(0));
    expect(outlookSeason(scenarioOf([station('S', CHIGWA, rows)], { seasons }), places).result.seasonName).toBe(
      'short',
    );
  });
});

describe('the latest safe sowing day', () => {
  it('is the end of the rains in four seasons of five less the days to ripe', () => {
    // Every past year 60 mm on 20 November and nothing after: the store of 60 mm, 5 mm a day, is empty on the last day of the
    // search, the 30th, when 60 - 11 x 5 = 5 are left ... and on 1 December none. Soybean takes 100 days.
    const rows = Array.from({ length: 4 }, (_, y) => rainFrom(2022 + y, Array(61).fill(0).with(19, 60))).flat();
    const { result } = outlookSeason(scenarioOf([station('S', CHIGWA, rows)]), places);
    expect(result.windows.find(({ crop }) => crop === 'soybean')?.latestSafeDay).toBe(day('2026-12-01') - 100);
    expect(result.windows.find(({ crop }) => crop === 'cowpea')?.latestSafeDay).toBe(day('2026-12-01') - 80);
  });
});
