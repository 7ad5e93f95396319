import {
  type Commodity,
  type Decision,
  dayNumber,
  isoDate,
  type Plan,
  type Product,
  type Scenario,
  type SmallestChange,
} from '../../engine/index.ts';
import { localNumber, noBreaks, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { dateText } from './frame-view.ts';
import type { Cell } from './stock-cells.ts';
import { amountOf } from './stock-goods.ts';

/** The community of a cell that lacks most of a commodity; null where none does. */
export function worstLack(
  { ids, allocation: { shares, shortfalls } }: Plan,
  scenario: Scenario,
  { crop, communityIds }: Cell,
  commodity: Commodity,
): { readonly shareRow: number; readonly community: string } | null {
  const short = new Map<number, number>();
  shortfalls.shareRow.forEach((row, i) => {
    const id = ids.communities[shares.community[row] ?? -1] ?? '';
    if (shortfalls.commodity[i] !== commodity || ids.crops[shares.crop[row] ?? -1] !== crop) return;
    if (communityIds.includes(id)) short.set(row, (short.get(row) ?? 0) + (shortfalls.shortKg[i] ?? 0));
  });
  const [worst] = [...short].sort(([a, kgA], [b, kgB]) => kgB - kgA || a - b);
  if (worst === undefined) return null;
  const place = scenario.communities[shares.community[worst[0]] ?? -1];
  return { shareRow: worst[0], community: place?.name || (place?.id ?? '') };
}

/** The smallest change that lifts a shortfall, as one sentence. */
export function smallestChangeText(
  change: SmallestChange,
  scenario: Scenario,
  decisions: readonly Decision[],
  words: Words,
): string {
  const said = words.stock.smallest;
  const date = (day: number) => noBreaks(dateText(isoDate(dayNumber(day)), words));
  switch (change.kind) {
    case 'more-packs': {
      const product = scenario.products[change.product] as Product;
      const depot = scenario.depots[change.depot];
      const bought = said.buy(
        `${amountOf(product, change.packs, words)} (${product.id})`,
        depot?.name || (depot?.id ?? ''),
        date(change.arrives),
      );
      if (change.cost === null) return bought;
      return `${bought}. ${said.buyFor(withUnit(localNumber(change.cost, words), scenario.currency))}`;
    }
    case 'release-decision': {
      const kind = decisions[change.index]?.kind;
      return said.release(said.decisions[kind as keyof typeof said.decisions] ?? '');
    }
    case 'seed-first':
      return said.seedFirst;
    case 'too-late':
      return said.tooLate(date(change.arrives));
    case 'no-product':
      return said.noProduct;
    case 'not-by-stock':
      return said.notByStock(words.reasons.SHORTFALL_WORDING[change.reason]);
    case 'none-needed':
      return said.nothing;
  }
}
