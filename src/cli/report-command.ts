import { renameSync, writeFileSync } from 'node:fs';
import { loadPlanningTools } from '../adapters/tools/load-planning-tools.ts';
import { openReplay, replaySeasons } from '../engine/index.ts';
import { problemLines } from '../presentation/problem-lines.ts';
import { renderReport } from '../presentation/report/render-report.ts';
import { openScenario } from './open-scenario.ts';
import { readOptions } from './read-options.ts';
import { LISTED, readSoundPlan } from './read-plan-file.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import type { Terminal } from './terminal.ts';

export const REPORT_USAGE =
  'nodulary report FOLDER PLAN.json --out FILE.html                                     write a page on a plan that stands alone';

/** Writes one HTML file on a plan that holds: the donor's page, without the program. */
export async function runReport(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const { values, paths } = readOptions(args, { out: { type: 'string' } } as const, 2, REPORT_USAGE);
  const [folder, file] = paths as [string, string];
  const out = values['out'];
  if (typeof out !== 'string') throw new Refusal(`Say with --out which file to write.\nUse: ${REPORT_USAGE}`);
  const { scenario, decisions, problems } = openScenario(folder);
  if (scenario === null) {
    terminal.result(problemLines(problems, LISTED));
    terminal.notice('The scenario cannot be planned, so there is no plan of it to report on.');
    return EXIT.blocked;
  }
  const plan = readSoundPlan(file, scenario, decisions);
  const { overlay } = await loadPlanningTools();
  const replay = openReplay(scenario, decisions, plan, null, overlay);
  const printed = replaySeasons(replay, 'as-printed');
  const html = renderReport({ plan, scenario, printed, zoneNames: replay.zoneNames });
  try {
    writeFileSync(`${out}.part`, html);
    renameSync(`${out}.part`, out);
  } catch (error) {
    throw new Refusal(`Cannot write ${out}: ${error instanceof Error ? error.message : String(error)}`);
  }
  terminal.notice(`Written to ${out}.`);
  return EXIT.done;
}
