import type { Plan, Range } from '../engine/index.ts';
import { grouped } from './grouped-figure.ts';
import { whyLines } from './why-lines.ts';
import { HEADLINE_WORDING as WORDS } from './wording/english/headline.ts';

/** The answer first: the plan's headline as lines of words and figures, figures flush right; then why it is no more. */
export function headlineTable(plan: Plan): string {
  const { headline } = plan.outcomes;
  const { name, planningFrom, planningTo, currency } = plan.scenario;
  const money = (amount: number | null) => (amount === null ? WORDS.unstated : `${grouped(amount)} ${currency}`);
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
    [WORDS.unserved, String(plan.delivery.unserved.load.length), ''],
    [WORDS.goodsCost, money(headline.goodsCost), ''],
    [WORDS.deliveryCost, money(headline.deliveryCost), ''],
    [WORDS.nitrogenWorth, money(headline.nitrogenWorth), ''],
  ];
  const wordsWide = Math.max(...rows.map(([words]) => words.length));
  const figureWide = Math.max(...rows.map(([, figure]) => figure.length));
  const lines = rows.map(([words, figure, range]) =>
    `${words.padEnd(wordsWide)}  ${figure.padStart(figureWide)}  ${range}`.trimEnd(),
  );
  const why = whyLines(plan);
  const explained = why.length > 0 ? ['', ...why] : [];
  return [`${name}, ${planningFrom} ${WORDS.until} ${planningTo}`, WORDS.explainRange, '', ...lines, ...explained].join(
    '\n',
  );
}

function between({ p10, p90 }: Range, decimals = 0): string {
  return `(${grouped(p10, decimals)} ${WORDS.until} ${grouped(p90, decimals)})`;
}
