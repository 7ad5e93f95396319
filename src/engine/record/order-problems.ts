import type { Problem, Weight } from '../vocabulary/index.ts';

const WEIGHT_ORDER: readonly Weight[] = ['blocks', 'set aside', 'noted'];

/**
 * Problems in an order that does not hang on the order of rows in the files: heaviest first, then by code, file, column,
 * value and facts, the row last. A problem told twice stands once.
 */
export function orderProblems(problems: readonly Problem[]): Problem[] {
  const keyed = problems.map((problem) => ({ problem, key: sortKey(problem) }));
  keyed.sort((a, b) => compareKeys(a.key, b.key));
  return keyed.filter(({ key }, i) => i === 0 || compareKeys(keyed[i - 1]?.key ?? [], key) !== 0).map((k) => k.problem);
}

type SortKey = readonly (string | number)[];

function sortKey({ weight, code, file, row, column, value, facts }: Problem): SortKey {
  const sortedFacts = Object.keys(facts)
    .sort()
    .map((name) => [name, facts[name]]);
  return [
    WEIGHT_ORDER.indexOf(weight),
    code,
    file ?? '',
    column ?? '',
    value ?? '',
    JSON.stringify(sortedFacts),
    row ?? 0,
  ];
}

function compareKeys(a: SortKey, b: SortKey): number {
  for (let i = 0; i < a.length; i++) {
    const [x, y] = [a[i] as string | number, b[i] as string | number];
    if (x < y) return -1;
    if (x > y) return 1;
  }
  return 0;
}
