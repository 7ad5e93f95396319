import { useState } from 'react';
import type { Decision, Problem } from '../../../engine/index.ts';
import { type HandoverEntry, judgeEntry } from '../../../presentation/records/handover-entry.ts';
import { useSeason } from '../../state/use-stores.ts';
import type { OpenDay } from './use-day.ts';

/** Enters hand-overs that hold; what does not hold of them is told, and nothing of that visit is taken before it is mended. */
export function useEnter({ plan, scenario, today }: OpenDay) {
  const entered = useSeason((season) => season.entries);
  const enter = useSeason((season) => season.enter);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const record = (entries: readonly HandoverEntry[], events: readonly Decision[] = []): boolean => {
    const found = entries.flatMap((entry) => judgeEntry(entry, { plan, scenario, today, entered }));
    setProblems(found);
    if (found.some(({ weight }) => weight !== 'noted')) return false;
    enter({ entries, events });
    return true;
  };
  return { problems, record };
}
