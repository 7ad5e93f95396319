import type { Commodity, Plan, Product, Scenario } from '../../engine/index.ts';
import { localNumber, noBreaks, wholePercent } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import type { Cell } from './stock-cells.ts';
import { amountOf, lotsFor, productOfLot, seedKgPerPack } from './stock-goods.ts';

/** What a share fixed by hand would take, told before it is decided. */
export interface FixPreview {
  /** Packs that it takes or frees, of the product in stock that holds most. */
  readonly takes: string;
  /** What becomes of the others. */
  readonly others: string;
  /** Where there will not be seed enough to coat. */
  readonly limit: string | null;
}

interface Sums {
  readonly needKg: number;
  readonly nowKg: number;
  readonly thenKg: number;
}

/**
 * What fixing a cell at a share takes from the stock, and about what share it leaves the others of the same crop where
 * packs are shared equally. Packs that no plan gives yet go first. The next plan settles it in whole packs.
 */
export function previewFix(
  plan: Plan,
  scenario: Scenario,
  cell: Cell,
  commodity: Commodity,
  share: number,
  words: Words,
): FixPreview {
  const inside = sumRows(plan, cell, commodity, share, true);
  const outside = sumRows(plan, cell, commodity, share, false);
  const moreKg = inside.thenKg - inside.nowKg;
  const { product, idleKg } = stockFor(plan, scenario, cell, commodity);
  const packs = product ? moreKg / seedKgPerPack(product) : 0;
  const reached = inside.needKg > 0 ? inside.thenKg / inside.needKg : 0;
  return {
    takes: takesText(product, packs, words),
    others: packs > 0.5 ? othersText(scenario, outside, moreKg - idleKg, words) : '',
    limit:
      commodity === 'inoculant' && reached < share - 0.005 ? words.stock.noMoreSeed(percent(reached, words)) : null,
  };
}

const percent = (share: number, words: Words): string =>
  noBreaks(words.stock.percent(localNumber(wholePercent(share), words)));

/** Seed of the crop in kg: all that the land asks for, what has or will have the goods now, and with the cell at the share. */
function sumRows(plan: Plan, cell: Cell, commodity: Commodity, share: number, isInside: boolean): Sums {
  const { shares } = plan.allocation;
  const crop = plan.ids.crops.indexOf(cell.crop);
  const ids = new Set(cell.communityIds);
  let [needKg, nowKg, thenKg] = [0, 0, 0];
  shares.community.forEach((community, row) => {
    if (shares.crop[row] !== crop || ids.has(plan.ids.communities[community] ?? '') !== isInside) return;
    const need = shares.seedNeedKg[row] ?? 0;
    const own = Math.min(need, shares.ownSeedKg[row] ?? 0);
    const isSeed = commodity === 'seed';
    const now = isSeed ? Math.min(need, own + (shares.seedGivenKg[row] ?? 0)) : (shares.inoculantGivenSeedKg[row] ?? 0);
    const most = isSeed ? need : (shares.inoculantNeedSeedKg[row] ?? 0);
    needKg += need;
    nowKg += now;
    thenKg += Math.min(most, Math.max(isSeed ? own : 0, share * need));
  });
  return { needKg, nowKg, thenKg };
}

/** The product of which most may be given, and what of all that serve is not given out yet, in kg of seed. */
function stockFor(
  { allocation: { lots, grants } }: Plan,
  scenario: Scenario,
  { crop }: Cell,
  commodity: Commodity,
): { readonly product: Product | undefined; readonly idleKg: number } {
  const packsOut = new Map<number, number>();
  grants.lot.forEach((lot, row) => {
    packsOut.set(lot, (packsOut.get(lot) ?? 0) + (grants.packs[row] ?? 0));
  });
  let [best, bestKg, idleKg] = [undefined as Product | undefined, -1, 0];
  for (const lot of lotsFor(scenario, crop, commodity)) {
    const product = productOfLot(scenario, lot);
    const kgPerPack = product ? seedKgPerPack(product) : Number.NaN;
    if (!product || !Number.isFinite(kgPerPack)) continue;
    const offered = lots.packsOffered[lot] ?? 0;
    idleKg += (offered - (packsOut.get(lot) ?? 0)) * kgPerPack;
    if (offered * kgPerPack > bestKg) [best, bestKg] = [product, offered * kgPerPack];
  }
  return { product: best, idleKg };
}

function takesText(product: Product | undefined, packs: number, words: Words): string {
  const count = Math.round(Math.abs(packs));
  if (!product || count === 0) return words.stock.costsNothing;
  const amount = amountOf(product, count, words);
  return packs > 0 ? words.stock.takes(amount) : words.stock.frees(amount);
}

function othersText({ policy }: Scenario, { needKg, nowKg }: Sums, fromOthersKg: number, words: Words): string {
  if (fromOthersKg <= 0) return words.stock.fromRest;
  if (policy.fairness !== 'equal-share' || needKg <= 0) return words.stock.othersUnknown;
  const then = Math.max(0, nowKg - fromOthersKg) / needKg;
  return words.stock.othersFall(percent(nowKg / needKg, words), percent(then, words));
}
