import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { recordsFromFiles } from '../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import { makePlayResult, planSeason, playSeason, preparePlay, readScenario } from '../../src/engine/index.ts';
import { readFolderFiles } from '../plan-files.ts';

const folder = fileURLToPath(new URL('../../scenarios/demo-district', import.meta.url));
const { scenario, decisions } = readScenario(recordsFromFiles(readFolderFiles(folder)));
if (!scenario) throw new Error('the demonstration district is blocked');
const settings = { seed: 1, iterations: 200, stop: null, progress: null };
const { plan, stages } = planSeason(scenario, decisions, null, settings, await loadPlanningTools());
const prepared = preparePlay({
  scenario,
  places: stages.places.value.result,
  season: stages.season.value.result,
  needs: stages.needs.value.result,
  allocation: stages.supply.value.allocation.result,
  delivery: stages.supply.value.delivery.result,
});
const atCentre = new Float64Array(prepared.drawWidth);

describe('a fixed plan played through one season', () => {
  it('gives, member by member at the central figures, what the plan records of past seasons', () => {
    const into = makePlayResult(prepared);
    plan.outcomes.seasons.reachedHa.forEach((hectares, member) => {
      playSeason(prepared, member, atCentre, into);
      expect(into.reachedHa).toBeCloseTo(hectares, 3);
    });
  });

  it('takes under half a millisecond on the demonstration district', () => {
    const into = makePlayResult(prepared);
    const times = Array.from({ length: 300 }, (_, i) => {
      const from = performance.now();
      playSeason(prepared, i % prepared.members, atCentre, into);
      return performance.now() - from;
    });
    // The first hundred warm up; the median of the rest counts.
    const measured = times.slice(100).sort((a, b) => a - b);
    expect(measured[100]).toBeLessThan(0.5);
  });
});
