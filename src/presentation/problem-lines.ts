import type { Problem, Weight } from '../engine/index.ts';
import { PROBLEM_WORDING } from './wording/english/problems.ts';

const WEIGHTS: readonly Weight[] = ['blocks', 'set aside', 'noted'];

/**
 * Problems for a screen of text: heaviest first, each with what it is, where it stands and what to do.
 *
 * @param listed how many of each code are written out; the rest of them are counted
 */
export function problemLines(problems: readonly Problem[], listed: number): string {
  const byCode = new Map<string, Problem[]>();
  for (const problem of problems) byCode.set(problem.code, [...(byCode.get(problem.code) ?? []), problem]);
  const groups = [...byCode.values()].sort((a, b) => weightOf(a) - weightOf(b));
  return groups.flatMap((group) => linesOfCode(group, listed)).join('\n');
}

function weightOf([first]: readonly Problem[]): number {
  return first ? WEIGHTS.indexOf(first.weight) : WEIGHTS.length;
}

function linesOfCode(group: readonly Problem[], listed: number): string[] {
  const lines = group.slice(0, listed).map((problem) => {
    const { what, remedy } = PROBLEM_WORDING[problem.code];
    return `${problem.weight} ${problem.code}: ${what(problem)} ${remedy}`;
  });
  const more = group.length - listed;
  return more > 0 ? [...lines, `${group[0]?.weight} ${group[0]?.code}: and ${more} more like it`] : lines;
}
