import type { Problem, Weight } from '../../engine/index.ts';
import type { Words } from '../wording/words.ts';

/** Problems of one kind in one place: what the list shows as one entry. */
export interface ProblemEntry {
  readonly key: string;
  readonly weight: Weight;
  readonly code: Problem['code'];
  /** Null where the plan is meant and not a file. */
  readonly file: string | null;
  readonly column: string | null;
  /** Rows met, the first few as text, and how many more there are. */
  readonly rows: string;
  readonly rowCount: number;
  readonly value: string | null;
  readonly what: string;
  readonly remedy: string;
  readonly problems: readonly Problem[];
}

export interface ProblemCounts {
  readonly blocks: number;
  readonly setAside: number;
  readonly noted: number;
}

const WEIGHTS: readonly Weight[] = ['blocks', 'set aside', 'noted'];
const ROWS_SHOWN = 4;

/** Entries of the problem list, heaviest first, then in the order met. Like problems of one file and column are one entry. */
export function problemEntries(problems: readonly Problem[], words: Words): readonly ProblemEntry[] {
  const groups = new Map<string, Problem[]>();
  for (const problem of problems) {
    const key = [problem.code, problem.file, problem.column, problem.file === null ? problem.value : ''].join('|');
    const group = groups.get(key);
    if (group) group.push(problem);
    else groups.set(key, [problem]);
  }
  return [...groups]
    .map(([key, group]) => entryOf(key, group, words))
    .sort((a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight));
}

/** Entries by weight: what the answer counts. */
export function countProblems(entries: readonly ProblemEntry[]): ProblemCounts {
  const count = (weight: Weight) => entries.filter((entry) => entry.weight === weight).length;
  return { blocks: count('blocks'), setAside: count('set aside'), noted: count('noted') };
}

function entryOf(key: string, problems: readonly Problem[], words: Words): ProblemEntry {
  const first = problems[0] as Problem;
  const { what, remedy } = words.problemOf[first.code];
  const rows = [...new Set(problems.map(({ row }) => row).filter((row) => row !== null))];
  return {
    key,
    weight: first.weight,
    code: first.code,
    file: first.file,
    column: first.column,
    rows: rows.slice(0, ROWS_SHOWN).join(', '),
    rowCount: rows.length,
    value: first.value,
    what: withoutPlace(what(first)),
    remedy,
    problems,
  };
}

/** The list shows file, row and column in columns of its own; the wording puts them before a colon. */
function withoutPlace(text: string): string {
  const [, said] = /^[^:]*\.(?:csv|json|geojson)[^:]*: (.*)$/s.exec(text) ?? [];
  const words = said ?? text;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export const rowsLeftOut = (entry: ProblemEntry): number => Math.max(0, entry.rowCount - ROWS_SHOWN);

const MOST_CELLS = 20;

/** A cell of a table, as a person sees it. */
export interface MendableCell {
  readonly row: number;
  readonly value: string | null;
}

/** Cells of a table that the entry speaks of and that can be written anew here. */
export function mendableCells({ file, column, problems }: ProblemEntry): readonly MendableCell[] {
  if (file === null || column === null || !file.endsWith('.csv')) return [];
  return problems.flatMap(({ row, value }) => (row === null || row === 1 ? [] : [{ row, value }])).slice(0, MOST_CELLS);
}
