import { availableParallelism } from 'node:os';
import { loadPlanningTools } from '../adapters/tools/load-planning-tools.ts';
import { playInWorkers } from '../adapters/workers/play-in-workers.ts';
import { startNodePlayWorker } from '../adapters/workers/start-node-play-worker.ts';
import { openReplay, replaySeasons } from '../engine/index.ts';
import { problemLines } from '../presentation/problem-lines.ts';
import { type ReplayShown, replayLines } from '../presentation/replay-lines.ts';
import { openScenario } from './open-scenario.ts';
import { readNumber, readOptions } from './read-options.ts';
import { LISTED, readSoundPlan } from './read-plan-file.ts';
import { EXIT, type ExitCode } from './refusal.ts';
import type { Terminal } from './terminal.ts';

export const REPLAY_USAGE =
  'nodulary replay FOLDER PLAN.json [--with OTHER.json] [--draws N] [--seed N] [--workers N] [--json]   play a plan in every past season';

const DEFAULT_DRAWS = 2000;
const DEFAULT_SEED = 1;
/** Rows of the two samples that unknowns are ranked with; fewer where fewer draws are asked for. */
const RANK_ROWS = 1024;
const RANKED = ['reachedHa', 'programmeNitrogenKg'] as const;

/** Plays a plan in every past season, as printed and with its release rules, and with draws of what is not known. */
export async function runReplay(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const text = { type: 'string' } as const;
  const options = { with: text, draws: text, seed: text, workers: text, json: { type: 'boolean' } } as const;
  const { values, paths } = readOptions(args, options, 2, REPLAY_USAGE);
  const [folder, file] = paths as [string, string];
  const given = (name: string, usual: number) => (typeof values[name] === 'string' ? values[name] : String(usual));
  const draws = readNumber('--draws', given('draws', DEFAULT_DRAWS), { least: 0, most: 100_000, whole: true });
  const seed = readNumber('--seed', given('seed', DEFAULT_SEED), { least: 0, most: 4294967295, whole: true });
  const workers = readNumber('--workers', given('workers', availableParallelism()), {
    least: 1,
    most: 64,
    whole: true,
  });
  const { scenario, decisions, problems } = openScenario(folder);
  if (scenario === null) {
    terminal.result(problemLines(problems, LISTED));
    terminal.notice('The scenario cannot be planned, so no plan of it can be played.');
    return EXIT.blocked;
  }
  const plan = readSoundPlan(file, scenario, decisions);
  const otherFile = typeof values['with'] === 'string' ? values['with'] : null;
  const otherPlan = otherFile === null ? null : readSoundPlan(otherFile, scenario, decisions);
  const { overlay } = await loadPlanningTools();
  const replay = openReplay(scenario, decisions, plan, null, overlay);
  const asPrinted = replay.play('as-printed');
  const workforce = (what: string) => ({
    start: startNodePlayWorker,
    workers,
    progress: (share: number) => terminal.progress(`  ${Math.round(100 * share)} percent of ${what}`),
  });
  const shown: ReplayShown = {
    plan,
    scenario,
    zoneNames: replay.zoneNames,
    printed: replaySeasons(replay, 'as-printed'),
    released: replaySeasons(replay, 'with-release'),
    draws,
    spreads: await playInWorkers(asPrinted, { kind: 'spreads', ask: { draws, seed } }, workforce('the draws')),
    unknowns: await playInWorkers(
      asPrinted,
      { kind: 'unknowns', ask: { outcomes: RANKED, rows: Math.min(draws, RANK_ROWS), seed } },
      workforce('ranking the unknowns'),
    ),
    other:
      otherPlan && otherFile !== null
        ? {
            name: otherFile,
            printed: replaySeasons(openReplay(scenario, decisions, otherPlan, null, overlay), 'as-printed'),
          }
        : null,
  };
  terminal.progress('');
  terminal.result(values['json'] === true ? JSON.stringify(withoutFiles(shown)) : replayLines(shown));
  return EXIT.done;
}

function withoutFiles({ printed, released, draws, spreads, unknowns, zoneNames, other }: ReplayShown) {
  return { draws, zoneNames, printed, released, spreads, unknowns, other };
}
