import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { recordsFromFiles } from '../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../src/adapters/tools/load-planning-tools.ts';
import {
  type Decisions,
  type Plan,
  type Problem,
  planSeason,
  readScenario,
  type Scenario,
} from '../src/engine/index.ts';

export type Files = ReadonlyMap<string, Uint8Array>;

export interface Planned {
  readonly scenario: Scenario;
  readonly decisions: Decisions;
  readonly plan: Plan;
  readonly problems: readonly Problem[];
}

const tools = await loadPlanningTools();

/** Files of a scenario folder by name, as bytes. */
export function readFolderFiles(folder: string): Map<string, Uint8Array> {
  return new Map(
    readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => [entry.name, new Uint8Array(readFileSync(join(folder, entry.name)))]),
  );
}

/** From files to a plan, as the commands do it. Throws where the files are blocked. */
export function planFiles(files: Files, iterations = 500, seed = 1): Planned {
  const { scenario, decisions, problems } = readScenario(recordsFromFiles(files));
  if (!scenario)
    throw new Error(`blocked: ${problems.map(({ code, column, value }) => `${code} ${column} ${value}`).join('; ')}`);
  const { plan } = planSeason(scenario, decisions, null, { seed, iterations, stop: null, progress: null }, tools);
  return { scenario, decisions, plan, problems };
}
