import type { Plan } from '../../engine/index.ts';
import { localNumber, NO_BREAK, wholePercent, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { type Land, landShare } from './stock-land.ts';
import type { Shortage } from './stock-shortages.ts';
import { joinTold, type Told, type ToldFigure } from './stock-told.ts';

/** The view's answer: is there seed for the land, and what is missing worst. */
export function stockHeadline(plan: Plan, land: Land, shortages: readonly Shortage[], words: Words): Told {
  const { stock } = words;
  if (plan.needs.community.length === 0) return { text: stock.nothingPlanned, figures: [] };
  const percent = wholePercent(landShare(land, 'seed'));
  const seed: Told =
    percent === 100
      ? { text: stock.seedForAll, figures: [] }
      : { text: stock.seedFor('{0}'), figures: [seedFigure(percent, words)] };
  const [worst] = shortages;
  if (worst === undefined) return joinTold(seed, { text: stock.nothingShort, figures: [] });
  // What is short in stock is this view's matter; what holds back more land than that is said after it.
  const ofStock = shortages.find(({ crop }) => crop !== null);
  const told = [...new Set([ofStock ?? worst, worst])].map((one) => tellShortage(one, words));
  return told.reduce((first, second) => joinTold(first, second), seed);
}

const seedFigure = (percent: number, words: Words): ToldFigure => ({
  path: 'outcomes.crops.seedHa',
  title: words.stock.seedShareTitle,
  shown: withUnit(localNumber(percent, words), '%'),
  isAlarm: false,
});

function tellShortage({ name, crop, shortBy, shortKg, hectares, where }: Shortage, words: Words): Told {
  if (crop === null || shortBy === null) {
    const shown = withUnit(localNumber(hectares, words, 1), 'ha');
    const title = words.stock.hectaresTitle(name);
    const text = crop === null ? words.stock.others(name, '{0}') : words.stock.isNotThere(name, '{0}');
    return { text, figures: [{ path: 'allocation.shortfalls.hectares', title, shown, isAlarm: true }] };
  }
  const amount: ToldFigure = {
    path: 'allocation.shortfalls.shortKg',
    title: words.stock.shortTitle(name),
    shown: shortKg === null ? shortBy : `${shortBy}${NO_BREAK}(${shortKg})`,
    isAlarm: true,
  };
  const short: Told = { text: words.stock.isShort(name, '{0}'), figures: [amount] };
  return joinTold(short, { text: `${where.text}.`, figures: where.figures });
}
