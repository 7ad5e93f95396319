import { loadPlanningTools } from '../adapters/tools/load-planning-tools.ts';
import {
  addProblems,
  checkShape,
  compareDeliveries,
  type Plan,
  type Problem,
  planSeason,
  replanSeason,
  type SearchSettings,
} from '../engine/index.ts';
import { headlineTable } from '../presentation/headline-table.ts';
import { problemLines } from '../presentation/problem-lines.ts';
import { changesView } from '../presentation/views/days-changes.ts';
import { STAGE_WORDING } from '../presentation/wording/english/stages.ts';
import { english } from '../presentation/wording/words.ts';
import { openScenario } from './open-scenario.ts';
import { readNumber, readOptions } from './read-options.ts';
import { readPlanFile } from './read-plan-file.ts';
import { readRunFile } from './read-run-file.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import { StageClock } from './stage-clock.ts';
import type { Terminal } from './terminal.ts';
import { type MadeFrom, madeFrom, prepareOutFolder, writePlanFiles } from './write-plan-files.ts';

export const PLAN_USAGE =
  'nodulary plan FOLDER --out DIR [--seed N] [--iterations N | --seconds S] [--from PLAN.json] [--again RUN.json] [--json]   plan a scenario folder';

const DEFAULT_SEED = 1;
const DEFAULT_ITERATIONS = 20_000;
const MOST_ITERATIONS = 1e9;
/** Problems of one code that are listed on the screen; all of them stand in problems.csv. */
const LISTED = 3;
/** The same where nothing is written, so that the screen is all there is. */
const LISTED_IF_BLOCKED = 50;

/** The main job without a browser: reads a folder, plans it, writes the plan and its tables, prints the headline. */
export async function runPlan(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const { folder, out, from, json, limits, again } = readCall(args);
  prepareOutFolder(out);
  const clock = new StageClock((stage) => terminal.notice(`${STAGE_WORDING[stage] ?? stage} ...`));
  const { scenario, decisions, problems } = clock.time('1-intake', () => openScenario(folder));
  if (scenario === null) return refusePlan(problems, json, terminal);

  if (again && scenario.sha256 !== again.scenarioSha256)
    throw new Refusal(`The files of ${folder} are not those that the plan was made from. Nothing was written.`);
  if (again && decisions.sha256 !== again.decisionsSha256)
    throw new Refusal(`The decisions of ${folder} are not those that the plan was made from. Nothing was written.`);
  const tools = await loadPlanningTools();
  const started = performance.now();
  const settings: SearchSettings = {
    seed: limits.seed,
    iterations: limits.iterations,
    stop: limits.seconds === null ? null : () => performance.now() - started > (limits.seconds ?? 0) * 1000,
    progress: (done, share) => terminal.progress(searchLine(done, share, limits.seconds)),
  };
  const told = from === null ? null : readTold(from);
  const { plan, stages } = told
    ? replanSeason(scenario, decisions, told, null, settings, tools, clock.hooks)
    : planSeason(scenario, decisions, null, settings, tools, clock.hooks);
  const changes = told && changesView(compareDeliveries(told, plan), plan, scenario, english);
  const whole = addProblems(plan, problems);
  const lines = changes && [changes.headline, ...changes.vehicles, ...changes.communities];
  writePlanFiles(out, {
    plan: whole,
    changes: lines,
    scenario,
    zonePolygons: stages.places.value.result.zonePolygons,
    clock,
  });
  if (whole.problems.length > 0) terminal.notice(problemLines(whole.problems, LISTED));
  if (lines) terminal.notice(lines.join('\n'));
  terminal.result(json ? JSON.stringify(whole.outcomes.headline) : headlineTable(whole));
  terminal.notice(`Written to ${out}.`);
  return again ? tellWhetherSame(madeFrom(whole), again, terminal) : EXIT.done;
}

/** Whether a plan made again is the plan that it was: the same bytes, or why not. */
function tellWhetherSame(now: MadeFrom, before: MadeFrom, terminal: Terminal): ExitCode {
  if (now.planSha256 === before.planSha256) {
    terminal.notice('It is the same plan, byte for byte.');
    return EXIT.done;
  }
  const why =
    now.engineVersion === before.engineVersion
      ? 'The program was changed since.'
      : `It was made by engine ${before.engineVersion}; this is ${now.engineVersion}.`;
  terminal.notice(`It is another plan than before. ${why}`);
  return EXIT.blocked;
}

/** The share of a limit of steps; a limit of time shows the steps alone. */
function searchLine(done: number, share: number, seconds: number | null): string {
  return seconds === null ? `  ${Math.round(share * 100)} percent of the search` : `  ${done} steps of the search`;
}

interface PlanCall {
  readonly folder: string;
  readonly out: string;
  /** Plan that people know, to begin from. */
  readonly from: string | null;
  readonly json: boolean;
  /** What an earlier plan was made from, to be made again. */
  readonly again: MadeFrom | null;
  readonly limits: { readonly seed: number; readonly iterations: number; readonly seconds: number | null };
}

function readCall(args: readonly string[]): PlanCall {
  const text = { type: 'string' } as const;
  const options = {
    out: text,
    seed: text,
    iterations: text,
    seconds: text,
    again: text,
    from: text,
    json: { type: 'boolean' },
  } as const;
  const { values, paths } = readOptions(args, options, 1, PLAN_USAGE);
  const given = (name: string) => (typeof values[name] === 'string' ? (values[name] as string) : null);
  const [out, iterations, seconds] = [given('out'), given('iterations'), given('seconds')];
  if (out === null) throw new Refusal(`Say with --out where to write the plan.\nUse: ${PLAN_USAGE}`);
  const again = given('again') === null ? null : readRunFile(given('again') as string);
  if (again && [given('seed'), iterations, seconds].some((limit) => limit !== null))
    throw new Refusal('--again takes seed and steps from the file; give no others.');
  if (iterations !== null && seconds !== null) throw new Refusal('Give --iterations or --seconds, not both.');
  return {
    folder: paths[0] as string,
    out,
    from: given('from'),
    json: values['json'] === true,
    again,
    limits: again
      ? { seed: again.seed, iterations: again.iterations, seconds: null }
      : {
          seed: readNumber('--seed', given('seed') ?? String(DEFAULT_SEED), {
            least: 0,
            most: 4294967295,
            whole: true,
          }),
          iterations: searchSteps(iterations, seconds),
          seconds: seconds === null ? null : readNumber('--seconds', seconds, { least: 0, most: 86_400, whole: false }),
        },
  };
}

/** With a limit of time alone the steps have none. */
function searchSteps(iterations: string | null, seconds: string | null): number {
  if (iterations === null) return seconds === null ? DEFAULT_ITERATIONS : MOST_ITERATIONS;
  return readNumber('--iterations', iterations, { least: 0, most: MOST_ITERATIONS, whole: true });
}

function refusePlan(problems: readonly Problem[], json: boolean, terminal: Terminal): ExitCode {
  if (json) terminal.result(JSON.stringify({ blocked: true, problems }));
  terminal.notice(problemLines(problems, LISTED_IF_BLOCKED));
  terminal.notice('No honest plan is possible from these files. Nothing was written.');
  return EXIT.blocked;
}

/**
 * A plan to begin from. It need not hold any more, being of yesterday's records, but it must read as one.
 *
 * @throws Refusal where it does not
 */
function readTold(file: string): Plan {
  const plan = readPlanFile(file);
  const malformed = checkShape(null, plan);
  if (malformed.length === 0) return plan as Plan;
  throw new Refusal(`${problemLines(malformed, LISTED)}\n${file} cannot be planned from.`, EXIT.blocked);
}
