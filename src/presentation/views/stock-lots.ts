import {
  civilFromDay,
  dayFromCivil,
  dayNumber,
  isoDate,
  type Lot,
  type Plan,
  parseIsoDate,
  type Scenario,
} from '../../engine/index.ts';
import { localNumber, noBreaks, wholePercent, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { dateText } from './frame-view.ts';
import {
  bagsText,
  goodsName,
  isBagged,
  keptReason,
  lotsFor,
  otherGoodsName,
  powerText,
  productOfLot,
} from './stock-goods.ts';
import type { Shortage } from './stock-shortages.ts';
import { joinTold, type Told } from './stock-told.ts';

/** A lot from the day it is there to its expiry date. Places on the axis are parts of its width, 0 to 1. */
export interface LotRow {
  readonly id: string;
  readonly goods: string;
  readonly depot: string;
  /** Packs, or bags and their size. */
  readonly packs: string;
  readonly offered: string;
  readonly from: number;
  readonly to: number;
  /** The axis ends before the lot expires. */
  readonly goesOn: boolean;
  /** Packs against the largest lot shown, 0 to 1. */
  readonly weight: number;
  readonly expires: string;
  /** Germination as tested, or rhizobia per gram as planning begins; nothing where neither is told. */
  readonly test: string;
  /** Where the count comes from: a test and its day, or the label; null for what has no count. */
  readonly counted: string | null;
  /** Why it is kept back; null where it may be given. */
  readonly kept: string | null;
  /** Chance of being sown before it expires; null where that is sure, or no figure of a lot kept back. */
  readonly chance: string | null;
  /** What the date of a lot that may be given asks for; null where it expires well after sowing. */
  readonly soon: Told | null;
}

export interface MonthTick {
  readonly at: number;
  readonly label: string;
  /** Where a year begins. */
  readonly year: string | null;
}

export interface LotsView {
  readonly title: string;
  readonly count: string;
  readonly hasMore: boolean;
  readonly rows: readonly LotRow[];
  readonly months: readonly MonthTick[];
  readonly today: number;
  /** First sowing days, from 2 seasons in 10 to 8 in 10; null where no season has any. */
  readonly sowing: { readonly from: number; readonly to: number } | null;
}

const ROWS_SHOWN = 7;
/** A chance of being sown in time below this is said. */
const SURELY_SOWN = 0.995;

/** Lots along time, those of what runs out first; seven of them, or all. */
export function lotsView(
  plan: Plan,
  scenario: Scenario,
  short: readonly Shortage[],
  showAll: boolean,
  words: Words,
): LotsView {
  const ordered = orderLots(plan, scenario, short);
  const shown = showAll ? ordered : ordered.slice(0, ROWS_SHOWN);
  const window = sowingWindow(plan, scenario, shown);
  const axis = timeAxis(scenario, shown, window);
  const most = Math.max(1, ...shown.map((lot) => scenario.lots[lot]?.packs ?? 0));
  const number = (value: number) => localNumber(value, words);
  return {
    title: showAll ? words.stock.allLots : words.stock.lots(listGoods(plan, scenario, shown, words)),
    count: words.stock.lotCount(number(shown.length), number(ordered.length)),
    hasMore: ordered.length > ROWS_SHOWN,
    rows: shown.flatMap((lot) => {
      const of = scenario.lots[lot];
      return of ? [lotRow(plan, scenario, of, lot, axis, most, words)] : [];
    }),
    months: monthTicks(axis, words),
    today: axis.place(scenario.asOf),
    sowing: window && { from: axis.place(window.from), to: axis.place(window.to) },
  };
}

/** Lots of what runs out, worst first, then inoculants, then seed; within the same goods the one that expires first. */
function orderLots(plan: Plan, scenario: Scenario, short: readonly Shortage[]): number[] {
  const wanted = short.flatMap(({ crop, commodity }) => (crop === null ? [] : [{ crop, commodity }]));
  const rest = (['inoculant', 'seed'] as const).flatMap((commodity) =>
    plan.ids.crops.map((crop) => ({ crop, commodity })),
  );
  const byExpiry = (a: number, b: number) => (scenario.lots[a]?.expires ?? 0) - (scenario.lots[b]?.expires ?? 0);
  const served = [...wanted, ...rest].flatMap(({ crop, commodity }) =>
    lotsFor(scenario, crop, commodity).sort(byExpiry),
  );
  return [...new Set([...served, ...scenario.lots.keys()])];
}

/** `soybean inoculant and cowpea seed`: what the lots shown are. */
function listGoods(plan: Plan, scenario: Scenario, shown: readonly number[], words: Words): string {
  const names = [...new Set(shown.map((lot) => goodsOf(plan, scenario, lot, words)))].filter((name) => name !== '');
  const lower = names.map((name) => name.charAt(0).toLowerCase() + name.slice(1));
  const last = lower.pop() ?? words.stock.noLots;
  return lower.length === 0 ? last : words.stock.and(lower.join(', '), last);
}

function goodsOf({ ids }: Plan, scenario: Scenario, lot: number, words: Words): string {
  const product = productOfLot(scenario, lot);
  const crop = ids.crops.find((one) => product?.crops.includes(one)) ?? product?.crops[0];
  if (!product || !crop) return product?.id ?? '';
  if (product.kind !== 'seed' && product.kind !== 'inoculant') return otherGoodsName(product, words);
  return goodsName(crop, product.kind, words);
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Over all zones, for the crops that the lots shown are for. */
function sowingWindow({ season, ids }: Plan, scenario: Scenario, shown: readonly number[]): Span | null {
  const crops = new Set(shown.flatMap((lot) => productOfLot(scenario, lot)?.crops ?? []));
  const { windows } = season;
  const days = (column: readonly (string | null)[]) =>
    column.flatMap((date, row) => {
      const crop = ids.crops[windows.crop[row] ?? -1];
      const day = date === null || crop === undefined || !crops.has(crop) ? null : parseIsoDate(date);
      return day === null ? [] : [day];
    });
  const [first, last] = [days(windows.firstP20), days(windows.firstP80)];
  if (first.length === 0 || last.length === 0) return null;
  return { from: Math.min(...first), to: Math.max(...last) };
}

interface TimeAxis extends Span {
  place(day: number): number;
}

/** Days before the first and after the last mark that the axis shows. */
const MARGIN_DAYS = 6;
const LONGEST_DAYS = 200;

function timeAxis(scenario: Scenario, shown: readonly number[], window: Span | null): TimeAxis {
  const from = Math.min(scenario.asOf, window?.from ?? scenario.asOf) - MARGIN_DAYS;
  const expiries = shown.map((lot) => scenario.lots[lot]?.expires ?? from);
  const last = Math.max(window?.to ?? from, scenario.planning.to, ...expiries) + MARGIN_DAYS;
  const to = Math.min(last, from + LONGEST_DAYS);
  return { from, to, place: (day) => Math.max(0, Math.min(1, (day - from) / (to - from))) };
}

/** Firsts of the months, January with its year below. */
function monthTicks({ from, to, place }: TimeAxis, words: Words): LotsView['months'] {
  const { year: first, month } = civilFromDay(dayNumber(from));
  const ticks: MonthTick[] = [];
  for (let i = 1; ; i++) {
    const [ofYear, ofMonth] = [first + Math.floor((month - 1 + i) / 12), ((month - 1 + i) % 12) + 1];
    const day = dayFromCivil(ofYear, ofMonth, 1);
    if (day > to) return ticks;
    const year = ofMonth === 1 ? String(ofYear) : null;
    ticks.push({ at: place(day), label: words.months[ofMonth - 1] ?? '', year });
  }
}

function lotRow(
  plan: Plan,
  scenario: Scenario,
  lot: Lot,
  index: number,
  axis: TimeAxis,
  most: number,
  words: Words,
): LotRow {
  const { lots } = plan.allocation;
  const number = (value: number) => localNumber(value, words);
  const product = productOfLot(scenario, index);
  const kept = keptReason(plan, scenario, index, words);
  const expires = noBreaks(dateText(isoDate(lot.expires), words));
  return {
    id: lot.id,
    goods: goodsOf(plan, scenario, index, words),
    depot: scenario.depots.find(({ id }) => id === lot.depotId)?.name ?? lot.depotId,
    packs: product && isBagged(product) ? bagsText(product, lot.packs, words) : number(lot.packs),
    offered: number(lots.packsOffered[index] ?? 0),
    from: axis.place(Math.max(scenario.asOf, lot.availableFrom ?? scenario.asOf)),
    to: axis.place(lot.expires),
    goesOn: lot.expires > axis.to,
    weight: lot.packs / most,
    expires,
    test: testText(plan, scenario, lot, index, words),
    counted: countedText(scenario, lot, index, words),
    kept,
    chance: kept === null ? chanceText(lots.chanceSownBeforeExpiry[index] ?? null, words) : null,
    soon: kept === null ? soonText(scenario, lot, lots.chanceSownBeforeExpiry[index] ?? null, words) : null,
  };
}

/** What the date of a lot that may be given asks for: that it is not there yet, that it may expire before it is sown. */
function soonText({ asOf }: Scenario, lot: Lot, chance: number | null, words: Words): Told | null {
  const date = (day: number) => noBreaks(dateText(isoDate(dayNumber(day)), words, false));
  const from = lot.availableFrom;
  const notYet = from !== null && from > asOf ? words.stock.notYetThere(date(from)) : '';
  const shown = chanceText(chance, words);
  if (shown === null) return notYet === '' ? null : { text: notYet, figures: [] };
  const early: Told = {
    text: words.stock.soonExpires(date(lot.expires), '{0}'),
    figures: [
      { path: 'allocation.lots.chanceSownBeforeExpiry', title: words.stock.chanceTitle(lot.id), shown, isAlarm: false },
    ],
  };
  return notYet === '' ? early : joinTold({ text: notYet, figures: [] }, early);
}

const chanceText = (chance: number | null, words: Words): string | null =>
  chance === null || chance >= SURELY_SOWN ? null : withUnit(localNumber(wholePercent(chance), words), '%');

function testText(plan: Plan, scenario: Scenario, lot: Lot, index: number, words: Words): string {
  const product = productOfLot(scenario, index);
  if (product?.kind === 'seed') {
    return lot.germinationPercent === null ? '' : withUnit(localNumber(lot.germinationPercent, words), '%');
  }
  const count = plan.allocation.lots.countPerG[index] ?? null;
  return count === null ? '' : powerText(count, words);
}

function countedText(scenario: Scenario, lot: Lot, index: number, words: Words): string | null {
  const product = productOfLot(scenario, index);
  if (product?.kind !== 'inoculant') return null;
  if (lot.testedCountPerG === null) return product.countPerG === null ? null : words.stock.onLabel;
  const tested = powerText(lot.testedCountPerG, words);
  const withYear = lot.testedOn !== null && civilFromDay(lot.testedOn).year !== civilFromDay(scenario.asOf).year;
  const day = lot.testedOn === null ? null : noBreaks(dateText(isoDate(lot.testedOn), words, withYear));
  return day === null ? words.stock.tested(tested) : words.stock.testedOn(tested, day);
}
