import {
  type Commodity,
  type Crop,
  dayNumber,
  isoDate,
  type Plan,
  type Remedy,
  type Scenario,
  type StockChange,
} from '../../engine/index.ts';
import { localNumber, noBreaks, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { dateText } from './frame-view.ts';
import { amountOf, serves } from './stock-goods.ts';

/** Something that would help, in words. */
export interface RemedyView {
  readonly what: string;
  /** `57.7 ha`. */
  readonly hectares: string;
  /** Null where it costs nothing or no price is known. */
  readonly cost: string | null;
  /** The hectares come only if a test or a named person clears the lot. */
  readonly ifCleared: boolean;
  /** The same as a question to the stock: what sharing out again with it gives and takes. */
  readonly changes: readonly StockChange[];
}

const SHOWN = 2;

/**
 * What would serve most of the land that lacks these goods, each a way of its own. Testing a lot again until it passes is
 * none, and neither is a purchase that comes too late: the plan holds no such remedy.
 */
export function bestRemedies(
  plan: Plan,
  scenario: Scenario,
  crop: Crop,
  commodity: Commodity,
  words: Words,
): RemedyView[] {
  const { allocation } = plan;
  const best = new Map<Remedy['kind'], Remedy>();
  for (const remedy of allocation.remedies) {
    if (!serves(scenario.products[remedy.product], crop, commodity)) continue;
    const known = best.get(remedy.kind);
    if (known === undefined || remedy.hectares > known.hectares) best.set(remedy.kind, remedy);
  }
  return [...best.values()]
    .sort((a, b) => b.hectares - a.hectares)
    .slice(0, SHOWN)
    .map((remedy) => inWords(plan, remedy, scenario, words));
}

function inWords(plan: Plan, remedy: Remedy, scenario: Scenario, words: Words): RemedyView {
  const { kind, hectares, cost } = remedy;
  const money = cost === null || cost === 0 ? null : withUnit(localNumber(cost, words), scenario.currency);
  return {
    what: remedyText(remedy, scenario, words),
    hectares: withUnit(localNumber(hectares, words, 1), 'ha'),
    cost: money,
    ifCleared: kind === 'release-lot',
    changes: changesOf(plan, remedy, scenario),
  };
}

function changesOf({ allocation }: Plan, remedy: Remedy, scenario: Scenario): readonly StockChange[] {
  const product = scenario.products[remedy.product];
  const lotId = scenario.lots[remedy.lot]?.id ?? '';
  const arrives = dayNumber(scenario.asOf + (product?.leadDays ?? 0));
  switch (remedy.kind) {
    case 'release-lot':
      return [{ kind: 'lot-cleared', lotId }];
    case 'replace-lot':
      return [{ kind: 'lot-replaced', lotId, arrives }];
    case 'lower-reserve':
      return [{ kind: 'reserve', percent: 0 }];
    case 'more-packs':
      return depotsWanting(allocation.orders, remedy).flatMap(({ depot, packs }) => {
        const depotId = scenario.depots[depot]?.id;
        if (!product || depotId === undefined || packs < 1) return [];
        return [{ kind: 'more-packs' as const, productId: product.id, depotId, packs, arrives }];
      });
  }
}

/** Packs of a purchase divided among the depots as the order list would have them. */
function depotsWanting({ product, depot, packsWanted }: Plan['allocation']['orders'], { product: of, packs }: Remedy) {
  const lines = product.flatMap((one, i) =>
    one === of ? [{ depot: depot[i] as number, wanted: packsWanted[i] as number }] : [],
  );
  const all = lines.reduce((sum, { wanted }) => sum + wanted, 0);
  if (all === 0) return [{ depot: 0, packs }];
  return lines.map((line) => ({ depot: line.depot, packs: Math.round((packs * line.wanted) / all) }));
}

function remedyText({ kind, product: index, lot: lotIndex, packs }: Remedy, scenario: Scenario, words: Words): string {
  const said = words.stock.remedies;
  const product = scenario.products[index];
  const lot = scenario.lots[lotIndex];
  const amount = product ? amountOf(product, packs, words) : localNumber(packs, words);
  const arrives = isoDate(dayNumber(scenario.asOf + (product?.leadDays ?? 0)));
  const date = noBreaks(dateText(arrives, words, false));
  const name = (lot?.id ?? '').replaceAll('-', '\u2011');
  if (kind === 'more-packs') return said['more-packs'](amount, date);
  if (kind === 'replace-lot') return said['replace-lot'](name, amount, date);
  if (kind === 'lower-reserve') return said['lower-reserve'](amount);
  return said[lot?.status === 'awaiting' ? 'await-lot' : 'release-lot'](name);
}
