import type { DeliveryDifference, Plan, Scenario } from '../../engine/index.ts';
import { localNumber, withUnit } from '../local-number.ts';
import { paperWords } from '../wording/paper-words.ts';
import type { Words } from '../wording/words.ts';
import { weekdayOf } from './days-axis.ts';
import { dateText } from './frame-view.ts';

/** What a plan made again changes, in the words of those it concerns. */
export interface ChangesView {
  /** How many people hear another day, and what the change costs. */
  readonly headline: string;
  /** One line a vehicle and day that gains or loses stops. */
  readonly vehicles: readonly string[];
  /** One line a community whose goods come on another day or vehicle, or not; how many come at another hour alone. */
  readonly communities: readonly string[];
}

type Change = DeliveryDifference['changes'][number];

export function changesView(difference: DeliveryDifference, plan: Plan, scenario: Scenario, words: Words): ChangesView {
  const { changes: said } = paperWords(words).runs;
  const { promisesBroken, promisesPrice } = difference;
  const money = (value: number) => withUnit(localNumber(Math.abs(value), words), plan.scenario.currency);
  const count = localNumber(promisesBroken, words);
  const hours = difference.changes.filter(({ code }) => code === 'other-hour').length;
  return {
    headline: [
      promisesBroken === 0 ? said.allKept : said.broken(count, promisesBroken === 1),
      promisesPrice > 0 ? said.brokenPrice(money(promisesPrice)) : '',
      costText(difference, money, words),
    ]
      .filter((part) => part !== '')
      .join(' '),
    vehicles: vehicleLines(difference.changes, words),
    communities: [
      ...difference.changes
        .filter(({ code }) => code !== 'other-hour')
        .map((change) => communityLine(change, scenario, words)),
      ...(hours > 0 ? [said.otherHours(localNumber(hours, words), hours === 1)] : []),
    ],
  };
}

/** What the delivery costs more or less; nothing where days have gone by in between, or nothing of it is priced. */
function costText(
  { costBefore, costAfter }: DeliveryDifference,
  money: (value: number) => string,
  words: Words,
): string {
  const { changes: said } = paperWords(words).runs;
  if (costBefore === null || costAfter === null) return '';
  const more = costAfter - costBefore;
  if (Math.abs(more) < 0.5) return said.sameCost;
  return more > 0 ? said.dearer(money(more)) : said.cheaper(money(more));
}

const packsOf = (list: Change['before'], words: Words): string =>
  localNumber(
    list.reduce((sum, { packs }) => sum + packs, 0),
    words,
  );

const day = (iso: string, words: Words): string =>
  words.days.weekdayDate(words.weekdays[weekdayOf(iso)] ?? '', dateText(iso, words, false));

function communityLine({ code, communityId, group, before, after, reasons }: Change, scenario: Scenario, words: Words) {
  const { changes: said } = paperWords(words).runs;
  const who = scenario.communities.find(({ id }) => id === communityId)?.name || communityId;
  const what = said.goods[group];
  const [was, is] = [before[0], after[0]];
  if (code === 'no-longer-given') return said.noLongerGiven(who, what);
  if (code === 'no-longer-served' || is === undefined) {
    const [reason] = reasons;
    return said.noLonger(who, what, reason === undefined ? '' : words.reasons.UNSERVED_WORDING[reason]);
  }
  if (code === 'now-served' || was === undefined) return said.nowServed(who, what, day(is.date, words), is.vehicleId);
  if (code === 'other-day') return said.otherDay(who, what, days(after, words), days(before, words), is.vehicleId);
  if (code === 'other-amount') {
    return said.otherAmount(who, what, packsOf(after, words), packsOf(before, words), day(is.date, words));
  }
  return said.otherVehicle(who, what, is.vehicleId, was.vehicleId, day(is.date, words));
}

/** Each day once, in order. */
const days = (list: Change['before'], words: Words): string =>
  [...new Set(list.map(({ date }) => date))].map((date) => day(date, words)).join(', ');

/** Stops that a vehicle gains and loses on a day: what its driver is told. */
function vehicleLines(changes: readonly Change[], words: Words): string[] {
  const { changes: said } = paperWords(words).runs;
  const gained = new Map<string, number>();
  for (const { before, after } of changes) {
    const keys = (list: Change['before']) => new Set(list.map(({ date, vehicleId }) => `${date} ${vehicleId}`));
    const [was, is] = [keys(before), keys(after)];
    for (const key of is) if (!was.has(key)) gained.set(key, (gained.get(key) ?? 0) + 1);
    for (const key of was) if (!is.has(key)) gained.set(key, (gained.get(key) ?? 0) - 1);
  }
  return [...gained]
    .filter(([, count]) => count !== 0)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, count]) => {
      const [date = '', ...vehicle] = key.split(' ');
      const shown = localNumber(Math.abs(count), words);
      return (count > 0 ? said.stopsMore : said.stopsFewer)(
        vehicle.join(' '),
        day(date, words),
        shown,
        Math.abs(count) === 1,
      );
    });
}
