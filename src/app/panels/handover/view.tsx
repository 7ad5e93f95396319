import { lazy, Suspense } from 'react';
import { plainPicture } from '../../map/plain-picture.ts';
import { useSeason } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { NotPlanned } from '../empty-states.tsx';

// Loaded when asked for: most visitors never open a handover.
const HandoverAnswer = lazy(() => import('./handover-answer.tsx'));
const HandoverPanel = lazy(() => import('./handover-panel.tsx'));
const ReceivedTable = lazy(() => import('./received-table.tsx'));

function Answer() {
  const isPlanned = useSeason((season) => season.plan !== null);
  if (!isPlanned) return <NotPlanned />;
  return (
    <Suspense>
      <HandoverAnswer />
    </Suspense>
  );
}

function Panel() {
  return (
    <Suspense>
      <HandoverPanel />
    </Suspense>
  );
}

function Chart() {
  return (
    <Suspense>
      <ReceivedTable />
    </Suspense>
  );
}

/** What one community is handed, and the amounts it coats: for a phone held beside the basin. */
export const HANDOVER: ViewParts = {
  Answer,
  Panel,
  Chart,
  Legend: () => null,
  picture: ({ scenario }) => plainPicture(scenario),
};
