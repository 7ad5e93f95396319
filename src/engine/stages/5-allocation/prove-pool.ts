import type { Commodity, FairShareProof } from '../../vocabulary/stage-results/allocation.ts';
import type { CommodityInput } from './allocate-commodity.ts';
import { roundingKg } from './make-whole-packs.ts';
import { proveFairShare } from './prove-fair-share.ts';
import type { FairFloor } from './raise-least-share.ts';
import type { ShareTerms } from './share-terms.ts';
import type { StockGroup } from './stock-groups.ts';

/**
 * Proof of a pool's share: for the rows that have a claim to it, from the stock that is left to them. How far whole packs
 * leave anyone below the share stands in `roundingKg`.
 *
 * @param arcKg kilograms by arc, before packs are made whole
 * @returns one proof; none where no row has a claim
 */
export function provePool(
  { demand, ask, groups }: CommodityInput,
  terms: ShareTerms,
  floor: FairFloor,
  arcKg: Float64Array,
): FairShareProof[] {
  if (!terms.weightKg.some((kg, r) => kg > 0 && floor.held[r] === 0)) return [];
  const sizes = terms.pool.groups.map((g) => (groups[g] as StockGroup).sizes);
  const rounding = roundingKg(terms.pool, arcKg, sizes);
  const offered = offeredKg(terms, floor, arcKg, groups);
  return [proveFairShare(ask.commodity as Commodity, demand, terms, floor, groups, offered, rounding)];
}

/** Kilograms that each lot holds beyond promises, less what rows held by a decision take, by lot. */
function offeredKg(
  { pool }: ShareTerms,
  floor: FairFloor,
  arcKg: Float64Array,
  groups: readonly StockGroup[],
): ReadonlyMap<number, number> {
  const heldKg = new Float64Array(pool.groups.length);
  pool.arcRow.forEach((r, a) => {
    const g = pool.arcGroup[a] as number;
    if (floor.held[r] === 1) heldKg[g] = (heldKg[g] as number) + (arcKg[a] as number);
  });
  const offered = new Map<number, number>();
  pool.groups.forEach((group, g) => {
    let held = heldKg[g] as number;
    for (const { kg, lots } of (groups[group] as StockGroup).sizes) {
      for (const { lot, packs } of lots) {
        const taken = Math.min(held, packs * kg);
        held -= taken;
        offered.set(lot, packs * kg - taken);
      }
    }
  });
  return offered;
}
