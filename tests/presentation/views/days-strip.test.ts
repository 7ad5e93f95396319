import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { seasonStrip } from '../../../src/presentation/views/days-strip.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario } = stockCase('demo-district');
const strip = seasonStrip(plan, scenario);

/** The weather file itself, read as plain text. */
const [header = '', ...lines] = readFileSync(
  new URL('../../../scenarios/demo-district/weather.csv', import.meta.url),
  'utf8',
)
  .trim()
  .split('\n');
const columns = header.split(',');
const weather = lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [columns[i] ?? '', cell])));

describe('the season strip', () => {
  it('shows the highest rain that the weather file has for a day, and none beyond the forecast', () => {
    for (const { iso, rainMm } of strip.days) {
      const rows = weather.filter((row) => row['date'] === iso && row['rain_mm'] !== '');
      const highest = rows.length === 0 ? null : Math.max(...rows.map((row) => Number(row['rain_mm'])));
      const isKnown = strip.known !== null && iso <= strip.known.iso;
      expect(rainMm, iso).toBe(isKnown ? highest : null);
    }
  });

  it('parts forecast from past seasons at the last day of the forecast', () => {
    const last = weather
      .map((row) => row['date'] ?? '')
      .sort()
      .at(-1);
    expect(strip.known).toMatchObject({ iso: last, isForecast: true });
    expect(strip.pastSeasons).toBe(plan.season.memberYears.length);
  });

  it('shows the highest maximum of the stations, as the weather file has it for forecast days', () => {
    for (const { iso, maximumC } of strip.days) {
      if (strip.known === null || iso > strip.known.iso) continue;
      const highest = Math.max(...weather.filter((row) => row['date'] === iso).map((row) => Number(row['tmax_c'])));
      expect(maximumC, iso).toBeCloseTo(highest, 3);
    }
  });

  it('classes chance and heat at their bounds', () => {
    const at = (chance: number, celsius: number) => {
      const { sownChance, tmaxC } = plan.season;
      const season = { ...plan.season, sownChance: sownChance.map(() => chance), tmaxC: tmaxC.map(() => celsius) };
      const [day] = seasonStrip({ ...plan, season }, scenario).days;
      return [day?.sowClass, day?.heatClass];
    };
    expect(at(0.099, 27.9)).toEqual([1, 1]);
    expect(at(0.1, 28)).toEqual([2, 2]);
    expect(at(0.45, 31.9)).toEqual([4, 3]);
    expect(at(0.8, 36)).toEqual([6, 6]);
  });
});
