import { describe, expect, test } from 'vitest';
import { SURVIVAL_SETS } from '../../../../src/engine/reference/survival-sets.ts';
import { reachCurve } from '../../../../src/engine/science/reach.ts';
import { drawCalendar } from '../../../../src/engine/stages/3-season/calendar/draw-calendar.ts';
import { layNeeds } from '../../../../src/engine/stages/4-needs/estimate-needs.ts';
import type { SeasonOutlook } from '../../../../src/engine/vocabulary/index.ts';
import { blankPlaces, travelTable, zoneShares } from '../../blank-places.ts';
import {
  blankCommunity,
  blankDepot,
  blankInoculant,
  blankPlanning,
  blankScenario,
  blankStation,
  blankVehicle,
  blankZone,
  FIRST_DAY,
} from '../../blank-scenario.ts';
import { blankSeason, sownSeasons } from '../../blank-season.ts';

/** One zone, one community an hour from the depot, 30 planning days; sown in three seasons from day 5, 10 or never. */
const scenario = blankScenario({
  planning: blankPlanning(FIRST_DAY, 30),
  communities: [blankCommunity({ zoneId: 'Z1' })],
  zones: [blankZone()],
  depots: [blankDepot({ coolStoreLitres: 50, coolStoreC: 5 })],
  vehicles: [blankVehicle({ coolLitres: 10, iceKg: 1, coolUaWPerK: 0.3, kind: 'motorcycle' })],
  products: [blankInoculant({ carrierSterile: true, countPerG: 2e9 })],
});
const hour = travelTable(2, () => ({ minutes: 60, km: 30 }));
const slow = travelTable(2, () => ({ minutes: 90, km: 30 }));
const shut = travelTable(2, () => null);
const places = blankPlaces(scenario, {
  shares: zoneShares([[0, 0, 1]]),
  travel: { tables: [[[hour, slow, shut]]] },
});
const needs = layNeeds(scenario, places.shares);
const SEASONS = [
  [5, 26],
  [10, 31],
  [Number.NaN, Number.NaN],
] as const;

function seasonOf(parts: Partial<SeasonOutlook> = {}, extremes: readonly [number, number] = [20, 30]): SeasonOutlook {
  const chance = new Float64Array(30 * 3).map((_, i) => (i % 3 === 0 ? 1 : 0));
  return blankSeason(scenario, { ...sownSeasons(scenario, SEASONS), roadStateChance: chance, ...parts }, extremes);
}
const drawn = (season = seasonOf(), wish = {}) => drawCalendar(scenario, places, season, needs, wish);

describe('the calendar of a zone', () => {
  test('value and what is lost add up to one in every cell', () => {
    const { value, lost } = drawn();
    for (let day = 0; day < 30; day++) {
      const sum = Object.values(lost).reduce((total, column) => total + (column[day] as number), value[day] as number);
      expect(sum).toBeCloseTo(1, 12);
    }
    // The land outside all zones has none planned.
    expect(value[30]).toBeNaN();
  });

  test('without a road loss it is what the reach curve says: the same packs, store, window', () => {
    const { value, log10Lost } = drawn(seasonOf(), { iceKg: 3 });
    const days = (n: number, celsius: number) => new Float64Array(n).fill(celsius);
    const curve = reachCurve({
      from: scenario.planning.from,
      planningDays: 30,
      firstDay: SEASONS.map(([first]) => first + FIRST_DAY),
      lastDay: SEASONS.map(([, last]) => last + FIRST_DAY),
      delayLossPerDay: 0.012,
      delayFreeDays: 0,
      inoculant: {
        // 2e9 per g, 5 g to a kilogram of seed.
        log10PerSeed: Math.log10((2e9 * 5) / (needs.seedsPerKg[0] as number)),
        survival: SURVIVAL_SETS.default.value,
        depotCelsius: days(30, 5),
        communityCelsius: days(105, 27),
        floorCellsPerSeed: 1e5,
      },
    });
    for (const day of [0, 4, 9, 20, 29]) {
      const atNoLoss = curve.value[day * curve.lossBreaks.length] as number;
      expect(Math.abs((value[day] as number) - atNoLoss)).toBeLessThan(2e-3);
      expect(log10Lost.road[day]).toBeLessThan(1e-3);
    }
  });

  test('a third of the seasons never sows: a third is lost as late, whatever the day', () => {
    const { lost } = drawn();
    expect(lost.late[0]).toBeCloseTo(1 / 3, 12);
    expect(lost.late[29]).toBeGreaterThan(1 / 3);
  });

  test('a day on which the roads are shut in half the seasons keeps half as much', () => {
    const open = drawn();
    const half = seasonOf({ roadStateChance: new Float64Array(90).map((_, i) => (i % 3 === 1 ? 0 : 0.5)) });
    const { value, lost } = drawn(half);
    expect(value[3]).toBeCloseTo((open.value[3] as number) / 2, 12);
    expect(lost.noRoad[3]).toBeCloseTo(0.5, 12);
  });

  test('a day too short to drive there and back keeps nothing', () => {
    const { value, lost, driveMinutes } = drawn(seasonOf({ sunsetMinute: new Float64Array(30).fill(360 + 120) }));
    expect([value[3], lost.noRoad[3], driveMinutes[3]]).toEqual([0, 1, Number.NaN]);
  });

  test('packs that would reach 40 °C in the hot band are not driven, and no hour is late enough', () => {
    const hot = seasonOf({ airC: new Float32Array(30 * 96).fill(45) });
    const { value, lost, latestLeaveMinute } = drawn(hot, { uaWPerK: null, packsKg: 5, leaveMinute: 720 });
    // Cartons from 5 °C in 47 + 2 °C: after 60 + 10 minutes 25 °C; after five hours 46 °C.
    expect(lost.tooHot[0]).toBe(0);
    expect(value[0]).toBeGreaterThan(0);
    const long = travelTable(2, () => ({ minutes: 270, km: 30 }));
    const far = blankPlaces(scenario, { shares: places.shares, travel: { tables: [[[long, long, long]]] } });
    const cartons = drawCalendar(scenario, far, hot, needs, { uaWPerK: null });
    expect(cartons.lost.noRoad[0]).toBe(1); // 4 h 30 there and back is more than a shift of nine hours
    const longShift = { ...scenario, vehicles: scenario.vehicles.map((vehicle) => ({ ...vehicle, maxHours: 12 })) };
    const driven = drawCalendar(longShift, far, hot, needs, { uaWPerK: null });
    expect(driven.lost.tooHot[0]).toBe(1);
    expect(driven.latestLeaveMinute[0]).toBeNaN();
    expect(latestLeaveMinute[0]).toBeGreaterThan(0);
  });

  test('the latest leaving hour: full light and cool air leave all day, less the drive', () => {
    const { latestLeaveMinute, leaveMinute } = drawn();
    // Shift from 6 h, nine hours: back by 15 h; an hour there, ten minutes of hand-over, an hour back.
    expect(latestLeaveMinute[0]).toBe(Math.floor((900 - 130) / 15) * 15);
    expect(leaveMinute[0]).toBe(360);
  });

  test('warmer waiting keeps less: a hot community store against a cool one', () => {
    const cool = drawn(seasonOf({}, [15, 25])).value;
    const warm = drawn(seasonOf({}, [28, 40])).value;
    for (let day = 0; day < 30; day++) expect(warm[day]).toBeLessThanOrEqual(cool[day] as number);
    expect(warm[0]).toBeLessThan(cool[0] as number);
  });

  test('the best day is a workday on which most is kept', () => {
    const workday = new Uint8Array(30).fill(1);
    const free = drawn(seasonOf({ workday }));
    const best = free.bestDay[0] as number;
    workday[best] = 0;
    const { bestDay, value } = drawn(seasonOf({ workday }));
    expect(bestDay[0]).not.toBe(best);
    for (let day = 0; day < 30; day++)
      if (workday[day] === 1) expect(value[day]).toBeLessThanOrEqual(value[bestDay[0] as number] as number);
  });
});

describe('hold until 20 mm in three days', () => {
  /** Two past years: 20 mm on planning days 8 to 10 of one, none in the other; members sow from day 12 to 20. */
  const rain = (year: number, offsets: readonly number[]) =>
    Array.from({ length: 60 }, (_, i) => ({
      day: FIRST_DAY - 365 * (2026 - year) - 10 + i,
      mm: offsets.includes(i - 10) ? 7 : 0,
    }));
  const rows = [...rain(2024, []), ...rain(2025, [8, 9, 10])];
  const station = blankStation({
    days: Int32Array.from(rows, ({ day }) => day),
    tminC: new Float64Array(rows.length).fill(20),
    tmaxC: new Float64Array(rows.length).fill(30),
    rainMm: Float64Array.from(rows, ({ mm }) => mm),
  });
  const dated = {
    ...scenario,
    weather: [station],
    seasons: [{ name: 'main', from: { month: 11, day: 1 }, to: { month: 12, day: 31 } }],
  };
  const members = (last: number) => {
    const sown = sownSeasons(dated, [
      [12, last],
      [12, last],
    ]);
    return { ...sown, members: sown.members.map((member, m) => ({ ...member, year: 2024 + m })) };
  };

  test('it rains in one of two years, on planning day 10; released two days later, in time for a window to day 20', () => {
    const { release } = drawCalendar(dated, places, seasonOf(members(20)), needs);
    expect(release.mm).toBe(20);
    expect(release.never[0]).toBe(0.5);
    expect(release.p50[0]).toBe(FIRST_DAY + 10);
    expect(release.tooLate[0]).toBe(0);
    expect(release.value[0]).toBeGreaterThan(0.3);
    expect(release.value[0]).toBeLessThan(0.5);
  });

  test('too late where the window closes on day 12: handed over on day 12, sown on day 13', () => {
    expect(drawCalendar(dated, places, seasonOf(members(12)), needs).release.tooLate[0]).toBe(0.5);
  });

  test('the programme’s own amount comes first', () => {
    const own = { ...dated, policy: { ...dated.policy, releaseMmInThreeDays: 22 } };
    expect(drawCalendar(own, places, seasonOf(members(20)), needs).release.never[0]).toBe(1);
  });
});
