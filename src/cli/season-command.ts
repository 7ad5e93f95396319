import { loadPlanningTools } from '../adapters/tools/load-planning-tools.ts';
import { calendarOf, parseClock } from '../engine/index.ts';
import { problemLines } from '../presentation/problem-lines.ts';
import { readingsTable, releaseTable, seasonTable } from '../presentation/season-table.ts';
import { openScenario } from './open-scenario.ts';
import { readOptions } from './read-options.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import type { Terminal } from './terminal.ts';

export const SEASON_USAGE =
  'nodulary season FOLDER [--leave HH:MM]                                              best day of each zone; readings';

/** Problems of one code that are listed. */
const LISTED = 50;

/** When each zone is best handed its inoculant, what keeps it from more, and what loggers recorded; plans nothing. */
export async function runSeason(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const { values, paths } = readOptions(args, { leave: { type: 'string' } }, 1, SEASON_USAGE);
  const leave = values['leave'] === undefined ? null : parseClock(String(values['leave']));
  if (values['leave'] !== undefined && leave === null)
    throw new Refusal(`--leave takes an hour as 06:30, not "${values['leave']}".`);
  const { scenario, decisions, problems } = openScenario(paths[0] as string);
  if (scenario === null) {
    terminal.result(problemLines(problems, LISTED));
    terminal.notice('The scenario cannot be planned.');
    return EXIT.blocked;
  }
  const { overlay } = await loadPlanningTools();
  const calendar = calendarOf(scenario, decisions, null, overlay, leave === null ? {} : { leaveMinute: leave });
  const read = problems.filter(({ code }) => code.startsWith('E197') || code.startsWith('E198'));
  if (read.length > 0) terminal.notice(problemLines(read, LISTED));
  terminal.result(
    `${seasonTable(scenario, calendar)}\n\n${releaseTable(scenario, calendar)}\n\n${readingsTable(scenario)}`,
  );
  return EXIT.done;
}
