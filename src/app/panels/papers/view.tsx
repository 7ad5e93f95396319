import { lazy, Suspense } from 'react';
import { plainPicture } from '../../map/plain-picture.ts';
import { useSeason } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { NotPlanned } from '../empty-states.tsx';

// Loaded when asked for: most visitors never print a sheet.
const PapersAnswer = lazy(() => import('./papers-answer.tsx'));
const PapersPanel = lazy(() => import('./papers-panel.tsx'));

function Answer() {
  const isPlanned = useSeason((season) => season.plan !== null);
  if (!isPlanned) return <NotPlanned />;
  return (
    <Suspense>
      <PapersAnswer />
    </Suspense>
  );
}

function Panel() {
  return (
    <Suspense>
      <PapersPanel />
    </Suspense>
  );
}

/** Sheets for those who never see a screen, as they will be printed. */
export const PAPERS: ViewParts = {
  Answer,
  Panel,
  Chart: () => null,
  Legend: () => null,
  picture: ({ scenario }) => plainPicture(scenario),
};
