import { join } from 'node:path';
import { recordsFromFiles } from '../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import { makePlayResult, openReplay, planSeason, playSeason, readScenario } from '../../src/engine/index.ts';
import { drawParameters } from '../../src/engine/pipeline.ts';
import { readFolderFiles } from '../plan-files.ts';
import { bytesPutOnHeap } from './heap-profile.ts';

/** Time and heap of one play, warm, over every season and many draws. */
const [root = '', folder = 'scenarios/demo-district'] = process.argv.slice(2);
const { scenario, decisions } = readScenario(recordsFromFiles(readFolderFiles(join(root, folder))));
if (!scenario) throw new Error('the scenario is blocked');
const tools = await loadPlanningTools();
const settings = { seed: 1, iterations: 1000, stop: null, progress: null };
const { plan } = planSeason(scenario, decisions, null, settings, tools);
const prepared = openReplay(scenario, decisions, plan, null, tools.overlay).play('as-printed');
const draws = drawParameters(200, prepared.shape, 3);
const into = makePlayResult(prepared);
const playAll = () => {
  for (const draw of draws)
    for (let member = 0; member < prepared.members; member++) playSeason(prepared, member, draw, into);
};
const plays = draws.length * prepared.members;
playAll();
const times = Array.from({ length: 5 }, () => {
  const from = performance.now();
  playAll();
  return performance.now() - from;
}).sort((a, b) => a - b);

console.log(`${prepared.parcels.field.length} parcels, ${prepared.members} seasons, ${plays} plays`);
console.log(`${((times[2] as number) / plays).toFixed(3)} ms a play, the median of five runs`);
console.log(`${(bytesPutOnHeap(playAll) / plays).toFixed(0)} bytes put on the heap a play`);
