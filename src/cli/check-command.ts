import { readFileSync } from 'node:fs';
import { checkPlan, type Plan } from '../engine/index.ts';
import { problemLines } from '../presentation/problem-lines.ts';
import { openScenario } from './open-scenario.ts';
import { readOptions } from './read-options.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import type { Terminal } from './terminal.ts';

export const CHECK_USAGE =
  'nodulary check FOLDER PLAN.json                                                      check a plan independently';

/** Findings of one code that are listed. */
const LISTED = 40;

/** Judges a plan by its scenario: says that it holds, or lists where it does not. */
export function runCheck(args: readonly string[], terminal: Terminal): ExitCode {
  const { paths } = readOptions(args, {}, 2, CHECK_USAGE);
  const [folder, file] = paths as [string, string];
  const plan = readPlan(file);
  const { scenario, decisions, problems } = openScenario(folder);
  if (scenario === null) {
    terminal.result(problemLines(problems, LISTED));
    terminal.notice('The scenario cannot be planned, so no plan of it can be checked.');
    return EXIT.blocked;
  }
  const findings = checkPlan(scenario, decisions, plan as Plan);
  if (findings.length === 0) {
    terminal.result('The plan holds.');
    return EXIT.done;
  }
  terminal.result(problemLines(findings, LISTED));
  terminal.result(`The plan does not hold: ${findings.length} findings.`);
  return EXIT.blocked;
}

/** A plan of any shape: the checker says what is wrong with it. @throws Refusal where there is no such file, or no JSON in it */
function readPlan(file: string): unknown {
  const text = readText(file);
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal(`${file} is not JSON, so it is not a plan.`, EXIT.blocked);
  }
}

function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    throw new Refusal(`There is no file ${file} that can be read.`);
  }
}
