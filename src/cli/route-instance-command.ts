import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { InstanceFault, readInstance } from '../adapters/instance-files/read-instance.ts';
import { type InstanceAnswer, type RoutingInstance, solveInstance } from '../engine/index.ts';
import { costText, solutionText } from '../presentation/exports/solution-text.ts';
import { UNSERVED_WORDING } from '../presentation/wording/english/reasons.ts';
import { readNumber, readOptions } from './read-options.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import { type SearchLimits, stepsInTime } from './steps-in-time.ts';
import type { Terminal } from './terminal.ts';

export const ROUTE_INSTANCE_USAGE =
  'nodulary route-instance FILE (--seconds S | --iterations N [--stop-after M]) [--seed N] [--solution OUT.sol]   route a published instance';

const MOST_ITERATIONS = 1e12;

/** Solves a published routing instance with the delivery engine and prints cost, routes and iterations. */
export function runRouteInstance(args: readonly string[], terminal: Terminal): ExitCode {
  const call = readCall(args);
  const instance = openInstance(call.file);
  const limits = call.seconds === null ? call : stepsInTime(instance, call.seed, call.seconds, () => performance.now());
  const answer = solveInstance(instance, {
    seed: call.seed,
    iterations: limits.iterations,
    stop: limits.stop,
    progress: (done, share, best) =>
      terminal.progress(`  ${Math.round(share * 100)} percent, ${done} steps, ${costText(best / instance.costUnits)}`),
  });
  if (call.solution !== null) writeFileSync(call.solution, solutionText(instance, answer));
  terminal.result(answerLines(answer, limits.iterations, call.seed));
  if (answer.leftOut.length === 0) return EXIT.done;
  for (const line of leftOutLines(answer)) terminal.notice(line);
  return EXIT.blocked;
}

interface Call extends SearchLimits {
  readonly file: string;
  readonly seed: number;
  readonly seconds: number | null;
  readonly solution: string | null;
}

function readCall(args: readonly string[]): Call {
  const text = { type: 'string' } as const;
  const options = { seconds: text, iterations: text, 'stop-after': text, seed: text, solution: text };
  const { values, paths } = readOptions(args, options, 1, ROUTE_INSTANCE_USAGE);
  const given = (name: string) => (typeof values[name] === 'string' ? (values[name] as string) : null);
  const count = (name: string, otherwise: number) =>
    given(name) === null
      ? otherwise
      : readNumber(`--${name}`, given(name) as string, { least: 0, most: MOST_ITERATIONS, whole: true });
  const seconds = given('seconds');
  if ((seconds === null) === (given('iterations') === null)) {
    throw new Refusal(`Give --seconds or --iterations, one of them.\nUse: ${ROUTE_INSTANCE_USAGE}`);
  }
  const stopAfter = count('stop-after', Number.POSITIVE_INFINITY);
  return {
    file: paths[0] as string,
    seed: readNumber('--seed', given('seed') ?? '1', { least: 0, most: 4294967295, whole: true }),
    seconds: seconds === null ? null : readNumber('--seconds', seconds, { least: 0.1, most: 86_400, whole: false }),
    iterations: count('iterations', 0),
    stop: Number.isFinite(stopAfter) ? stopAfterSteps(stopAfter) : null,
    solution: given('solution'),
  };
}

/** The search asks every so many steps; a run that was stopped by time was stopped at such a question. */
const STEPS_BETWEEN_QUESTIONS = 64;

function stopAfterSteps(steps: number): () => boolean {
  let asked = 0;
  return () => asked++ * STEPS_BETWEEN_QUESTIONS >= steps;
}

function openInstance(file: string): RoutingInstance {
  if (!existsSync(file)) throw new Refusal(`There is no file ${file}.`);
  try {
    return readInstance(readFileSync(file, 'utf8'));
  } catch (error) {
    if (error instanceof InstanceFault) throw new Refusal(`${file}: ${error.message}`, EXIT.blocked);
    if (error instanceof Error && 'code' in error) throw new Refusal(`${file} cannot be read: ${error.message}`);
    throw error;
  }
}

/** Customers left out, those of one reason together. */
function leftOutLines({ leftOut, leftOutFor }: InstanceAnswer): string[] {
  return [...new Set(leftOutFor)].map((reason) => {
    const customers = leftOut.filter((_, i) => leftOutFor[i] === reason);
    return `Left out, ${UNSERVED_WORDING[reason]}: ${customers.join(' ')}.`;
  });
}

function answerLines(answer: InstanceAnswer, planned: number, seed: number): string {
  const { iterationsDone, stoppedBy, routes } = answer;
  const trips = routes.reduce((sum, route) => sum + route.trips.length, 0);
  const again = stoppedBy === 'iterations' ? '' : ` --stop-after ${iterationsDone}`;
  return [
    `cost        ${costText(answer.cost)}`,
    `bound       none`,
    `routes      ${trips}${trips === routes.length ? '' : ` with ${routes.length} vehicles`}`,
    `iterations  ${iterationsDone}${stoppedBy === 'time' ? `, stopped before ${planned}` : ''}`,
    `repeat with --seed ${seed} --iterations ${planned}${again}`,
  ].join('\n');
}
