import {
  type Commodity,
  type Crop,
  dayNumber,
  isoDate,
  type Plan,
  type Remedy,
  type Scenario,
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
}

const SHOWN = 2;

/**
 * What would serve most of the land that lacks these goods, each a way of its own. Testing a lot again until it passes is
 * none, and neither is a purchase that comes too late: the plan holds no such remedy.
 */
export function bestRemedies(
  { allocation }: Plan,
  scenario: Scenario,
  crop: Crop,
  commodity: Commodity,
  words: Words,
): RemedyView[] {
  const best = new Map<Remedy['kind'], Remedy>();
  for (const remedy of allocation.remedies) {
    if (!serves(scenario.products[remedy.product], crop, commodity)) continue;
    const known = best.get(remedy.kind);
    if (known === undefined || remedy.hectares > known.hectares) best.set(remedy.kind, remedy);
  }
  return [...best.values()]
    .sort((a, b) => b.hectares - a.hectares)
    .slice(0, SHOWN)
    .map((remedy) => inWords(remedy, scenario, words));
}

function inWords(remedy: Remedy, scenario: Scenario, words: Words): RemedyView {
  const { kind, hectares, cost } = remedy;
  const money = cost === null || cost === 0 ? null : withUnit(localNumber(cost, words), scenario.currency);
  return {
    what: remedyText(remedy, scenario, words),
    hectares: withUnit(localNumber(hectares, words, 1), 'ha'),
    cost: money,
    ifCleared: kind === 'release-lot',
  };
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
