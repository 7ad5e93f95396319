import type { Plan, Scenario } from '../../../engine/index.ts';
import { grouped } from '../../../presentation/grouped-figure.ts';
import { EMPTY_PICTURE } from '../../../presentation/views/map-view.ts';
import { byCommunity, byZone, sharePicture } from '../../map/share-picture.ts';
import { rememberLast } from '../../state/remember-last.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { NotPlanned } from '../empty-states.tsx';
import { Figure } from '../figure.tsx';
import { ShareLegend } from '../share-legend.tsx';
import { figureColumn, ZoneTable } from '../zone-table.tsx';

function Answer() {
  const words = useWords().firstViews;
  const plan = useSeason((season) => season.plan);
  if (plan === null) return <NotPlanned />;
  const { plannedHa, reachedHa } = plan.outcomes.headline;
  return (
    <h1>
      {words.inMedianSeason}{' '}
      <Figure path="outcomes.headline.reachedHa" title={words.reachedTitle}>
        {`${grouped(reachedHa.p50)} ha`}
      </Figure>{' '}
      {words.ofPlanned(grouped(plannedHa), grouped(reachedHa.p10))}
    </h1>
  );
}

function Panel() {
  const { zones } = useWords();
  return (
    <ZoneTable
      columns={[
        figureColumn(zones.growers, 'outcomes.zones.farmers', (z) => z.farmers),
        figureColumn(zones.plannedHa, 'outcomes.zones.plannedHa', (z) => z.plannedHa, 1),
        figureColumn(zones.reachedHa, 'outcomes.zones.reachedHa', (z) => z.reachedHa, 1),
        figureColumn(zones.nitrogenKg, 'outcomes.zones.nitrogenKg', (z) => z.nitrogenKg.map(({ p50 }) => p50)),
      ]}
    />
  );
}

const picture = rememberLast((plan: Plan | null, scenario: Scenario | null) => {
  if (plan === null || scenario === null) return EMPTY_PICTURE;
  const { plannedHa, reachedHa } = plan.outcomes.zones;
  const shares = byCommunity(plan, plan.outcomes.crops.reachedHa, plan.allocation.shares.plannedHa);
  const ofZone = (row: number) => ((plannedHa[row] ?? 0) > 0 ? (reachedHa[row] ?? 0) / (plannedHa[row] ?? 1) : null);
  return sharePicture(scenario, shares, byZone(plan, scenario.zones.length, ofZone));
});

export const COVERAGE: ViewParts = {
  Answer,
  Panel,
  Chart: () => null,
  Legend: () => <ShareLegend title={useWords().firstViews.shareReached} />,
  picture: ({ plan, scenario }) => picture(plan, scenario),
};
