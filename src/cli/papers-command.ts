import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { checkPlan, type Plan } from '../engine/index.ts';
import { PAPER_SIZES, type PaperSize } from '../presentation/papers/page-style.ts';
import { paperCase } from '../presentation/papers/paper-case.ts';
import { paperFiles } from '../presentation/papers/paper-files.ts';
import { problemLines } from '../presentation/problem-lines.ts';
import { pseudoWords } from '../presentation/wording/pseudo.ts';
import { english, type Language, type Words } from '../presentation/wording/words.ts';
import { openScenario } from './open-scenario.ts';
import { readOptions } from './read-options.ts';
import { readPlanFile } from './read-plan-file.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import type { Terminal } from './terminal.ts';
import { prepareOutFolder } from './write-plan-files.ts';

export const PAPERS_USAGE =
  'nodulary papers FOLDER PLAN.json --out DIR [--size A4 or Letter] [--language NAME]   papers to print, calendars, routes';

const LISTED = 40;
const LANGUAGES: Readonly<Record<Language, () => Words>> = { english: () => english, pseudo: pseudoWords };

/** Writes the papers of a plan that holds; of one that does not, none: a sheet is believed where no screen is. */
export function runPapers(args: readonly string[], terminal: Terminal): ExitCode {
  const options = { out: { type: 'string' }, size: { type: 'string' }, language: { type: 'string' } } as const;
  const { values, paths } = readOptions(args, options, 2, PAPERS_USAGE);
  const [folder, file] = paths as [string, string];
  const out = values['out'];
  if (typeof out !== 'string') throw new Refusal(`papers needs --out DIR.\nUse: ${PAPERS_USAGE}`);
  const size = oneOf('--size', values['size'] ?? 'A4', PAPER_SIZES);
  const language = oneOf('--language', values['language'] ?? 'english', Object.keys(LANGUAGES) as Language[]);
  prepareOutFolder(out);
  const plan = readPlanFile(file);
  const { scenario, decisions, problems } = openScenario(folder);
  if (scenario === null) {
    terminal.result(problemLines(problems, LISTED));
    terminal.notice('The scenario cannot be planned, so there are no papers of it.');
    return EXIT.blocked;
  }
  const findings = checkPlan(scenario, decisions, plan as Plan);
  if (findings.length > 0) {
    terminal.notice(problemLines(findings, LISTED));
    terminal.notice('The plan does not hold for these files, so no paper was written. Plan again, then print.');
    return EXIT.blocked;
  }
  const c = paperCase(plan as Plan, scenario, decisions.decisions, LANGUAGES[language]());
  const count = writePapers(out, paperFiles(c, size as PaperSize));
  terminal.result(`${count} files. Begin with ${join(out, 'index.html')}`);
  return EXIT.done;
}

function oneOf<T extends string>(name: string, said: string | boolean, known: readonly T[]): T {
  const found = known.find((one) => one === said);
  if (found === undefined) throw new Refusal(`${name} takes ${known.join(' or ')}, not "${said}".`);
  return found;
}

/** Each file is written beside its place and then put there, so that none is ever half. */
function writePapers(folder: string, files: ReadonlyMap<string, () => string>): number {
  try {
    for (const [path, make] of files) {
      const place = join(folder, path);
      mkdirSync(dirname(place), { recursive: true });
      writeFileSync(`${place}.part`, make());
      renameSync(`${place}.part`, place);
    }
  } catch (error) {
    throw new Refusal(`Cannot write to ${folder}: ${error instanceof Error ? error.message : String(error)}`);
  }
  return files.size;
}
