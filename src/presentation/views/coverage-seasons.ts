import type { Plan, Scenario, SeasonCost } from '../../engine/index.ts';

/** What this plan would have given in one past season, ha. */
export interface PastSeason {
  readonly year: number;
  /** `2006/07` where the season crosses New Year. */
  readonly label: string;
  readonly ha: number;
  /** Supplied and not reached. */
  readonly lostHa: number;
  readonly cost: SeasonCost;
  /** Hectares lost to what cost most. */
  readonly costHa: number;
}

export interface CoverageSeasons {
  /** In the order of the years. */
  readonly seasons: readonly PastSeason[];
  readonly plannedHa: number;
  readonly suppliedHa: number;
  readonly middleHa: number;
  /** The season with fewest hectares; null where all are alike. */
  readonly worst: PastSeason | null;
  /** What costs hectares in every one of the seasons, so that no luck with the rain helps; null where that is under half a hectare. */
  readonly always: { readonly cost: Exclude<SeasonCost, 'little'>; readonly ha: number } | null;
  /** Causes that occur, commonest first. */
  readonly costs: readonly SeasonCost[];
  /** Past seasons of the record that say nothing about this one, because their rains had come by now. */
  readonly leftOut: number;
}

export function coverageSeasons({ outcomes, season }: Plan, scenario: Scenario): CoverageSeasons {
  const { seasons: told, headline } = outcomes;
  const seasons = told.year.map((year, row): PastSeason => {
    const lost = lossesOf(told, row);
    return {
      year,
      label: seasonLabel(year, scenario),
      ha: told.reachedHa[row] ?? 0,
      lostHa: sumOf(lost),
      cost: told.cost[row] ?? 'little',
      costHa: costHectares(told.cost[row] ?? 'little', lost),
    };
  });
  const ascending = [...seasons].sort((a, b) => a.ha - b.ha || a.year - b.year);
  const [worst, best] = [ascending[0], ascending.at(-1)];
  const past = Math.max(0, ...season.onset.pastSeasons);
  return {
    seasons,
    plannedHa: headline.plannedHa,
    suppliedHa: headline.inoculatedHa,
    middleHa: middleOf(ascending.map(({ ha }) => ha)),
    worst: worst && best && best.ha - worst.ha > 0.05 ? worst : null,
    always: lostInAll(told),
    costs: costsByCount(seasons),
    leftOut: Math.max(0, past - seasons.length),
  };
}

type Losses = Readonly<Record<Exclude<SeasonCost, 'little'>, number>>;

const sumOf = (lost: Losses) => CAUSES.reduce((sum, cause) => sum + lost[cause], 0);

function lossesOf({ noOnsetHa, lateHa, hotHa, waitingHa, weakHa }: Plan['outcomes']['seasons'], row: number): Losses {
  return {
    'no-onset': noOnsetHa[row] ?? 0,
    late: lateHa[row] ?? 0,
    hot: hotHa[row] ?? 0,
    waiting: waitingHa[row] ?? 0,
    weak: weakHa[row] ?? 0,
  };
}

const CAUSES = ['no-onset', 'late', 'hot', 'waiting', 'weak'] as const;

function lostInAll(told: Plan['outcomes']['seasons']): CoverageSeasons['always'] {
  const losses = told.year.map((_, row) => lossesOf(told, row));
  const least = CAUSES.map((cost) => ({ cost, ha: Math.min(...losses.map((lost) => lost[cost])) }));
  const [worst] = least.sort((a, b) => b.ha - a.ha);
  return worst && Number.isFinite(worst.ha) && worst.ha >= 0.5 ? worst : null;
}

function costHectares(cost: SeasonCost, lost: Losses): number {
  return cost === 'little' ? sumOf(lost) : lost[cost];
}

/** `2006/07` where the season crosses New Year. */
export function seasonLabel(year: number, { seasons }: Scenario): string {
  const crosses = seasons.some(({ from, to }) => to.month < from.month);
  return crosses ? `${year}/${String((year + 1) % 100).padStart(2, '0')}` : String(year);
}

function middleOf(ascending: readonly number[]): number {
  const half = (ascending.length - 1) / 2;
  return ((ascending[Math.floor(half)] ?? 0) + (ascending[Math.ceil(half)] ?? 0)) / 2;
}

function costsByCount(seasons: readonly PastSeason[]): SeasonCost[] {
  const counts = new Map<SeasonCost, number>();
  for (const { cost } of seasons) counts.set(cost, (counts.get(cost) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1]).map(([cost]) => cost);
}

/** Steps of a scale from nought that leave at most six of them, and the end of the scale. */
export function scaleSteps(most: number): { readonly step: number; readonly to: number } {
  const rough = Math.max(most, 1e-9) / 5;
  const unit = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((factor) => factor * unit >= rough) ?? 10) * unit;
  return { step, to: Math.ceil(most / step) * step };
}
