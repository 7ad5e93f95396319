import type { Problem } from '../../../engine/index.ts';

/**
 * Words for a finding of the checker: where in the plan, then what it says and what it should say.
 *
 * @param said a sentence without its subject; `{value}` and `{expected}` stand for the value met and the value due
 */
export function inPlan(said: string): (problem: Problem) => string {
  return (problem) => {
    const row = problem.row === null ? '' : `, row ${problem.row}`;
    const more = problem.facts['furtherLikeIt'];
    const words = said
      .replace('{value}', () => problem.value ?? 'nothing')
      .replace('{expected}', () => String(problem.facts['expected'] ?? 'something else'));
    return `plan ${problem.column ?? ''}${row} ${words}${more === undefined ? '' : ` (and ${more} more like it)`}`;
  };
}
