import { CHECK_USAGE, runCheck } from './check-command.ts';
import { PAPERS_USAGE, runPapers } from './papers-command.ts';
import { PLAN_USAGE, runPlan } from './plan-command.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import { REPLAY_USAGE, runReplay } from './replay-command.ts';
import { REPORT_USAGE, runReport } from './report-command.ts';
import { ROUTE_INSTANCE_USAGE, runRouteInstance } from './route-instance-command.ts';
import { runSeason, SEASON_USAGE } from './season-command.ts';
import { startCommand } from './start-command.ts';
import { openTerminal, type Terminal } from './terminal.ts';

interface Command {
  readonly usage: string;
  readonly run: (args: readonly string[], terminal: Terminal) => ExitCode | Promise<ExitCode>;
}

/** In the order in which a season needs them. */
const COMMANDS: Readonly<Record<string, Command>> = {
  plan: { usage: PLAN_USAGE, run: runPlan },
  check: { usage: CHECK_USAGE, run: runCheck },
  season: { usage: SEASON_USAGE, run: runSeason },
  papers: { usage: PAPERS_USAGE, run: runPapers },
  replay: { usage: REPLAY_USAGE, run: runReplay },
  report: { usage: REPORT_USAGE, run: runReport },
  'route-instance': { usage: ROUTE_INSTANCE_USAGE, run: runRouteInstance },
};

const USAGE = ['Use:', ...Object.values(COMMANDS).map(({ usage }) => `  ${usage}`)].join('\n');

/** Runs one command and gives its exit code; the user sees words, never a stack of calls. */
export async function main(args: readonly string[]): Promise<ExitCode> {
  const terminal = openTerminal();
  try {
    const [name, ...rest] = args;
    if (name === 'start') return await startCommand();
    if (name === 'help' || name === '--help' || name === '-h') {
      terminal.result(USAGE);
      return EXIT.done;
    }
    const command = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
    if (command) return await command.run(rest, terminal);
    throw new Refusal(name === undefined ? USAGE : `There is no command "${name}".\n${USAGE}`);
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
