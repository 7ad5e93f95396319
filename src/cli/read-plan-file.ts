import { readFileSync } from 'node:fs';
import { checkPlan, type Decisions, type Plan, type Scenario } from '../engine/index.ts';
import { problemLines } from '../presentation/problem-lines.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Findings of one code that are listed. */
export const LISTED = 40;

/** A plan of any shape: the checker says what is wrong with it. @throws Refusal where there is no such file, or no JSON in it */
export function readPlanFile(file: string): unknown {
  const text = readText(file);
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal(`${file} is not JSON, so it is not a plan.`, EXIT.blocked);
  }
}

/** A plan that holds by the independent checker. @throws Refusal that lists where it does not */
export function readSoundPlan(file: string, scenario: Scenario, decisions: Decisions): Plan {
  const plan = readPlanFile(file);
  const findings = checkPlan(scenario, decisions, plan);
  if (findings.length > 0)
    throw new Refusal(
      `${problemLines(findings, LISTED)}\n${file} does not hold for this scenario: ${findings.length} findings. Make the plan again.`,
      EXIT.blocked,
    );
  return plan as Plan;
}

function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    throw new Refusal(`There is no file ${file} that can be read.`);
  }
}
