import { describe, expect, it } from 'vitest';
import { outlookSeason } from '../../../../src/engine/stages/3-season/outlook-season.ts';
import type { CropWindow } from '../../../../src/engine/vocabulary/scenario.ts';
import { CHIGWA, codes, day, MUDZI, places, rainFrom, scenarioOf, station, windowOf } from './season-fixtures.ts';

/**
 * Ten days of this season and nothing else. Windows of three days: 2 to 4 November hold 12 + 0 + 9 = 21 mm, at least 20,
 * and two days above 1 mm, the first on the 2nd. After the 4th: dry, 0.4 mm (not wet), dry, 5 mm, dry, dry. The longest
 * dry run is three, but the twenty-one days of the look-ahead end on the 25th and the record on the 10th: unconfirmed.
 */
const TEN_DAYS = [0, 12, 0, 9, 0, 0.4, 0, 5, 0, 0];

describe('this season alone', () => {
  it('takes an onset that its own record shows, unconfirmed while the look-ahead is open', () => {
    const { result, problems } = outlookSeason(scenarioOf([station('S', CHIGWA, rainFrom(2026, TEN_DAYS))]), places);
    expect(result.members.map(({ year }) => year)).toEqual([2026]);
    expect([...(result.members[0]?.onset ?? [])]).toEqual([day('2026-11-02')]);
    const november2 = day('2026-11-02');
    expect(result.onsets[0]).toMatchObject({
      status: 'unconfirmed',
      p20: november2,
      p50: november2,
      p80: november2,
      pastSeasons: 0,
    });
    expect(result.onsets[0]?.falseStartShare).toBeNaN();
    expect(codes(problems)).toContain('E3003');
  });
  it('knows a false start as soon as seven dry days stand in the record', () => {
    // Without the 5 mm of the 8th, days 5 to 11 are seven dry days.
    const rain = [...TEN_DAYS.with(7, 0), 0];
    const scenario = scenarioOf([station('S', CHIGWA, rainFrom(2026, rain))], { asOf: day('2026-11-11') });
    expect(outlookSeason(scenario, places).result.onsets[0]).toMatchObject({ status: 'no data', p50: Number.NaN });
  });
  it('confirms an onset whose look-ahead is complete', () => {
    // 5 mm every third day up to the 25th: no dry run longer than two.
    const rain = [...TEN_DAYS, 5, 0, 0, 5, 0, 0, 5, 0, 0, 5, 0, 0, 5, 0, 0];
    const scenario = scenarioOf([station('S', CHIGWA, rainFrom(2026, rain))], { asOf: day('2026-11-25') });
    expect(outlookSeason(scenario, places).result.onsets[0]).toMatchObject({
      status: 'confirmed',
      p50: day('2026-11-02'),
    });
  });
});

/** A season that begins on a day of November: 25 mm, then 5 mm every third day to 31 December. Dry before. */
const seasonBeginning = (onsetDay: number): number[] =>
  Array.from({ length: 61 }, (_, i) => {
    const since = i + 1 - onsetDay;
    if (since < 0) return 0;
    return since === 0 ? 25 : since % 3 === 0 ? 5 : 0;
  });
/** 25 mm on the 4th, then nothing for twelve days: a false start; the season begins on the 21st. */
const WITH_FALSE_START = seasonBeginning(21).with(3, 25);

describe('past seasons', () => {
  const past = [
    ...rainFrom(2021, seasonBeginning(4)),
    ...rainFrom(2022, WITH_FALSE_START),
    ...rainFrom(2023, seasonBeginning(9)),
    ...rainFrom(2024, seasonBeginning(15)),
    ...rainFrom(2025, seasonBeginning(25)),
  ];
  const dryUntil10 = rainFrom(2026, Array(10).fill(0));
  const { result, problems } = outlookSeason(scenarioOf([station('S', CHIGWA, [...past, ...dryUntil10])]), places);

  it('only those count whose onset came after the as-of day: 2021 (4th) and 2023 (9th) would have begun by the 10th', () => {
    expect(result.members.map(({ year }) => year)).toEqual([2022, 2024, 2025]);
    expect(result.members.map(({ onset }) => onset[0])).toEqual(['2026-11-21', '2026-11-15', '2026-11-25'].map(day));
    expect(codes(problems)).toContain('E3004');
  });
  it('quantiles over 15, 21 and 25 November: 0.2 lies two fifths of the way from the 15th to the 21st, 17.4', () => {
    expect(result.onsets[0]).toMatchObject({ status: 'expected', p50: day('2026-11-21'), pastSeasons: 5 });
    expect((result.onsets[0]?.p20 ?? 0) - day('2026-11-01') + 1).toBeCloseTo(17.4, 9);
    expect((result.onsets[0]?.p80 ?? 0) - day('2026-11-01') + 1).toBeCloseTo(23.4, 9);
  });
  it('one of five past seasons had a false start', () => expect(result.onsets[0]?.falseStartShare).toBe(0.2));
  it('the window of soybean runs 21 days from the onset, and the chance of sowing rises with each member', () => {
    const window = windowOf(result, 0, 'soybean');
    expect(window).toMatchObject({ anchor: 'onset', firstOffsetDays: 0, lastOffsetDays: 21 });
    expect([...window.lastDay]).toEqual(['2026-12-12', '2026-12-06', '2026-12-16'].map(day));
    const chanceOn = (iso: string) => window.sownChance[day(iso) - result.firstDay];
    expect([chanceOn('2026-11-14'), chanceOn('2026-11-15'), chanceOn('2026-11-24'), chanceOn('2026-11-25')]).toEqual([
      0,
      1 / 3,
      2 / 3,
      1,
    ]);
    expect(window.sownChance).toHaveLength(result.outlookDays);
  });
  it('an onset that this season shows holds in every past season', () => {
    const begun = [...past, ...rainFrom(2026, TEN_DAYS)];
    const own = outlookSeason(scenarioOf([station('S', CHIGWA, begun)]), places).result;
    expect(own.members).toHaveLength(5);
    expect(own.members.every(({ onset }) => onset[0] === day('2026-11-02'))).toBe(true);
  });
  it('all count, and it is said, where every past season would have begun by now', () => {
    const scenario = scenarioOf([station('S', CHIGWA, [...past, ...rainFrom(2026, Array(27).fill(0))])], {
      asOf: day('2026-11-27'),
    });
    const late = outlookSeason(scenario, places);
    expect(late.result.members).toHaveLength(5);
    expect(codes(late.problems)).toContain('E3006');
  });
  it('a year with more than a tenth of its days missing does not count', () => {
    // 1 November to 21 December are 51 days: five missing are less than a tenth, six are more.
    const gaps = (count: number) =>
      rainFrom(
        2024,
        seasonBeginning(15).map((mm, i) => (i >= 20 && i < 20 + count ? Number.NaN : mm)),
      );
    const years = (count: number) => {
      const rows = [...past.filter(([date]) => !date.startsWith('2024')), ...gaps(count), ...dryUntil10];
      rows.sort((a, b) => (a[0] < b[0] ? -1 : 1));
      return outlookSeason(scenarioOf([station('S', CHIGWA, rows)]), places).result.onsets[0]?.pastSeasons;
    };
    expect([years(5), years(6)]).toEqual([5, 4]);
  });
  it('figures of the programme replace those of the rule', () => {
    // With 30 mm asked for in three days, no season of 25 + 0 + 0 mm begins on its first day, nor later.
    const scenario = scenarioOf([station('S', CHIGWA, [...past, ...dryUntil10])], {
      assumptions: { 'onset.totalMm': 30 },
    });
    const strict = outlookSeason(scenario, places);
    expect(strict.result.members.every(({ onset }) => Number.isNaN(onset[0]))).toBe(true);
    expect(codes(strict.problems)).toContain('E3008');
    expect(strict.result.onsetDefinition).not.toBe(result.onsetDefinition);
  });

  describe('the programme’s own windows', () => {
    const own = (rows: readonly CropWindow[]) =>
      outlookSeason(scenarioOf([station('S', CHIGWA, [...past, ...dryUntil10])], { cropWindows: rows }), places).result;
    const row = (change: Partial<CropWindow>): CropWindow => ({
      zoneId: null,
      crop: 'cowpea',
      season: null,
      anchor: { kind: 'onset' },
      firstOffsetDays: 10,
      lastOffsetDays: 30,
      ...change,
    });
    it('offsets from the onset', () => {
      const window = windowOf(own([row({})]), 1, 'cowpea');
      expect(window).toMatchObject({ status: 'given', firstOffsetDays: 10, lastOffsetDays: 30 });
      expect(window.firstDay[0]).toBe(day('2026-12-01'));
    });
    it('a fixed date holds in every member', () => {
      const anchor = { kind: 'date', on: day('2026-12-01') } as const;
      const window = windowOf(own([row({ anchor, firstOffsetDays: 0, lastOffsetDays: 14 })]), 0, 'cowpea');
      expect([...window.firstDay]).toEqual(Array(3).fill(day('2026-12-01')));
      expect([...window.lastDay]).toEqual(Array(3).fill(day('2026-12-15')));
    });
    it('a zone’s own row comes before the row for all, whatever their order, and another season’s row does not count', () => {
      const rows = [
        row({ lastOffsetDays: 40 }),
        row({ zoneId: 'Z2', lastOffsetDays: 50 }),
        row({ season: 'other', lastOffsetDays: 60 }),
      ];
      for (const order of [rows, rows.toReversed()]) {
        expect(windowOf(own(order), 0, 'cowpea').lastOffsetDays).toBe(40);
        expect(windowOf(own(order), 1, 'cowpea').lastOffsetDays).toBe(50);
      }
    });
    it('offsets from the end of the season: the day on or after 30 November that leaves the soil store empty', () => {
      // 2024: of 25 mm on the 15th 20 are left that evening, 10 on the 17th; the 5 mm of the 18th are used the same day, so 10
      // again; 5 on the 19th, none on the 20th; from then on every 5 mm are used on their own day. So the store is empty on
      // 30 November, the last search day.
      const window = windowOf(
        own([row({ anchor: { kind: 'cessation' }, firstOffsetDays: -20, lastOffsetDays: -10 })]),
        0,
        'cowpea',
      );
      expect(window.firstDay[1]).toBe(day('2026-11-10'));
      expect(window.lastDay[1]).toBe(day('2026-11-20'));
    });
  });
});

describe('stations', () => {
  const far: [number, number] = [31.2, -14.95];
  const full = [2021, 2022, 2023].flatMap((year) => rainFrom(year, seasonBeginning(12)));
  it('each zone and site has its nearest; the rest of the land that of the middle of the communities', () => {
    const weather = [station('W', CHIGWA, full), station('E', MUDZI, full)];
    const { result } = outlookSeason(scenarioOf(weather), places);
    expect([...result.stations]).toEqual([0, 1]);
    expect([...result.zoneStation].slice(0, 2)).toEqual([0, 1]);
    expect([...result.siteStation]).toEqual([0, 0, 1]);
    expect(Math.max(...result.zoneStationKm.slice(0, 2))).toBeLessThan(0.001);
  });
  it('their order changes nothing but their numbers', () => {
    const other = [2021, 2022, 2023].flatMap((year) => rainFrom(year, seasonBeginning(18)));
    const weather = [station('W', CHIGWA, full), station('E', MUDZI, other)];
    const [one, two] = [weather, weather.toReversed()].map((stations) => outlookSeason(scenarioOf(stations), places));
    expect(two?.result.windows).toEqual(one?.result.windows);
    expect(two?.result.onsets).toEqual(one?.result.onsets);
    expect(two?.result.roadStateChance).toEqual(one?.result.roadStateChance);
  });
  it('a distance of more than 50 km is said', () => {
    // One degree of longitude at 14.95 S is 107.6 km; from 30.05 to 31.2 are 123.7 km, from 30.45 are 80.7 km.
    const { result, problems } = outlookSeason(scenarioOf([station('F', far, full)]), places);
    expect(result.zoneStationKm[0]).toBeCloseTo(123.7, 0);
    expect(result.zoneStationKm[1]).toBeCloseTo(80.7, 0);
    expect(problems.filter(({ code }) => code === 'E3002').map(({ value }) => value)).toEqual(['Z1', 'Z2']);
  });
  it('a gauge set up this year does not take the past away', () => {
    const weather = [station('NEW', CHIGWA, rainFrom(2026, TEN_DAYS)), station('OLD', MUDZI, full)];
    const { result, problems } = outlookSeason(scenarioOf(weather), places);
    expect([...result.stations]).toEqual([1]);
    expect(result.members).toHaveLength(3);
    expect(problems.find(({ code }) => code === 'E3009')?.value).toBe('NEW');
  });
});

describe('the season in play', () => {
  const search = (name: string, from: number, to: number) => ({
    name,
    from: { month: from, day: 1 },
    to: { month: to, day: 15 },
  });
  const name = (seasons: ReturnType<typeof search>[], from: string, to: string) => {
    const planning = { ...scenarioOf([]).planning, from: day(from), to: day(to) };
    return outlookSeason(scenarioOf([], { seasons, planning }), places).result.seasonName;
  };
  it('is the first of the list whose search has not ended when planning begins, else the last', () => {
    const two = [search('B', 2, 4), search('A', 9, 10)];
    expect(name(two, '2026-03-05', '2026-04-10')).toBe('B');
    expect(name(two, '2026-04-15', '2026-05-10')).toBe('B');
    expect(name(two, '2026-04-16', '2026-05-10')).toBe('A');
    expect(name(two, '2026-12-01', '2026-12-20')).toBe('A');
  });
  it('may end in the next year', () => {
    expect(name([search('long', 11, 1), search('dry', 5, 6)], '2027-01-05', '2027-01-20')).toBe('long');
  });
  it('is the planning period where none is named', () => {
    const { result, problems } = outlookSeason(scenarioOf([], { seasons: [] }), places);
    expect(result.seasonName).toBe('planning period');
    expect(codes(problems)).toContain('E3005');
  });
});
