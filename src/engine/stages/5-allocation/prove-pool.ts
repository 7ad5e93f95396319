import { exactSum } from '../../numerics/exact-sum.ts';
import type { Commodity, FairShareProof } from '../../vocabulary/stage-results.ts';
import type { Product } from '../../vocabulary/supply.ts';
import type { CommodityInput, Pick } from './allocate-commodity.ts';
import { roundingKg } from './make-whole-packs.ts';
import { proveFairShare } from './prove-fair-share.ts';
import { type FairFloor, raiseLeastShare } from './raise-least-share.ts';
import type { ShareTerms } from './share-terms.ts';
import { type StockGroup, seedKgPerPack } from './stock-groups.ts';

/**
 * Proofs of a pool's share. One serves the first round. In the second, promises count as stock that could still go to
 * anyone; where that would prove a share which promises keep out of reach, the rows that were promised more stand outside
 * with what they hold, and have a proof of their own. How far whole packs and promises leave anyone below the share stands
 * in `roundingKg`.
 *
 * @param picks the new packs of the pool
 */
export function provePool(
  input: CommodityInput,
  terms: ShareTerms,
  floor: FairFloor,
  arcKg: Float64Array,
  picks: readonly Pick[],
): FairShareProof[] {
  const { demand, ask, groups } = input;
  const sizes = terms.pool.groups.map((g) => (groups[g] as StockGroup).sizes);
  const rounding = roundingKg(terms.pool, arcKg, sizes);
  const goods = goodsOfPool(input, terms, picks);
  const prove = (proven: ShareTerms, share: FairFloor, offered: ReadonlyMap<number, number>, below: number) =>
    proveFairShare(ask.commodity as Commodity, demand, proven, share, groups, offered, Math.max(rounding, below));
  if (input.kept.length === 0 && !floor.held.includes(1)) return [prove(terms, floor, goods.offeredKg, 0)];

  const largestKg = sizes.map(([largest]) => largest?.kg ?? 0);
  const tolerated = Math.max(rounding, exactSum(largestKg));
  const proofs: FairShareProof[] = [];
  let open = floor.held.map((held) => 1 - held);
  while (open.includes(1)) {
    const next = new Uint8Array(open.length);
    for (;;) {
      const offered = offeredTo(goods, open);
      const proven = termsOfOpen(input, terms, open, offered);
      const share = raiseLeastShare(proven, input.solver);
      if (!share) return proofs;
      const above = goods.givenKg.map((kg, r) =>
        share.held[r] === 1 ? 0 : kg - share.share * (terms.weightKg[r] as number),
      );
      const below = above.reduce((most, kg) => Math.max(most, -kg), 0);
      const leaves = above.map((kg, r) => (kg > Math.max(...largestKg) && (terms.keptKg[r] as number) > 0 ? 1 : 0));
      if (below <= tolerated || !leaves.includes(1)) {
        proofs.push(prove(proven, share, offered, below));
        break;
      }
      leaves.forEach((isLeaving, r) => {
        if (isLeaving === 0) return;
        open[r] = 0;
        next[r] = 1;
      });
    }
    open = next;
  }
  return proofs;
}

/** What a pool's lots hold, promised packs included, and who gets it. */
interface Goods {
  /** By lot, kg of seed. */
  readonly offeredKg: ReadonlyMap<number, number>;
  readonly given: readonly { readonly r: number; readonly lot: number; readonly kg: number }[];
  /** By row of the pool. */
  readonly givenKg: Float64Array;
}

function goodsOfPool({ groups, kept, products }: CommodityInput, { pool }: ShareTerms, picks: readonly Pick[]): Goods {
  const offeredKg = new Map<number, number>();
  for (const group of pool.groups) {
    for (const { kg, lots } of (groups[group] as StockGroup).sizes) {
      for (const { lot, packs } of lots) offeredKg.set(lot, packs * kg);
    }
  }
  const position = new Map(pool.rows.map((row, r) => [row, r]));
  const givenKg = new Float64Array(pool.rows.length);
  const given = [...kept, ...picks].flatMap(({ row, lot, packs }, i) => {
    const r = position.get(row);
    if (r === undefined) return [];
    const kg = packs * seedKgPerPack(products[lot] as Product);
    givenKg[r] = (givenKg[r] as number) + kg;
    if (i < kept.length && offeredKg.has(lot)) offeredKg.set(lot, (offeredKg.get(lot) as number) + kg);
    return [{ r, lot, kg }];
  });
  return { offeredKg, given, givenKg };
}

/** Kilograms that each lot offers the open rows: all of it but what other rows get. */
function offeredTo({ offeredKg, given }: Goods, open: Uint8Array): ReadonlyMap<number, number> {
  const left = new Map(offeredKg);
  for (const { r, lot, kg } of given) {
    if (open[r] === 0 && left.has(lot)) left.set(lot, Math.max(0, (left.get(lot) as number) - kg));
  }
  return left;
}

/** The pool as if nothing had been promised: its open rows, and the stock offered to them. */
function termsOfOpen(
  { groups }: CommodityInput,
  terms: ShareTerms,
  open: Uint8Array,
  offered: ReadonlyMap<number, number>,
): ShareTerms {
  const ofOpen = (column: Float64Array) => column.map((kg, r) => (open[r] === 1 ? kg : 0));
  return {
    ...terms,
    stockKg: Float64Array.from(terms.pool.groups, (g) =>
      exactSum((groups[g] as StockGroup).sizes.flatMap(({ lots }) => lots.map(({ lot }) => offered.get(lot) ?? 0))),
    ),
    keptKg: new Float64Array(terms.keptKg.length),
    // A floor that is only the promise goes with it; a floor of a decision stays.
    lowKg: ofOpen(terms.lowKg.map((low, r) => (low > (terms.keptKg[r] as number) ? low : 0))),
    highKg: ofOpen(terms.highKg),
    held: open.map((isOpen) => 1 - isOpen),
  };
}
