import { type Ask, NOISE_KG } from './ask.ts';
import type { DemandRows } from './demand-rows.ts';
import type { StockGroup } from './stock-groups.ts';

/**
 * Rows and stock that compete with one another: joined by crops that a product serves together and by depots that reach
 * them. Nothing crosses from one pool to another, so each is shared out by itself. Arcs, by row, then group: which stock
 * may go to which row. Arc columns hold positions in `rows` and `groups`.
 */
export interface Pool {
  /** Demand rows, ascending. */
  readonly rows: readonly number[];
  /** Stock groups, ascending. */
  readonly groups: readonly number[];
  readonly arcRow: Int32Array;
  readonly arcGroup: Int32Array;
  readonly arcMinutes: Float64Array;
}

/** Drive from a group's depot to a row's place, minutes; Infinity where this stock may not go there. */
export type MinutesTo = (row: number, group: StockGroup) => number;

export function formPools(demand: DemandRows, ask: Ask, groups: readonly StockGroup[], minutesTo: MinutesTo): Pool[] {
  const groupsOfCrop = new Map<number, number[]>();
  groups.forEach(({ crops }, g) => {
    for (const crop of crops) groupsOfCrop.set(crop, [...(groupsOfCrop.get(crop) ?? []), g]);
  });
  const arcs: { row: number; group: number; minutes: number }[] = [];
  const joined = new Groupings(demand.count + groups.length);
  for (let row = 0; row < demand.count; row++) {
    if ((ask.highKg[row] as number) <= NOISE_KG) continue;
    for (const group of groupsOfCrop.get(demand.crop[row] as number) ?? []) {
      const minutes = minutesTo(row, groups[group] as StockGroup);
      if (minutes === Number.POSITIVE_INFINITY) continue;
      arcs.push({ row, group, minutes });
      joined.join(row, demand.count + group);
    }
  }
  const byPool = new Map<number, typeof arcs>();
  for (const arc of arcs) {
    const root = joined.rootOf(arc.row);
    const own = byPool.get(root);
    if (own) own.push(arc);
    else byPool.set(root, [arc]);
  }
  return [...byPool.values()].map(poolOfArcs);
}

function poolOfArcs(arcs: readonly { row: number; group: number; minutes: number }[]): Pool {
  const rows = [...new Set(arcs.map(({ row }) => row))];
  const groups = [...new Set(arcs.map(({ group }) => group))].sort((a, b) => a - b);
  const rowPosition = new Map(rows.map((row, i) => [row, i]));
  const groupPosition = new Map(groups.map((group, i) => [group, i]));
  return {
    rows,
    groups,
    arcRow: Int32Array.from(arcs, ({ row }) => rowPosition.get(row) as number),
    arcGroup: Int32Array.from(arcs, ({ group }) => groupPosition.get(group) as number),
    arcMinutes: Float64Array.from(arcs, ({ minutes }) => minutes),
  };
}

/** Sets that grow together (union-find with path halving; the smaller index leads, so the order of joining shows nowhere). */
class Groupings {
  private readonly parent: Int32Array;

  constructor(size: number) {
    this.parent = Int32Array.from({ length: size }, (_, i) => i);
  }

  rootOf(item: number): number {
    let root = item;
    while (this.parent[root] !== root) {
      this.parent[root] = this.parent[this.parent[root] as number] as number;
      root = this.parent[root] as number;
    }
    return root;
  }

  join(a: number, b: number): void {
    const [low, high] = [this.rootOf(a), this.rootOf(b)].sort((x, y) => x - y) as [number, number];
    this.parent[high] = low;
  }
}
