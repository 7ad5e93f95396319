import { checkPlan, type Plan } from '../engine/index.ts';
import { problemLines } from '../presentation/problem-lines.ts';
import { openScenario } from './open-scenario.ts';
import { readOptions } from './read-options.ts';
import { readPlan } from './read-plan.ts';
import { EXIT, type ExitCode } from './refusal.ts';
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
