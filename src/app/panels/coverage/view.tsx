import { lazy, Suspense } from 'react';
import type { Plan, Scenario } from '../../../engine/index.ts';
import { communityShares } from '../../../presentation/views/coverage-zones.ts';
import { EMPTY_PICTURE } from '../../../presentation/views/map-view.ts';
import { signedForSymbols } from '../../../presentation/views/signed-for-symbols.ts';
import { byZone, sharePicture } from '../../map/share-picture.ts';
import { rememberLast } from '../../state/remember-last.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { NotPlanned } from '../empty-states.tsx';
import { Figure } from '../figure.tsx';
import { ShareLegend } from '../share-legend.tsx';
import './coverage.css';
import { MethodSection } from './method.tsx';
import { MoneyLines } from './money-lines.tsx';
import { PastSeasons } from './past-seasons.tsx';
import { PrintHead, PrintMap } from './print-parts.tsx';
import { RangeFigures } from './range-figures.tsx';
import { useAmounts } from './use-amounts.ts';
import { CoverageZonesTable } from './zones-table.tsx';

const LossBudgetTable = lazy(async () => ({ default: (await import('./loss-budget.tsx')).LossBudgetTable }));
const ReplaySection = lazy(async () => ({ default: (await import('./replay-section.tsx')).ReplaySection }));
const SoFar = lazy(async () => ({ default: (await import('./so-far.tsx')).SoFar }));

function Answer() {
  const { hectares } = useAmounts();
  const words = useWords().coverage;
  const plan = useSeason((season) => season.plan);
  if (plan === null) return <NotPlanned />;
  const { plannedHa, reachedHa } = plan.outcomes.headline;
  if (plan.season.memberYears.length === 0) return <h1>{words.answer.none(hectares(plannedHa))}</h1>;
  const figure = (shown: string) => (
    <Figure path="outcomes.headline.reachedHa" title={words.figures.expectedHaTitle}>
      {shown}
    </Figure>
  );
  const low = hectares(reachedHa.p10);
  return (
    <>
      <PrintHead />
      <h1>
        {words.answer.inMiddle} {figure(`${hectares(reachedHa.p50)}\u00a0${words.unit.ha}`)}{' '}
        {words.answer.of(hectares(plannedHa))}{' '}
        {low === hectares(reachedHa.p50) ? (
          words.answer.never
        ) : (
          <>
            {words.answer.oneInTen} {figure(low)}.
          </>
        )}
      </h1>
    </>
  );
}

function Panel() {
  const isPlanned = useSeason((season) => season.plan !== null);
  if (!isPlanned) return null;
  return (
    <div className="coverage">
      <RangeFigures />
      <MoneyLines />
      <CoverageZonesTable />
      <Suspense>
        <SoFar />
        <ReplaySection />
      </Suspense>
      <PrintMap />
      <div className="coverage-below">
        <Suspense>
          <LossBudgetTable />
        </Suspense>
        <MethodSection />
      </div>
    </div>
  );
}

const picture = rememberLast((plan: Plan | null, scenario: Scenario | null) => {
  if (plan === null || scenario === null) return EMPTY_PICTURE;
  const { plannedHa, reachedRange } = plan.outcomes.zones;
  const ofZone = (row: number) =>
    (plannedHa[row] ?? 0) > 0 ? (reachedRange[row]?.p50 ?? 0) / (plannedHa[row] ?? 1) : null;
  const shares = sharePicture(scenario, communityShares(plan), byZone(plan, scenario.zones.length, ofZone));
  return { ...shares, symbols: [...shares.symbols, ...signedForSymbols(plan, scenario)] };
});

function Legend() {
  const { map } = useWords().coverage;
  return <ShareLegend title={map.title} nothingText={map.none} />;
}

export const COVERAGE: ViewParts = {
  Answer,
  Panel,
  Chart: PastSeasons,
  Legend,
  picture: ({ plan, scenario }) => picture(plan, scenario),
};
