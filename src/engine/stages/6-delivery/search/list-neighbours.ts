import type { PlaceMatrix, RoutingProblem } from './routing-problem.ts';

/**
 * Loads nearest to each load by kilometres there and back, itself first: rows of `nearby`, -1 where there are no more. Where vehicles
 * or days differ in their ways, the shortest counts.
 *
 * @param moved the loads that are listed, each among the neighbours of the others
 */
export function listNeighbours(problem: RoutingProblem, nearby: number, moved: readonly number[]): Int32Array {
  const { visits } = problem;
  const rows = new Int32Array(visits.count * nearby).fill(-1);
  const alike = groupByShelves(problem, moved);
  const orders = new Map<string, readonly number[]>();
  for (const a of moved) {
    const shelf = visits.shelfFrom[a] as number;
    const key = `${shelf} ${visits.place[a]}`;
    const order = orders.get(key) ?? orderFrom(problem, alike.get(shelf) as readonly number[], a);
    orders.set(key, order);
    if (nearby > 0) rows[a * nearby] = a;
    let k = 1;
    for (let i = 0; k < nearby && i < order.length; i++)
      if (order[i] !== a) rows[a * nearby + k++] = order[i] as number;
  }
  return rows;
}

/** Loads that the same shelves may serve. */
function groupByShelves({ visits }: RoutingProblem, moved: readonly number[]): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  for (const visit of moved) {
    const shelf = visits.shelfFrom[visit] as number;
    const group = groups.get(shelf);
    if (group) group.push(visit);
    else groups.set(shelf, [visit]);
  }
  return groups;
}

/** Loads by how far their place is from that of one of them. */
function orderFrom(problem: RoutingProblem, alike: readonly number[], from: number): readonly number[] {
  const { visits } = problem;
  const matrices = matricesOf(problem, from);
  const away = new Float64Array(visits.count);
  for (const visit of alike) {
    const place = visits.place[visit] as number;
    away[visit] = Number.POSITIVE_INFINITY;
    for (const { kmFrom, kmTo, size } of matrices) {
      const hub = (visits.place[from] as number) * size;
      const km = (kmFrom[hub + place] as number) + (kmTo[hub + place] as number);
      if (km < (away[visit] as number)) away[visit] = km;
    }
  }
  return [...alike].sort((b, c) => compare(away[b] as number, away[c] as number) || b - c);
}

function matricesOf({ visits, slots, shelfStart, matrices }: RoutingProblem, visit: number): PlaceMatrix[] {
  const first = shelfStart[visits.shelfFrom[visit] as number] as number;
  const last = shelfStart[visits.shelfTo[visit] as number] as number;
  return [...new Set(slots.matrix.subarray(first, last))].map((matrix) => matrices[matrix] as PlaceMatrix);
}

/** Infinity less Infinity is no order. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}
