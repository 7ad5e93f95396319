import { lazy, Suspense } from 'react';
import type { ViewParts } from '../../views.ts';
import { PAPERS } from '../papers/view.tsx';

// Loaded when asked for: most visitors read a plan and enter nothing.
const RecordsAnswer = lazy(() => import('./records-answer.tsx'));
const RecordsPanel = lazy(() => import('./records-panel.tsx'));

function Answer() {
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
export const RECORDS: ViewParts = { ...PAPERS, Answer, Panel };
