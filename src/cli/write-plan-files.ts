import { createHash } from 'node:crypto';
import { mkdirSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import type { MultiPolygon, Plan, Scenario } from '../engine/index.ts';
import { planTables, planText } from '../presentation/tables.ts';
import { Refusal } from './refusal.ts';
import type { StageClock } from './stage-clock.ts';

/** @throws Refusal where the folder cannot be written into, before any planning is done */
export function prepareOutFolder(folder: string): void {
  const found = statSync(folder, { throwIfNoEntry: false });
  if (found && !found.isDirectory()) throw new Refusal(`${folder} is a file; --out takes a folder.`);
}

interface PlanFiles {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly zonePolygons: readonly (MultiPolygon | null)[];
  readonly clock: StageClock;
  /** What comes otherwise than people were told, a line each; null where nobody was told anything. */
  readonly changes: readonly string[] | null;
}

/** What the same plan is made from again, beside the files themselves: the part of run.json that `plan --again` reads. */
export interface MadeFrom {
  readonly scenarioSha256: string;
  readonly decisionsSha256: string;
  readonly engineVersion: string;
  readonly seed: number;
  readonly iterations: number;
  readonly stoppedBy: Plan['stoppedBy'];
  /** Of plan.json as written. */
  readonly planSha256: string;
}

export function madeFrom(plan: Plan): MadeFrom {
  const { scenarioSha256, decisionsSha256, engineVersion, seed, iterations, stoppedBy } = plan;
  const planSha256 = createHash('sha256').update(planText(plan)).digest('hex');
  return { scenarioSha256, decisionsSha256, engineVersion, seed, iterations, stoppedBy, planSha256 };
}

/** Writes the plan and its tables. Each file is written beside its place and then put there, so that none is ever half. */
export function writePlanFiles(folder: string, { plan, scenario, zonePolygons, clock, changes }: PlanFiles): void {
  const files = {
    ...planTables(plan, scenario, zonePolygons),
    ...(changes ? { 'changes.txt': () => `${changes.join('\n')}\n` } : {}),
    'run.json': () => `${JSON.stringify(describeRun(plan, clock), null, 2)}\n`,
  };
  try {
    mkdirSync(folder, { recursive: true });
    for (const [name, write] of Object.entries(files)) {
      const beside = join(folder, `${name}.part`);
      writeFileSync(beside, write());
      renameSync(beside, join(folder, name));
    }
  } catch (error) {
    throw new Refusal(`Cannot write to ${folder}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** What the plan is made from, and clock and machine, which the plan itself does not hold. */
function describeRun(plan: Plan, clock: StageClock) {
  return {
    finished: new Date().toISOString(),
    ...madeFrom(plan),
    node: process.version,
    system: `${process.platform} ${process.arch}`,
    processors: cpus().length,
    memoryMiB: Math.round(totalmem() / 2 ** 20),
    peakMemoryMiB: Math.round(process.resourceUsage().maxRSS / 1024),
    milliseconds: clock.milliseconds,
  };
}
