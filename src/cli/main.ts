import { CHECK_USAGE, runCheck } from './check-command.ts';
import { PLAN_USAGE, runPlan } from './plan-command.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import { REPLAY_USAGE, runReplay } from './replay-command.ts';
import { REPORT_USAGE, runReport } from './report-command.ts';
import { ROUTE_INSTANCE_USAGE, runRouteInstance } from './route-instance-command.ts';
import { runSeason, SEASON_USAGE } from './season-command.ts';
import { startCommand } from './start-command.ts';
import { openTerminal } from './terminal.ts';

const USAGE = `Use:
  ${PLAN_USAGE}
  ${CHECK_USAGE}
  ${SEASON_USAGE}
  ${ROUTE_INSTANCE_USAGE}
  ${REPLAY_USAGE}
  ${REPORT_USAGE}`;

/** Runs one command and gives its exit code; the user sees words, never a stack of calls. */
export async function main(args: readonly string[]): Promise<ExitCode> {
  const terminal = openTerminal();
  try {
    const [command, ...rest] = args;
    if (command === 'plan') return await runPlan(rest, terminal);
    if (command === 'check') return runCheck(rest, terminal);
    if (command === 'season') return await runSeason(rest, terminal);
    if (command === 'route-instance') return runRouteInstance(rest, terminal);
    if (command === 'replay') return await runReplay(rest, terminal);
    if (command === 'report') return await runReport(rest, terminal);
    if (command === 'start') return await startCommand();
    if (command === 'help' || command === '--help' || command === '-h') {
      terminal.result(USAGE);
      return EXIT.done;
    }
    throw new Refusal(command === undefined ? USAGE : `There is no command "${command}".\n${USAGE}`);
  } catch (error) {
    if (error instanceof Refusal) {
      terminal.notice(error.message);
      return error.exitCode;
    }
    terminal.notice(`This should not have happened: ${error instanceof Error ? error.message : String(error)}
Nothing was planned. Please report it with the folder that was planned and the command line.`);
    return EXIT.blocked;
  }
}
