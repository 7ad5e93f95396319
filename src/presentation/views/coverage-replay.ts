import {
  comparePlans,
  type RankedUnknowns,
  type ReplayedPlan,
  type Scenario,
  type Unknown,
  worstSeasons,
} from '../../engine/index.ts';
import { explainSeason } from '../explain-season.ts';
import { type PaperWords, paperWords } from '../wording/paper-words.ts';
import type { Words } from '../wording/words.ts';
import { amountsIn } from './coverage-amounts.ts';
import { seasonLabel } from './coverage-seasons.ts';

/** A plan as played in past seasons, and the zones' names by which its losses are told. */
export interface Played {
  readonly printed: ReplayedPlan;
  readonly zoneNames: readonly (string | null)[];
}

const WORST = 3;

/** The worst three seasons, a paragraph each. */
export function worstSeasonTexts({ printed, zoneNames }: Played, scenario: Scenario, words: Words): string[] {
  const { amount } = amountsIn(words);
  return worstSeasons(printed, WORST).map((season) =>
    explainSeason(season, printed, { scenario, zoneNames }, paperWords(words).replay, amount),
  );
}

/** One season of two plans, ha. */
export interface ComparedSeason {
  readonly year: number;
  readonly label: string;
  readonly thisHa: number;
  readonly otherHa: number;
  readonly moreHa: number;
}

export interface ComparedPlans {
  readonly seasons: readonly ComparedSeason[];
  /** Largest difference either way: half the length of the bars' scale. */
  readonly scaleHa: number;
  readonly more: number;
  readonly fewer: number;
  readonly same: number;
  readonly meanHa: number;
}

/** What the first plan has beyond the other, season by season. Both were played in the same seasons. */
export function comparedPlans(printed: ReplayedPlan, other: ReplayedPlan, scenario: Scenario): ComparedPlans {
  const { seasons, better, worse, meanHa } = comparePlans(other, printed);
  return {
    seasons: seasons.map(({ year, reachedHa }, i) => ({
      year,
      label: seasonLabel(year, scenario),
      thisHa: printed.seasons[i]?.reachedHa ?? 0,
      otherHa: other.seasons[i]?.reachedHa ?? 0,
      moreHa: reachedHa,
    })),
    scaleHa: Math.max(1e-9, ...seasons.map(({ reachedHa }) => Math.abs(reachedHa))),
    more: better,
    fewer: worse,
    same: seasons.length - better - worse,
    meanHa,
  };
}

export type RankedOutcome = keyof PaperWords['replay']['unknownsOf'];
export const RANKED_OUTCOMES: readonly RankedOutcome[] = ['programmeNitrogenKg', 'reachedHa'];

/** An unknown's share of a spread, percent; estimates below nought, which chance alone makes, are told as nought. */
export interface RankedRow {
  readonly unknown: Unknown;
  readonly alone: number;
  readonly inAll: number;
}

export interface Ranking {
  readonly rows: readonly RankedRow[];
  /** Under a hundredth of the spread each. */
  readonly little: readonly Unknown[];
  /** The first, or the first two where the first is less than half, percent of the spread together; empty where nothing varies. */
  readonly most: { readonly unknowns: readonly Unknown[]; readonly percent: number };
}

export function rankingView(ranked: RankedUnknowns, outcome: RankedOutcome): Ranking {
  const all = (ranked[outcome] ?? []).map(({ unknown, first, total }) => ({
    unknown,
    alone: Math.max(0, 100 * first),
    inAll: Math.max(0, 100 * total),
  }));
  const rows = all.filter(({ inAll }) => inAll >= 1);
  const leading = rows.slice(0, (rows[0]?.inAll ?? 0) >= 50 ? 1 : 2);
  return {
    rows,
    little: all.filter(({ inAll }) => inAll < 1).map(({ unknown }) => unknown),
    most: {
      unknowns: leading.map(({ unknown }) => unknown),
      percent: Math.min(
        100,
        leading.reduce((sum, { alone }) => sum + alone, 0),
      ),
    },
  };
}
