import { lazy, Suspense } from 'react';
import { plainPicture } from '../../map/plain-picture.ts';
import { useSeason } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { NotPlanned } from '../empty-states.tsx';

// Loaded when asked for: most visitors read a plan and enter nothing.
const RecordsAnswer = lazy(() => import('./records-answer.tsx'));
const RecordsPanel = lazy(() => import('./records-panel.tsx'));

function Answer() {
  const isPlanned = useSeason((season) => season.plan !== null);
  if (!isPlanned) return <NotPlanned />;
  return (
    <Suspense>
      <RecordsAnswer />
    </Suspense>
  );
}

function Panel() {
  return (
    <Suspense>
      <RecordsPanel />
    </Suspense>
  );
}

/** What happened, entered in the evening: hand-overs, returns, holds, rain; then the day is closed. */
export const RECORDS: ViewParts = {
  Answer,
  Panel,
  Chart: () => null,
  Legend: () => null,
  picture: ({ scenario }) => plainPicture(scenario),
};
