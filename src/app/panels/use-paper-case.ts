import { useMemo } from 'react';
import { type PaperCase, paperCase } from '../../presentation/papers/paper-case.ts';
import { useSeason, useWords } from '../state/use-stores.ts';

/** What papers, and the amounts on a phone, are made from; null without a plan. */
export function usePaperCase(): PaperCase | null {
  const words = useWords();
  const plan = useSeason((season) => season.plan);
  const scenario = useSeason((season) => season.scenario);
  const decisions = useSeason((season) => season.decisions);
  return useMemo(
    () => (plan && scenario ? paperCase(plan, scenario, decisions, words) : null),
    [plan, scenario, decisions, words],
  );
}
