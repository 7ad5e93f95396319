import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { recordsFromFiles } from '../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import { openReplay, type Plan, planSeason, readScenario, replaySeasons } from '../../src/engine/index.ts';
import { grouped } from '../../src/presentation/grouped-figure.ts';
import { renderReport } from '../../src/presentation/report/render-report.ts';
import { tinyWithFertiliser } from '../fertiliser-files.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';

const folder = fileURLToPath(new URL('../../scenarios/tiny-district', import.meta.url));
const { scenario, decisions } = readScenario(recordsFromFiles(readFolderFiles(folder)));
if (!scenario) throw new Error('the tiny district is blocked');
const tools = await loadPlanningTools();
const { plan } = planSeason(scenario, decisions, null, { seed: 1, iterations: 200, stop: null, progress: null }, tools);
const replay = openReplay(scenario, decisions, plan, null, tools.overlay);
const parts = { scenario, printed: replaySeasons(replay, 'as-printed'), zoneNames: replay.zoneNames };
const html = renderReport({ plan, ...parts });

const valueAt = (root: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((value, step) => (value as Record<string, unknown> | undefined)?.[step], root);

describe('the report', () => {
  const figures = [...html.matchAll(/<data value="([^"]*)" data-figure="([^"]*)">([^<]*)<\/data>/g)];

  it('shows the plan’s own numbers: each is looked up in the plan, and read back from what is printed', () => {
    expect(figures.length).toBeGreaterThan(60);
    for (const [, value, path, shown] of figures) {
      const due = valueAt(plan, path as string);
      expect(due, path).toBe(Number(value));
      const text = (shown as string).replaceAll('\u00a0', ' ').replace('\u2212', '-');
      const decimals = /\.(\d+)$/.exec(text)?.[1]?.length ?? 0;
      expect(text, path).toBe(grouped(due as number, decimals));
    }
  });

  it('holds no other number in its tables before the method than those, and the years of the seasons', () => {
    const tables = html.slice(0, html.indexOf('class="sources"'));
    const cells = [...tables.matchAll(/<td>(.*?)<\/td>/g)].map(([, cell]) =>
      (cell as string).replaceAll(/<data [^>]*>[^<]*<\/data>/g, '').replaceAll(/<[^>]*>/g, ''),
    );
    for (const cell of cells) expect(cell).not.toMatch(/\d/);
  });

  it('stands alone: no address, no script, nothing loaded', () => {
    expect(html).not.toMatch(/<script|<link|<img|<iframe|@import|url\((?!#)/);
    expect(html).not.toMatch(/(src|href)="/);
    expect(html).toContain("default-src 'none'");
  });

  it('says that nothing is reached yet, and keeps nitrogen apart from fertiliser and the whole from the part', () => {
    expect(html).toContain('Nothing in it has been reached');
    expect(html).toContain('No yield is promised');
    expect(html).toContain('not fertiliser saved');
    expect(html).toContain('The whole is not the programme’s doing');
    expect(html.match(/nothing yet/g)?.length).toBeGreaterThan(1);
    expect(html).not.toMatch(/land lost|guarantee/i);
    // The programme's part comes first and large; the whole comes after it.
    expect(html.indexOf('programmeNitrogenKg.p50')).toBeLessThan(html.indexOf('headline.inoculationNitrogenKg.p50'));
  });

  it('says on the page what has no price, no season and no response, and guesses nothing', () => {
    const bare: Plan = {
      ...plan,
      outcomes: {
        ...plan.outcomes,
        seasons: { ...plan.outcomes.seasons, year: [] },
        headline: {
          ...plan.outcomes.headline,
          programmeGrainWorth: null,
          valueCostRatio: null,
          residualWorth: null,
          costPerHectare: null,
        },
      },
    };
    const page = renderReport({ plan: bare, ...parts });
    expect(page).toContain('not stated: a price is missing');
    expect(page).toContain('nothing can be expected of it');
    expect(page).toContain('not priced');
    expect(page).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it('tells what fertiliser adds where it goes along, and its price among the goods; nothing of it where none does', () => {
    const made = planFiles(tinyWithFertiliser(40));
    const played = openReplay(made.scenario, made.decisions, made.plan, null, tools.overlay);
    const printed = replaySeasons(played, 'as-printed');
    const page = renderReport({ plan: made.plan, scenario: made.scenario, printed, zoneNames: played.zoneNames });
    const { phosphorusGrainT, fertilisedHa, cost } = made.plan.outcomes.headline;
    expect(fertilisedHa).toBeGreaterThan(1);
    // No more than 30 kg of P at 17.56 kg of grain each (Adjei-Nsiah et al. 2018, read), as much again for the spread.
    expect(phosphorusGrainT.p90).toBeLessThanOrEqual(fertilisedHa * 0.03 * 17.56 * 2);
    expect(page).toContain('Added by the phosphorus of fertiliser');
    expect(page).toContain(
      `<data value="${phosphorusGrainT.p50}" data-figure="outcomes.headline.phosphorusGrainT.p50">`,
    );
    expect(html).not.toContain('headline.phosphorusGrainT.p50');
    expect((cost.otherGoods ?? 0) - (plan.outcomes.headline.cost.otherGoods ?? 0)).toBeGreaterThanOrEqual(20);
  });

  it('keeps what the files say as text', () => {
    const zones = scenario.zones.map((zone) => ({ ...zone, name: '<script>alert(1)</script>' }));
    const page = renderReport({ plan, ...parts, scenario: { ...scenario, zones } });
    expect(page).not.toContain('<script>');
    expect(page).toContain('&lt;script&gt;');
  });

  it('names what the same plan is made from', () => {
    expect(html).toContain(plan.scenarioSha256);
    expect(html).toContain(plan.decisionsSha256);
    expect(figures.some(([, , path]) => path === 'iterations')).toBe(true);
  });
});
