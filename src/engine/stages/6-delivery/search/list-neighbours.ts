import type { PlaceMatrix, RoutingProblem } from './routing-problem.ts';

/** Loads nearest to each load by kilometres there and back, itself first: rows of `nearby`, -1 where there are no more. */
export function listNeighbours(problem: RoutingProblem, nearby: number): Int32Array {
  const { visits, matrices, slots, shelfStart } = problem;
  const rows = new Int32Array(visits.count * nearby).fill(-1);
  for (let a = 0; a < visits.count; a++) {
    const first = shelfStart[visits.shelfFrom[a] as number] as number;
    const matrix = matrices[slots.matrix[first] ?? 0] as PlaceMatrix;
    const hub = (visits.place[a] as number) * matrix.size;
    const alike: number[] = [];
    for (let b = 0; b < visits.count; b++) if (visits.shelfFrom[b] === visits.shelfFrom[a]) alike.push(b);
    const away = (b: number) => {
      const place = visits.place[b] as number;
      return b === a ? -1 : (matrix.kmFrom[hub + place] as number) + (matrix.kmTo[hub + place] as number);
    };
    const keys = new Map(alike.map((b) => [b, away(b)]));
    alike.sort((b, c) => compare(keys.get(b) as number, keys.get(c) as number) || b - c);
    for (let k = 0; k < Math.min(nearby, alike.length); k++) rows[a * nearby + k] = alike[k] as number;
  }
  return rows;
}

/** Infinity less Infinity is no order. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}
