import { useMemo } from 'react';
import type { Page } from '../../../presentation/papers/page.ts';
import { daysOfPlan, type PaperCase } from '../../../presentation/papers/paper-case.ts';
import { communityPapers, isPaperName, type PaperName, papersOf } from '../../../presentation/papers/paper-sets.ts';
import { useView } from '../../state/use-stores.ts';
import { usePaperCase } from '../use-paper-case.ts';

export interface ShownPapers {
  readonly c: PaperCase;
  readonly paper: PaperName;
  readonly days: readonly string[];
  /** ISO date of the day shown; empty where no vehicle runs at all. */
  readonly day: string;
  /** Community whose sheet alone is shown; null for all of the day. */
  readonly community: string | null;
  readonly pages: readonly Page[];
}

/** What the address asks for: a paper, a day, a community. Null without a plan. */
export function usePapers(): ShownPapers | null {
  const { paper: asked, day: askedDay, community } = useView();
  const c = usePaperCase();
  return useMemo(() => {
    if (c === null) return null;
    const days = daysOfPlan(c);
    const day = days.find((one) => one === askedDay) ?? days[0] ?? '';
    const paper = isPaperName(asked) ? asked : 'route';
    const isOne = (paper === 'handover' || paper === 'list') && community !== null;
    const pages = isOne ? communityPapers(c, paper, community) : papersOf(c, paper, day);
    return { c, paper, days, day, community: isOne ? community : null, pages };
  }, [c, asked, askedDay, community]);
}
