import { useEffect, useState } from 'react';
import type { ReplayAnswer } from '../../../adapters/workers/worker-messages.ts';
import type { Plan } from '../../../engine/index.ts';
import { useSeason } from '../../state/use-stores.ts';

/** The plan shown, played in past seasons: asked for once a plan; `asking` until it is answered, null where it cannot be. */
export function useReplay(): ReplayAnswer | 'asking' | null {
  const { plan, planning, askReplay } = useSeason();
  const [answer, setAnswer] = useState<{ readonly of: Plan; readonly told: ReplayAnswer | null }>();
  const isPlanning = planning !== null;
  useEffect(() => {
    if (plan === null || isPlanning) return;
    let isWanted = true;
    void askReplay(null).then((told) => {
      if (isWanted) setAnswer({ of: plan, told });
    });
    return () => {
      isWanted = false;
    };
  }, [plan, isPlanning, askReplay]);
  return answer?.of === plan ? answer.told : 'asking';
}
