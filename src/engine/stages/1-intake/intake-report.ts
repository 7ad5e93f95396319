import {
  PROBLEM_WEIGHTS,
  type Problem,
  type ProblemCode,
  type ProblemPlace,
  problem,
} from '../../vocabulary/problems.ts';
import type { DefaultUsed, Sourced } from '../../vocabulary/provenance.ts';

/** Problems of one code, file and column that are listed one by one; the rest is counted. */
const MOST_LISTED = 20;
/** Values are shown, not archived. */
const LONGEST_VALUE = 120;

interface Kin {
  readonly code: ProblemCode;
  readonly file: string | null;
  readonly column: string | null;
  count: number;
}

/** What intake has to say: coded problems, collapsed where they are many of a kind, and the defaults that were taken. */
export class IntakeReport {
  private readonly listed: Problem[] = [];
  private readonly kin = new Map<string, Kin>();
  private readonly used = new Map<string, DefaultUsed>();
  private blocking = false;

  add(code: ProblemCode, place: ProblemPlace = {}): void {
    if (PROBLEM_WEIGHTS[code] === 'blocks') this.blocking = true;
    const { file = null, column = null, value = null } = place;
    const key = `${code}|${file}|${column}`;
    const kin = this.kin.get(key) ?? { code, file, column, count: 0 };
    this.kin.set(key, kin);
    kin.count++;
    if (kin.count > MOST_LISTED) return;
    const shown = value !== null && value.length > LONGEST_VALUE ? `${value.slice(0, LONGEST_VALUE)}…` : value;
    this.listed.push(problem(code, { ...place, value: shown }));
  }

  /** Counts a default taken by `rows` rows; `column` is `file:column`. */
  countDefault(column: string, taken: Sourced<number | string | boolean>, rows = 1): void {
    const key = `${column}|${taken.value}`;
    const before = this.used.get(key)?.rows ?? 0;
    this.used.set(key, { column, ...taken, rows: before + rows });
  }

  /** True once something was met that allows no honest plan. */
  get blocks(): boolean {
    return this.blocking;
  }

  problems(): readonly Problem[] {
    const further = [...this.kin.values()].filter((kin) => kin.count > MOST_LISTED).map(summary);
    return [...this.listed, ...further];
  }

  /** In the order of column and value, which the order of rows cannot change. */
  defaults(): readonly DefaultUsed[] {
    return [...this.used.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, used]) => used);
  }
}

function summary({ code, file, column, count }: Kin): Problem {
  const more = PROBLEM_WEIGHTS[code] === 'noted' ? 'E1001' : 'E1002';
  return problem(more, { file, column, value: code, facts: { code, count, listed: MOST_LISTED } });
}
