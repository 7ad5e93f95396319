import { describe, expect, it } from 'vitest';
import { readScenarioFolder } from '../../../../src/adapters/scenario-files/read-folder.ts';
import { exactSum } from '../../../../src/engine/numerics/exact-sum.ts';
import { readScenario } from '../../../../src/engine/stages/1-intake/read-scenario.ts';
import { parseIsoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import type { Crop } from '../../../../src/engine/vocabulary/crops.ts';
import type { Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import { SHARED_ABSENT, sharedFolder } from '../../../shared-folder.ts';
import { problemsOf } from './small-scenario.ts';

/** Check values: the README beside each scenario (figures of its author, made with other programs). */
const suite = sharedFolder === null ? describe.skip : describe;
const said = sharedFolder === null ? ` (${SHARED_ABSENT})` : '';

const readShared = (name: string) => {
  const reading = readScenario(readScenarioFolder(`${sharedFolder}/scenarios/${name}`));
  if (reading.scenario === null) throw new Error(JSON.stringify(reading.problems));
  return { ...reading, scenario: reading.scenario };
};

const plannedHa = (scenario: Scenario, crop: Crop): number[] =>
  scenario.communities.flatMap(({ crops }) => crops.filter((plan) => plan.crop === crop).map((plan) => plan.plannedHa));
const land = (scenario: Scenario): Record<string, [number, number]> =>
  Object.fromEntries(
    scenario.crops.map((crop) => {
      const areas = plannedHa(scenario, crop);
      return [crop, [exactSum(areas), areas.filter((ha) => ha === 0).length]];
    }),
  );
const farmers = (scenario: Scenario): number =>
  exactSum(scenario.communities.map((community) => community.farmers ?? 0));
const sizes = ({ zones, communities, depots, products, lots, vehicles, roads }: Scenario): number[] =>
  [zones, communities, depots, products, lots, vehicles, roads].map((list) => list.length);
const countBy = <T>(items: readonly T[], name: (item: T) => string): Record<string, number> => {
  const counts: Record<string, number> = {};
  for (const item of items) counts[name(item)] = (counts[name(item)] ?? 0) + 1;
  return counts;
};

suite(`rwanda-sectors${said}`, () => {
  it('holds the land, people and rows of its README', () => {
    const { scenario, problems } = readShared('rwanda-sectors');
    expect(land(scenario)).toEqual({ common_bean: [7465.1, 12], soybean: [3080.9, 64], groundnut: [673.6, 154] });
    expect(farmers(scenario)).toBe(1_396_845);
    expect(sizes(scenario)).toEqual([30, 416, 4, 15, 72, 33, 956]);
    expect(new Set(scenario.communities.map(({ name }) => name)).size).toBe(379);
    expect(countBy(scenario.roads, ({ oneway }) => oneway)).toEqual({ no: 950, forward: 6 });
    expect(scenario.roads.filter(({ closedFrom }) => closedFrom !== null)).toHaveLength(2);
    expect(scenario.weather.map(({ days }) => days.length)).toEqual([7368, 7368, 7368]);
    expect(problems.some(({ code }) => code === 'E1901')).toBe(false);
    expect(scenario.utcOffsetMinutes).toBe(120);
    // The one thing to say of its stock: LOT-069 is past its date.
    expect(problemsOf({ scenario, problems } as never, 'E1700').map(({ facts }) => facts['lot'])).toEqual([
      'LOT-069-EXPIRED',
    ]);
    expect(problems.filter(({ weight }) => weight !== 'noted')).toEqual([]);
  });

  it('is read, bytes to scenario, well under two seconds', () => {
    const before = performance.now();
    readShared('rwanda-sectors');
    expect(performance.now() - before).toBeLessThan(2000);
  });
});

suite(`sahel-east${said}`, () => {
  it('holds the land, rows and weather of its README', () => {
    const reading = readShared('sahel-east');
    const { scenario, problems } = reading;
    expect(land(scenario)).toEqual({ cowpea: [7886.4, 2], groundnut: [1833.4, 23], bambara: [980.1, 24] });
    expect(farmers(scenario)).toBe(376_533);
    expect(sizes(scenario)).toEqual([3, 83, 3, 14, 52, 17, 594]);
    expect(countBy(scenario.roads, ({ oneway }) => oneway)).toEqual({ no: 591, forward: 3 });
    expect(scenario.roads.filter(({ closedFrom }) => closedFrom !== null)).toHaveLength(7);

    const kept = scenario.weather.reduce((sum, { days }) => sum + days.length, 0);
    const [ignored] = problemsOf(reading, 'E1900');
    expect([kept + Number(ignored?.facts['count']), ignored?.facts['count']]).toEqual([28_125, 388]);
    const forecast = scenario.weather.flatMap(({ days }) => [...days]).filter((day) => day > scenario.asOf);
    expect([forecast.length, Math.max(...forecast)]).toEqual([20, scenario.asOf + 10]);
    const gaps = problemsOf(reading, 'E1901').map(({ facts }) => Number(facts['count']));
    expect(gaps.reduce((sum, count) => sum + count, 0)).toBe(446);

    expect(problemsOf(reading, 'E1902')).toMatchObject([
      { value: '40', facts: { station: 'Niamey_Aero', date: '1943-06-22', tmaxC: 26.5, count: 1 } },
    ]);
    const niamey = scenario.weather.find(({ id }) => id === 'Niamey_Aero');
    const crossed = niamey?.days.indexOf(parseIsoDate('1943-06-22') as number) ?? -1;
    expect([niamey?.tminC[crossed], niamey?.tmaxC[crossed], niamey?.rainMm[crossed]]).toEqual([
      Number.NaN,
      Number.NaN,
      5.9,
    ]);
    expect(scenario.depots.map(({ name }) => name)).toContain("Invented depot, Fada N'Gourma");
    expect(problems.filter(({ weight }) => weight !== 'noted')).toEqual([]);
  });
});

suite(`south-malawi-roads${said}`, () => {
  it('holds the land, rows and roads of its README', () => {
    const { scenario, problems } = readShared('south-malawi-roads');
    expect(land(scenario)).toEqual({
      pigeonpea: [1339.1, 9],
      soybean: [568.2, 24],
      groundnut: [842.3, 17],
      cowpea: [269.9, 29],
    });
    expect(farmers(scenario)).toBe(11_174);
    expect(sizes(scenario)).toEqual([8, 120, 2, 19, 52, 7, 4820]);
    expect(scenario.communities.filter(({ zoneId }) => zoneId !== null)).toHaveLength(46);
    expect(countBy(scenario.roads, ({ roadClass }) => roadClass)).toEqual({
      trunk: 10,
      secondary: 30,
      tertiary: 24,
      unclassified: 1497,
      track: 1114,
      path: 2145,
    });
    expect(scenario.weather.reduce((sum, { days }) => sum + days.length, 0)).toBe(18_568);
    const hottest = scenario.weather.map(({ id, tmaxC }) => [id, Math.max(...tmaxC)]);
    expect(Object.fromEntries(hottest)).toEqual({ 'INV-VALLEY': 42.8, 'INV-RIDGE': 41.2 });
    expect(countBy(scenario.vehicles, ({ kind }) => kind)).toEqual({ motorcycle: 4, pickup: 2, truck: 1 });
    expect(problems.filter(({ weight }) => weight !== 'noted')).toEqual([]);
  });
});
