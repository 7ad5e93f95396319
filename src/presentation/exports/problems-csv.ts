import type { Problem } from '../../engine/index.ts';
import { PROBLEM_WORDING } from '../wording/english/problems.ts';
import { csvText } from './csv-text.ts';

const HEADER = ['weight', 'code', 'file', 'row', 'column', 'value', 'what', 'remedy'];

/** Problems as CSV: where each stands, what it is and what to do. */
export function problemsCsv(problems: readonly Problem[]): string {
  const rows = problems.map((problem) => {
    const words = PROBLEM_WORDING[problem.code];
    const { weight, code, file, row, column, value } = problem;
    return [weight, code, file, row, column, value, words.what(problem), words.remedy];
  });
  return csvText(HEADER, rows);
}
