import { useMemo } from 'react';
import { type HandoverGoods, handoverGoods } from '../../../presentation/papers/handover-goods.ts';
import { type HandoverWords, handoverWords } from '../../../presentation/wording/handover-words.ts';
import { useSeason, useView, useWords } from '../../state/use-stores.ts';

/** The handover of the community that the address names; null without a plan or a known community. */
export function useHandover(): HandoverGoods | null {
  const plan = useSeason((season) => season.plan);
  const scenario = useSeason((season) => season.scenario);
  const community = useView((view) => view.community);
  return useMemo(
    () => (plan && scenario ? handoverGoods(plan, scenario, community) : null),
    [plan, scenario, community],
  );
}

/** The words of the page and of the handover. */
export function useHandoverWords(): HandoverWords {
  const words = useWords();
  return useMemo(() => handoverWords(words), [words]);
}
