import { exactSum } from '../../numerics/exact-sum.ts';
import type { Commodity, FairShareProof } from '../../vocabulary/stage-results/allocation.ts';
import type { DemandRows } from './demand-rows.ts';
import type { FairFloor } from './raise-least-share.ts';
import type { ShareTerms } from './share-terms.ts';
import type { StockGroup } from './stock-groups.ts';

/**
 * The certificate that no one's least share could be larger. Any prices >= 0 on rows make one: the price of a lot is the
 * highest of the rows it may go to, the cap takes what the needs leave of 1. Then, for every way to share out,
 * T <= T (Sum need * price + cap) <= Sum (kept + given) * price + cap <= Sum offered * lotPrice + Sum kept * price + cap
 * (weak duality of linear programs); the prices that the solver gives make the bound equal to the share. Prices are rebuilt here, so that the
 * proof holds to the last digit whatever the solver's tolerance.
 *
 * @param offeredKg what each lot offers these rows, kg, by lot index: what rows outside the equal share take is off it
 */
export function proveFairShare(
  commodity: Commodity,
  demand: DemandRows,
  terms: ShareTerms,
  floor: FairFloor,
  groups: readonly StockGroup[],
  offeredKg: ReadonlyMap<number, number>,
  roundingKg: number,
): FairShareProof {
  const { pool, weightKg } = terms;
  const open = pool.rows.flatMap((_, r) => (floor.held[r] === 0 && (weightKg[r] as number) > 0 ? [r] : []));
  const groupPrice = new Float64Array(pool.groups.length);
  pool.arcRow.forEach((r, a) => {
    const g = pool.arcGroup[a] as number;
    if (floor.held[r] === 0 && (weightKg[r] as number) > 0)
      groupPrice[g] = Math.max(groupPrice[g] as number, floor.rowPrices[r] as number);
  });
  const lots = pool.groups
    .flatMap((group, g) =>
      (groups[group] as StockGroup).sizes.flatMap(({ lots: own }) =>
        own.map(({ lot }) => ({ lot, price: groupPrice[g] as number })),
      ),
    )
    .sort((a, b) => a.lot - b.lot);
  const rows = open.map((r) => pool.rows[r] as number);
  const needKg = open.map((r) => weightKg[r] as number);
  const communityPrices = open.map((r) => floor.rowPrices[r] as number);
  const keptKg = open.map((r) => terms.keptKg[r] as number);
  const capPrice = Math.max(0, 1 - exactSum(needKg.map((kg, i) => kg * (communityPrices[i] as number))));
  const offered = lots.map(({ lot }) => offeredKg.get(lot) ?? 0);
  return {
    commodity,
    crops: [...new Set(rows.map((row) => demand.crop[row] as number))].sort((a, b) => a - b),
    shareRows: rows,
    needKg,
    keptKg,
    communityPrices,
    lots: lots.map(({ lot }) => lot),
    offeredKg: offered,
    lotPrices: lots.map(({ price }) => price),
    capPrice,
    leastShare: floor.share,
    bound: exactSum([
      ...lots.map(({ price }, i) => price * (offered[i] as number)),
      ...keptKg.map((kg, i) => kg * (communityPrices[i] as number)),
      capPrice,
    ]),
    roundingKg,
  };
}
