import type { Bounds, Plan, Range } from '../engine/index.ts';
import { grouped } from './grouped-figure.ts';
import { whyLines } from './why-lines.ts';
import { HEADLINE_WORDING as WORDS } from './wording/english/headline.ts';

/** Loads left at the depots, of fertiliser or of all else. */
function countLeft(
  { delivery: { unserved, loads }, allocation: { consignments } }: Plan,
  isFertiliser: boolean,
): number {
  return unserved.load.filter(
    (load) => (consignments.group[loads.consignment[load] ?? -1] === 'fertiliser') === isFertiliser,
  ).length;
}

/** The answer first: the plan's headline as lines of words and figures, figures flush right; then why it is no more. */
export function headlineTable(plan: Plan): string {
  const { headline } = plan.outcomes;
  const { name, planningFrom, planningTo, currency } = plan.scenario;
  const money = (amount: number | null) => (amount === null ? WORDS.unstated : `${grouped(amount)} ${currency}`);
  const residual = (worth: Bounds | null): [string, string] =>
    worth ? [`${grouped(worth.least)} ${WORDS.until} ${grouped(worth.most)} ${currency}`, ''] : [WORDS.unstated, ''];
  const rows: readonly (readonly [words: string, figure: string, range: string])[] = [
    [WORDS.plannedHa, grouped(headline.plannedHa, 1), ''],
    [WORDS.seedHa, grouped(headline.seedHa, 1), ''],
    [WORDS.withoutSeedHa, grouped(headline.plannedHa - headline.seedHa, 1), ''],
    [WORDS.inoculatedHa, grouped(headline.inoculatedHa, 1), ''],
    [WORDS.notInoculatedHa, grouped(headline.seedHa - headline.inoculatedHa, 1), ''],
    [WORDS.reachedHa, grouped(headline.reachedHa.p50, 1), between(headline.reachedHa, 1)],
    [WORDS.nitrogenKg, grouped(headline.nitrogenKg.p50), between(headline.nitrogenKg)],
    [WORDS.programmeNitrogenKg, grouped(headline.programmeNitrogenKg.p50), between(headline.programmeNitrogenKg)],
    [WORDS.grainT, grouped(headline.grainT.p50, 1), between(headline.grainT, 1)],
    [WORDS.communities, `${headline.communitiesReached} ${WORDS.outOf} ${headline.communities}`, ''],
    [WORDS.unserved, String(countLeft(plan, false)), ''],
    ...(headline.fertilisedHa > 0 || countLeft(plan, true) > 0
      ? [[WORDS.fertiliserUnserved, String(countLeft(plan, true)), ''] as const]
      : []),
    [WORDS.goodsCost, money(headline.goodsCost), ''],
    [WORDS.deliveryCost, money(headline.deliveryCost), ''],
    [WORDS.programmeGrainT, grouped(headline.programmeGrainT.p50, 1), between(headline.programmeGrainT, 1)],
    ...(headline.fertilisedHa > 0
      ? [
          [
            WORDS.phosphorusGrainT(grouped(headline.fertilisedHa, 1)),
            grouped(headline.phosphorusGrainT.p50, 1),
            between(headline.phosphorusGrainT, 1),
          ] as const,
        ]
      : []),
    [WORDS.residualWorth, ...residual(headline.residualWorth)],
  ];
  const wordsWide = Math.max(...rows.map(([words]) => words.length));
  const figureWide = Math.max(...rows.map(([, figure]) => figure.length));
  const lines = rows.map(([words, figure, range]) =>
    `${words.padEnd(wordsWide)}  ${figure.padStart(figureWide)}  ${range}`.trimEnd(),
  );
  const why = whyLines(plan);
  const orders = orderSummary(plan);
  const explained = [...(why.length > 0 ? ['', ...why] : []), ...(orders === null ? [] : ['', orders])];
  return [`${name}, ${planningFrom} ${WORDS.until} ${planningTo}`, WORDS.explainRange, '', ...lines, ...explained].join(
    '\n',
  );
}

/** What to order, in one line; null where nothing is to be ordered. */
function orderSummary({ allocation: { orders }, scenario }: Plan): string | null {
  const bought = orders.product.flatMap((_, row) => ((orders.packs[row] ?? 0) > 0 ? [row] : []));
  const late = orders.product.flatMap((_, row) => (orders.verdict[row] === 'too-late' ? [row] : []));
  const cost = bought.reduce((sum, row) => sum + (orders.cost[row] ?? 0), 0);
  const first = bought.map((row) => orders.orderBy[row] ?? '').sort()[0];
  if (first === undefined) return late.length === 0 ? null : WORDS.ordersTooLate;
  const when = first < scenario.asOf ? WORDS.orderNow : WORDS.orderBy(first);
  return WORDS.orders(String(bought.length), `${grouped(cost)} ${scenario.currency}`, when);
}

function between({ p10, p90 }: Range, decimals = 0): string {
  return `(${grouped(p10, decimals)} ${WORDS.until} ${grouped(p90, decimals)})`;
}
