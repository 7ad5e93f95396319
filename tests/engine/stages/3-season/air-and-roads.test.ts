import { describe, expect, it } from 'vitest';
import { outlookSeason } from '../../../../src/engine/stages/3-season/outlook-season.ts';
import { PROBLEM_WEIGHTS } from '../../../../src/engine/vocabulary/problems.ts';
import { CHIGWA, codes, day, MUDZI, places, rainFrom, scenarioOf, station } from './season-fixtures.ts';

type Row = [string, number, number, number];

describe('expected extremes', () => {
  // Around 14 November of the two years before: 9 to 19 November, one value a day, so the median of the seven days from
  // the 11th to the 17th of both years is the median of fourteen numbers.
  const year = (y: number, first: number): Row[] =>
    Array.from({ length: 11 }, (_, i) => [`${y}-11-${String(9 + i).padStart(2, '0')}`, first - 10 + i, first + i, 0]);
  // 2024: Tmax 30 on the 9th to 40 on the 19th, so 32 to 38 from the 11th to the 17th; 2025: 20 to 30, so 22 to 28.
  const rows: Row[] = [
    ...year(2024, 30),
    ...year(2025, 20),
    ['2026-11-10', 18, 29, 0],
    ['2026-11-11', 17, 31, 0],
    ['2026-11-12', Number.NaN, 35, 0],
    ['2026-11-13', Number.NaN, 11, 0],
  ];
  const { result } = outlookSeason(scenarioOf([station('S', CHIGWA, rows)], { asOf: day('2026-11-11') }), places);
  const on = (iso: string) => {
    const at = day(iso) - result.firstDay;
    return [result.tminC[at], result.tmaxC[at], result.airBasis[at]];
  };
  it('observed where the record has them', () => expect(on('2026-11-11')).toEqual([17, 31, 0]));
  it('the median of past years beyond the forecast: half way between 28 and 32 °C', () => {
    expect(on('2026-11-14')).toEqual([20, 30, 2]);
  });
  it('a missing minimum is the median of past years: 12 November from 9 to 15, 10 to 16 and 20 to 26, half of 16 + 20', () => {
    expect(on('2026-11-12')).toEqual([18, 35, 2]);
  });
  it('both are, where the filled pair would stand the wrong way round', () => {
    // 13 November: Tmin from the 10th to the 16th 11 to 17 and 21 to 27, so 19; Tmax 29, not the 11 °C of the row.
    expect(on('2026-11-13')).toEqual([19, 29, 2]);
  });
  it('assumed where no past year tells, and said', () => {
    const outlook = outlookSeason(scenarioOf([station('S', CHIGWA, rainFrom(2026, [0]))]), places);
    expect([outlook.result.tminC[0], outlook.result.tmaxC[0], outlook.result.airBasis[0]]).toEqual([20, 34, 3]);
    expect(codes(outlook.problems)).toContain('E3007');
  });
  it('a forecast day is marked as such', () => {
    const known = outlookSeason(scenarioOf([station('S', CHIGWA, rows)]), places).result; // as of 10 November
    expect(known.airBasis[0]).toBe(1);
  });
});

describe('quarter hours', () => {
  const { result } = outlookSeason(scenarioOf([station('S', CHIGWA, rainFrom(2026, [0]))]), places);
  const quarter = (planningDay: number, hour: number) => (planningDay * 96 + hour * 4) as number;
  it('96 a planning day and weather place, between the extremes', () => {
    expect(result.airC).toHaveLength(10 * 96);
    expect(Math.max(...result.airC)).toBeLessThanOrEqual(34);
    expect(Math.min(...result.airC)).toBeGreaterThanOrEqual(20);
  });
  it('warmest in the early afternoon, when the sun is still high; dark and cooling at night', () => {
    const at = (hour: number) => result.airC[quarter(3, hour)] as number;
    expect(at(14)).toBeGreaterThan(33.5);
    expect(at(14)).toBeGreaterThan(at(9));
    expect(at(21)).toBeGreaterThan(at(23));
    expect(result.sunLoad[quarter(3, 12)]).toBeGreaterThan(0.6);
    expect(result.sunLoad[quarter(3, 2)]).toBe(0);
  });
  it('daylight of a plateau at 14.95 S, 30.05 E on 11 November by a clock two hours ahead of UTC', () => {
    // Solar noon: 12:00 less 0.2 minutes of longitude and about 16 minutes of sundial: 11:43:50. Day length of FAO-56 eq 34
    // for day 315: declination -0.301, 12.63 h; the lower horizon of a clock sunrise adds 0.833 degrees at either end,
    // 2 * 0.833 * 4 / (cos 14.95 cos 17.2 sin 94.7) = 7.2 minutes: 765 minutes.
    const [rise, set] = [result.sunriseMinute[0] as number, result.sunsetMinute[0] as number];
    expect(Math.abs((rise + set) / 2 - 703.8)).toBeLessThan(0.5);
    expect(Math.abs(set - rise - 765)).toBeLessThan(2);
  });
});

describe('roads', () => {
  it('known rain: difficult from 10 mm and closed from 40 mm on the day or the day before', () => {
    // 10 November 12 mm; forecast 11th 0, 12th 0, 13th 40, 14th 9.9, 15th 0, 16th 10.
    const rain = [...Array(9).fill(0), 12, 0, 0, 40, 9.9, 0, 10];
    const { result } = outlookSeason(scenarioOf([station('S', CHIGWA, rainFrom(2026, rain))]), places);
    expect([...result.roadState.slice(0, 6)]).toEqual([1, 0, 2, 2, 0, 1]);
    expect([...result.roadStateChance.slice(6, 9)]).toEqual([0, 0, 1]);
  });
  it('the worst of the stations', () => {
    const dry = rainFrom(2026, Array(16).fill(0));
    const wet = rainFrom(2026, Array(16).fill(0).with(11, 45));
    const { result } = outlookSeason(scenarioOf([station('W', CHIGWA, dry), station('E', MUDZI, wet)]), places);
    expect([...result.roadState.slice(0, 4)]).toEqual([0, 2, 2, 0]);
  });
  it('beyond the forecast: the chance over member seasons, planned with where at least half are as bad or worse', () => {
    // Four past years, dry but for 18 November: 0, 12, 15 and 50 mm. On the 18th and 19th one is passable, two difficult,
    // one closed: closed in 1/4, difficult or worse in 3/4. No season begins, so all four may still be this one.
    const years = [0, 12, 15, 50].flatMap((mm, i) => rainFrom(2022 + i, Array(61).fill(0).with(17, mm)));
    const known = rainFrom(2026, Array(10).fill(0));
    const { result } = outlookSeason(scenarioOf([station('S', CHIGWA, [...years, ...known])]), places);
    expect(result.members).toHaveLength(4);
    const at = day('2026-11-18') - result.firstDay;
    expect([...result.roadStateChance.slice(3 * at, 3 * at + 3)]).toEqual([0.25, 0.5, 0.25]);
    expect([...result.roadState.slice(at - 1)]).toEqual([0, 1, 1, 0]);
  });
  it('the programme’s own limits', () => {
    const weather = [station('S', CHIGWA, rainFrom(2026, [...Array(9).fill(0), 12]))];
    const state = (assumptions: Record<string, number>) =>
      outlookSeason(scenarioOf(weather, { assumptions }), places).result.roadState[0];
    expect([state({}), state({ 'road.closedMm': 12 }), state({ 'road.difficultMm': 13 })]).toEqual([1, 2, 0]);
  });
  it('days whose rain nothing tells are said', () => {
    const { problems } = outlookSeason(scenarioOf([station('S', CHIGWA, rainFrom(2026, Array(12).fill(0)))]), places);
    // 11 and 12 November are forecast; 13 to 20 are eight days.
    expect(problems.find(({ code }) => code === 'E3010')?.facts).toEqual({ days: 8 });
  });
});

it('vehicles run on workdays that are no holiday', () => {
  // 11 November 2026 is a Wednesday, the 12th a holiday, the 14th and 15th a week-end.
  const { result } = outlookSeason(scenarioOf([]), places);
  expect([...result.workday]).toEqual([1, 0, 1, 0, 0, 1, 1, 1, 1, 1]);
});

describe('without any weather', () => {
  const { result, problems, provenance } = outlookSeason(scenarioOf([]), places);
  it('there is still a whole outlook: one weather place without a station, an assumed day, no onset', () => {
    expect([...result.stations]).toEqual([-1]);
    expect([...result.zoneStation]).toEqual([0, 0, 0]);
    expect([...result.siteStation]).toEqual([0, 0, 0]);
    expect(result.airC.every((celsius) => celsius >= 20 && celsius <= 34)).toBe(true);
    expect(result.onsets).toHaveLength(3);
    expect(result.onsets[0]).toMatchObject({ status: 'no data', p50: Number.NaN });
    expect(result.windows).toHaveLength(6);
    expect(codes(problems)).toEqual(['E3001', 'E3008', 'E3008']);
  });
  it('windows by date still hold', () => {
    const anchor = { kind: 'date', on: day('2026-11-20') } as const;
    const rows = [
      { zoneId: null, crop: 'cowpea', season: null, anchor, firstOffsetDays: 0, lastOffsetDays: 7 } as const,
    ];
    const dated = outlookSeason(scenarioOf([], { cropWindows: rows }), places);
    const cowpea = dated.result.windows[1];
    expect([...(cowpea?.firstDay ?? [])]).toEqual([day('2026-11-20')]);
    expect(cowpea?.sownChance[8]).toBe(0);
    expect(cowpea?.sownChance[9]).toBe(1);
  });
  it('every figure says how it was made', () => {
    expect(provenance.map(({ figure }) => figure)).toEqual(
      expect.arrayContaining([
        'season.onset',
        'season.windows',
        'season.tminC',
        'season.tmaxC',
        'season.airC',
        'season.roadState',
      ]),
    );
    for (const { formula, source, inputs } of provenance) {
      expect(formula.length * source.length * inputs.length).toBeGreaterThan(0);
    }
  });
});

it('every problem of the season is noted: none of them stops a plan', () => {
  const season = Object.entries(PROBLEM_WEIGHTS).filter(([code]) => code.startsWith('E3'));
  expect(season.length).toBeGreaterThanOrEqual(10);
  expect(season.every(([, weight]) => weight === 'noted')).toBe(true);
});
