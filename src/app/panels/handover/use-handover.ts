import { useMemo } from 'react';
import { type CommunityTask, communityTask } from '../../../presentation/papers/community-task.ts';
import type { PaperCase } from '../../../presentation/papers/paper-case.ts';
import { useView } from '../../state/use-stores.ts';
import { usePaperCase } from '../use-paper-case.ts';

export interface Handover {
  readonly c: PaperCase;
  /** Null where the address names no community, or an unknown one. */
  readonly task: CommunityTask | null;
}

/** The handover of the community that the address names, as its sheet tells it; null without a plan. */
export function useHandover(): Handover | null {
  const c = usePaperCase();
  const community = useView((view) => view.community);
  return useMemo(() => c && { c, task: communityTask(c, community) }, [c, community]);
}
