import { fileURLToPath } from 'node:url';
import { recordsFromFiles } from '../../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../../src/adapters/tools/load-planning-tools.ts';
import {
  type Decision,
  type Decisions,
  type Plan,
  planSeason,
  readScenario,
  type Scenario,
} from '../../../src/engine/index.ts';
import { type StockView, stockView } from '../../../src/presentation/views/stock-view.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { readFolderFiles } from '../../plan-files.ts';

const tools = await loadPlanningTools();

export interface StockCase {
  readonly scenario: Scenario;
  readonly plan: Plan;
  readonly decisions: Decisions;
  readonly stock: StockView;
}

/** A scenario of the repository, planned with decisions, as the stock view tells it. */
export function stockCase(name: string, decisions: readonly Decision[] = []): StockCase {
  const files = new Map(readFolderFiles(fileURLToPath(new URL(`../../../scenarios/${name}/`, import.meta.url))));
  const text = JSON.stringify({ format: 'nodulary-decisions/1', decisions });
  const document = JSON.parse(new TextDecoder().decode(files.get('scenario.json'))) as {
    files: Record<string, string>;
  };
  const withDecisions = { ...document, files: { ...document.files, decisions: 'decisions.json' } };
  files.set('scenario.json', new TextEncoder().encode(JSON.stringify(withDecisions)));
  files.set('decisions.json', new TextEncoder().encode(text));
  const read = readScenario(recordsFromFiles(files));
  if (!read.scenario) throw new Error(`blocked: ${read.problems.map(({ code }) => code).join()}`);
  const settings = { seed: 1, iterations: 200, stop: null, progress: null };
  const { plan } = planSeason(read.scenario, read.decisions, null, settings, tools);
  return {
    scenario: read.scenario,
    plan,
    decisions: read.decisions,
    stock: stockView(plan, read.scenario, decisions, english),
  };
}
