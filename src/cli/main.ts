import { CHECK_USAGE, runCheck } from './check-command.ts';
import { PAPERS_USAGE, runPapers } from './papers-command.ts';
import { PLAN_USAGE, runPlan } from './plan-command.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import { startCommand } from './start-command.ts';
import { openTerminal } from './terminal.ts';

const USAGE = `Use:
  ${PLAN_USAGE}
  ${CHECK_USAGE}
  ${PAPERS_USAGE}`;

/** Runs one command and gives its exit code; the user sees words, never a stack of calls. */
export async function main(args: readonly string[]): Promise<ExitCode> {
  const terminal = openTerminal();
  try {
    const [command, ...rest] = args;
    if (command === 'plan') return await runPlan(rest, terminal);
    if (command === 'check') return runCheck(rest, terminal);
    if (command === 'papers') return runPapers(rest, terminal);
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
