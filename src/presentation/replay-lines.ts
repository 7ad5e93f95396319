import {
  comparePlans,
  halfWidthShare,
  MAY_BE_NOUGHT,
  type Plan,
  type PlanDifference,
  type RankedUnknowns,
  type ReplayedPlan,
  type Scenario,
  type SpreadTotal,
  type SureSpreads,
  worstSeasons,
} from '../engine/index.ts';
import { explainSeason } from './explain-season.ts';
import { grouped } from './grouped-figure.ts';
import { seasonLabel } from './views/coverage-seasons.ts';
import { REPLAY_WORDING as WORDS } from './wording/english/replay.ts';

export interface ReplayShown {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly zoneNames: readonly (string | null)[];
  readonly printed: ReplayedPlan;
  readonly released: ReplayedPlan;
  readonly draws: number;
  readonly spreads: SureSpreads | null;
  readonly unknowns: RankedUnknowns | null;
  readonly other: { readonly name: string; readonly printed: ReplayedPlan } | null;
}

const WORST = 3;

/** A plan in past seasons as lines of text: the seasons, the worst explained, ranges, unknowns, another plan beside it. */
export function replayLines(shown: ReplayShown): string {
  const { plan, scenario, printed, released, draws } = shown;
  const title = WORDS.title(plan.scenario.name, printed.seasons.length, shown.spreads ? draws : 0);
  if (printed.seasons.length === 0) return [title, '', WORDS.noSeasons].join('\n');
  return [
    title,
    WORDS.honest,
    WORDS.sameSeasons,
    '',
    ...seasonTable(scenario, printed, released),
    '',
    `${WORDS.worstTitle}:`,
    ...worstSeasons(printed, WORST).map((season) => `- ${explainSeason(season, printed, shown, WORDS, grouped)}`),
    ...rangeLines(shown),
    ...unknownLines(shown.unknowns),
    ...compareLines(shown),
  ].join('\n');
}

function seasonTable(scenario: Scenario, printed: ReplayedPlan, released: ReplayedPlan): string[] {
  const { head } = WORDS;
  const rows = printed.seasons.map((season, i) => [
    seasonLabel(season.year, scenario),
    grouped(season.reachedHa),
    percent(season.valueKept),
    String(season.tripsMoved + season.tripsNever),
    grouped(released.seasons[i]?.reachedHa ?? 0),
    percent(released.seasons[i]?.valueKept ?? 0),
    WORDS.cost[season.cost],
  ]);
  return columns([[head.season, head.printed, head.value, head.waited, head.released, head.value, head.cost], ...rows]);
}

const percent = (share: number) => `${grouped(100 * share)} %`;

function rangeLines({ plan, spreads }: ReplayShown): string[] {
  if (!spreads) return [];
  const isTold = (name: SpreadTotal) => plan.outcomes.headline.fertilisedHa > 0 || !name.startsWith('phosphorus');
  const names = (Object.keys(WORDS.ranges) as SpreadTotal[]).filter(isTold);
  const rows = names.map((name) => {
    const { p10, p50, p90, p10Interval, p90Interval } = spreads[name];
    const decimals = name.endsWith('T') || name.endsWith('Ha') ? 1 : 0;
    const figure = (value: number) => grouped(value, decimals);
    const interval = ({ low, high }: { low: number; high: number }) => `(${figure(low)} to ${figure(high)})`;
    return [WORDS.ranges[name], figure(p10), interval(p10Interval), figure(p50), figure(p90), interval(p90Interval)];
  });
  const leastSure = (those: readonly SpreadTotal[]) =>
    grouped(100 * Math.max(...those.map((name) => halfWidthShare(name, spreads[name]))), 1);
  const mayBeNought = MAY_BE_NOUGHT.filter(isTold);
  const sure = WORDS.sure(
    leastSure(names.filter((name) => !MAY_BE_NOUGHT.includes(name))),
    leastSure(mayBeNought),
    mayBeNought.map((name) => WORDS.ranges[name]),
  );
  return ['', `${WORDS.rangesTitle}:`, ...columns([[...WORDS.rangeHead], ...rows]), sure];
}

function unknownLines(unknowns: ReplayShown['unknowns']): string[] {
  if (!unknowns) return [];
  const tables = (Object.keys(WORDS.unknownsOf) as (keyof typeof WORDS.unknownsOf)[]).flatMap((outcome) => {
    const rows = (unknowns[outcome] ?? []).map(({ unknown, first, total }) => [
      WORDS.unknowns[unknown],
      grouped(first, 2),
      grouped(total, 2),
    ]);
    return [`${WORDS.unknownsOf[outcome]}`, ...columns([[...WORDS.unknownHead], ...rows])];
  });
  return ['', `${WORDS.unknownsTitle}:`, ...tables];
}

function compareLines({ scenario, printed, other }: ReplayShown): string[] {
  if (!other) return [];
  const difference = comparePlans(printed, other.printed);
  const { season, ha, value } = WORDS.compareHead;
  const rows = difference.seasons.map((one) => [
    seasonLabel(one.year, scenario),
    signed(one.reachedHa, 1),
    `${signed(100 * one.valueKept, 1)} %`,
  ]);
  return ['', `${WORDS.compareTitle(other.name)}:`, ...columns([[season, ha, value], ...rows]), summary(difference)];
}

function summary({ seasons, better, worse, meanHa }: PlanDifference): string {
  return WORDS.compare(better, worse, seasons.length - better - worse, signed(meanHa, 1));
}

function signed(value: number, decimals: number): string {
  const text = grouped(value, decimals);
  return value > 0 && Number(value.toFixed(decimals)) !== 0 ? `+${text}` : text;
}

/** Rows in columns: the first flush left, and the last where it holds words; figures flush right. */
function columns(rows: readonly (readonly string[])[]): string[] {
  const wide = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => row[c]?.length ?? 0)));
  const isWords = (c: number) => c === 0 || rows.slice(1).every((row) => /^[a-z]/.test(row[c] ?? ''));
  return rows.map((row) =>
    row
      .map((cell, c) => (isWords(c) ? cell.padEnd(wide[c] ?? 0) : cell.padStart(wide[c] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}
