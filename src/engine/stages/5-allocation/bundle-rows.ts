import type { ShareTerms } from './share-terms.ts';

/** A pool with like rows put together, and the bundle of each row. */
export interface Bundles {
  readonly terms: ShareTerms;
  readonly held: Uint8Array;
  readonly bundleOf: Int32Array;
}

/**
 * Puts together open rows that the same stock may reach and nothing else tells apart. What a bundle gets can be divided
 * among its rows by weight, so that the largest least share is the same and one price serves them all; the first step
 * then grows with the kinds of reach, not with the communities. Rows that are held, promised or have a floor stay single.
 */
export function bundleRows(terms: ShareTerms, held: Uint8Array): Bundles {
  const { pool } = terms;
  const groupsOfRow: number[][] = pool.rows.map(() => []);
  pool.arcRow.forEach((r, a) => {
    groupsOfRow[r]?.push(pool.arcGroup[a] as number);
  });
  const bundles = new Map<string, number>();
  const members: number[][] = [];
  const bundleOf = Int32Array.from(pool.rows, (_, r) => {
    const isSingle = held[r] === 1 || (terms.keptKg[r] as number) > 0 || (terms.lowKg[r] as number) > 0;
    const key = isSingle ? `row ${r}` : (groupsOfRow[r] as number[]).join(' ');
    const bundle = bundles.get(key) ?? bundles.size;
    if (bundle === bundles.size) members.push([]);
    bundles.set(key, bundle);
    members[bundle]?.push(r);
    return bundle;
  });
  const sum = (column: Float64Array) =>
    Float64Array.from(members, (rows) => rows.reduce((total, r) => total + (column[r] as number), 0));
  const arcs = members.flatMap(([first], bundle) =>
    (groupsOfRow[first as number] as number[]).map((group) => ({ bundle, group })),
  );
  return {
    bundleOf,
    held: Uint8Array.from(members, ([first]) => held[first as number] as number),
    terms: {
      ...terms,
      pool: {
        rows: members.map((_, bundle) => bundle),
        groups: pool.groups,
        arcRow: Int32Array.from(arcs, ({ bundle }) => bundle),
        arcGroup: Int32Array.from(arcs, ({ group }) => group),
        arcMinutes: new Float64Array(arcs.length),
      },
      keptKg: sum(terms.keptKg),
      lowKg: sum(terms.lowKg),
      highKg: sum(terms.highKg),
      held: Uint8Array.from(members, ([first]) => held[first as number] as number),
      weightKg: sum(terms.weightKg),
      unitCount: members.length,
      unitOffsets: Int32Array.from({ length: members.length + 1 }, (_, b) => b),
      units: Int32Array.from(members, (_, b) => b),
      unitFraction: new Float64Array(members.length).fill(1),
    },
  };
}
