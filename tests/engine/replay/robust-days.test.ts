import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { recordsFromFiles } from '../../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../../src/adapters/tools/load-planning-tools.ts';
import { judgeRobustDays, planSeason, readScenario } from '../../../src/engine/index.ts';
import { keepMembers } from '../../../src/engine/replay/robust-days.ts';
import { readFolderFiles } from '../../plan-files.ts';

/** A small share in every run; `npm run bench:robust` judges more seasons, with more steps of the search. */
const [folder = 'scenarios/demo-district', seasons = '1', iterations = '100'] = (process.env['NODULARY_ROBUST'] ?? '')
  .split(';')
  .filter((word) => word !== '');
const { scenario, decisions } = readScenario(
  recordsFromFiles(readFolderFiles(fileURLToPath(new URL(`../../../${folder}/`, import.meta.url)))),
);
if (!scenario) throw new Error(`${folder} is blocked`);
const tools = await loadPlanningTools();
const settings = { seed: 1, iterations: Number(iterations), stop: null, progress: null };
const first = planSeason(scenario, decisions, null, settings, tools);
const season = first.stages.season.value.result;

describe('days chosen on the list of past seasons', () => {
  it('never see the season that they are judged in', () => {
    const kept = [...season.members.keys()].filter((member) => member !== 2);
    const without = keepMembers(season, kept);
    expect(without.members.map(({ year }) => year)).not.toContain(season.members[2]?.year);
    without.windows.forEach((window, w) => {
      expect(window.firstDay).toHaveLength(kept.length);
      expect(window.firstDay[2]).toBe(season.windows[w]?.firstDay[3]);
    });
  });

  it('are those of the plan where nothing is left out', () => {
    const again = planSeason(scenario, decisions, first.stages, settings, tools, { seasonsBehind: (same) => same });
    expect(again.plan).toEqual(first.plan);
  });

  it('are judged against days chosen on the median season alone, as found', { timeout: 3_600_000 }, () => {
    const years = season.members.map(({ year }) => year);
    const every = Math.max(1, Math.floor(years.length / Number(seasons)));
    const judged = judgeRobustDays(
      scenario,
      decisions,
      settings,
      tools,
      years.filter((_, i) => i % every === 0).slice(0, Number(seasons)),
    );
    for (const { onListHa, onMedianHa, onListValueHa, onMedianValueHa } of judged)
      for (const hectares of [onListHa, onMedianHa, onListValueHa, onMedianValueHa]) {
        expect(hectares).toBeGreaterThan(0);
        expect(hectares).toBeLessThan(first.plan.outcomes.headline.plannedHa);
      }
    const mean = (of: (one: (typeof judged)[number]) => number) =>
      judged.reduce((sum, one) => sum + of(one), 0) / judged.length;
    const lines = judged.map(
      (one) =>
        `${one.year}: on the list ${one.onListHa.toFixed(1)} ha (${one.onListValueHa.toFixed(1)} by value), on the median season ${one.onMedianHa.toFixed(1)} ha (${one.onMedianValueHa.toFixed(1)})`,
    );
    const gain = mean(({ onListHa, onMedianHa }) => onListHa - onMedianHa);
    const gainByValue = mean(({ onListValueHa, onMedianValueHa }) => onListValueHa - onMedianValueHa);
    process.stdout.write(
      `${lines.join('\n')}\nmean gain of the list: ${gain.toFixed(2)} ha, ${gainByValue.toFixed(2)} ha by value\n`,
    );
  });
});
