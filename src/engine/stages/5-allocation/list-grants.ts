import { ExactSum, exactSum } from '../../numerics/exact-sum.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Grants } from '../../vocabulary/stage-results/allocation.ts';
import type { Product } from '../../vocabulary/supply.ts';
import type { Pick } from './allocate-commodity.ts';
import type { DemandRows } from './demand-rows.ts';

/** Whole packs of one lot for one row, and how much of the row's need they serve. */
export interface GrantLine extends Pick {
  readonly product: Product;
  /** Seed that one of its packs is or coats, kg at reference germination; of fertiliser, hectares. */
  readonly packKg: number;
  readonly servesSeedKg: number;
}

/**
 * Merges packs of one lot for one row, and counts what they serve: each lot in turn until the need is met, so that the
 * amounts served sum exactly to what the row is given.
 *
 * @param needKg per row, kg of seed
 */
export function serveNeeds(
  products: readonly Product[],
  packKg: Float64Array,
  picks: readonly Pick[],
  needKg: Float64Array,
): { readonly lines: readonly GrantLine[]; readonly givenKg: Float64Array } {
  const merged = new Map<string, Pick>();
  for (const pick of picks) {
    const key = `${pick.row} ${pick.lot}`;
    merged.set(key, { ...pick, packs: pick.packs + (merged.get(key)?.packs ?? 0) });
  }
  const served = new Map<number, number[]>();
  const lines = [...merged.values()]
    .sort((a, b) => a.row - b.row || a.lot - b.lot)
    .map((pick): GrantLine => {
      const product = products[pick.lot] as Product;
      const before = served.get(pick.row) ?? [];
      const open = Math.max(0, (needKg[pick.row] as number) - exactSum(before));
      const own = packKg[pick.lot] as number;
      const servesSeedKg = Math.min(open, pick.packs * own);
      served.set(pick.row, [...before, servesSeedKg]);
      return { ...pick, product, packKg: own, servesSeedKg };
    });
  return { lines, givenKg: needKg.map((_, row) => exactSum(served.get(row) ?? [])) };
}

/** Columns of the plan, by community, crop and lot. `lines` of one row and lot stand once. */
export function listGrants(demand: DemandRows, lines: readonly GrantLine[]): Grants {
  return {
    community: Int32Array.from(lines, ({ row }) => demand.community[row] as number),
    crop: Int32Array.from(lines, ({ row }) => demand.crop[row] as number),
    lot: Int32Array.from(lines, ({ lot }) => lot),
    packs: Int32Array.from(lines, ({ packs }) => packs),
    kg: Float64Array.from(lines, ({ packs, product }) => (packs * product.packG) / 1000),
    servesSeedKg: Float64Array.from(lines, ({ servesSeedKg }) => servesSeedKg),
  };
}

/** Product of each lot. */
export function productsOfLots(scenario: Scenario): Product[] {
  const byId = new Map(scenario.products.map((product) => [product.id, product]));
  return scenario.lots.map(({ productId }) => {
    const product = byId.get(productId);
    if (!product) throw new RangeError('a lot is of a product that intake did not let through');
    return product;
  });
}

/** Seed that kept packs hold or coat, kg per row, of one kind of product. */
export function keptSeedKg(
  demand: DemandRows,
  products: readonly Product[],
  packKg: Float64Array,
  kept: readonly Pick[],
  kind: Product['kind'],
): Float64Array {
  const sums = Array.from({ length: demand.count }, () => new ExactSum());
  for (const { row, lot, packs } of kept) {
    const product = products[lot] as Product;
    if (product.kind === kind) sums[row]?.add(packs * (packKg[lot] as number));
  }
  return Float64Array.from(sums, (sum) => sum.value());
}
