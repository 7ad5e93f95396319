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
  const { plannedHa, seedHa, inoculatedHa } = plan.outcomes.headline;
  const percent = `${Math.floor((100 * seedHa) / Math.max(plannedHa, 1e-9))} %`;
  return (
    <h1>
      {words.seedFor}{' '}
      <Figure path="outcomes.headline.seedHa" title={words.seedTitle}>
        {percent}
      </Figure>{' '}
      {words.ofPlannedLand}{' '}
      <Figure path="outcomes.headline.inoculatedHa" title={words.notInoculatedTitle} className="alarm">
        {`${grouped(seedHa - inoculatedHa, 1)} ha`}
      </Figure>{' '}
      {words.notInoculated}
    </h1>
  );
}

function Panel() {
  const { zones } = useWords();
  return (
    <ZoneTable
      columns={[
        figureColumn(zones.communities, 'outcomes.zones.communities', (z) => z.communities),
        figureColumn(zones.plannedHa, 'outcomes.zones.plannedHa', (z) => z.plannedHa, 1),
        figureColumn(zones.seedKg, 'outcomes.zones.seedKg', (z) => z.seedKg),
        figureColumn(zones.packs, 'outcomes.zones.inoculantPacks', (z) => z.inoculantPacks),
        figureColumn(zones.shareMet, 'outcomes.zones.shareMet', (z) => z.shareMet.map((share) => 100 * share)),
      ]}
    />
  );
}

const picture = rememberLast((plan: Plan | null, scenario: Scenario | null) => {
  if (plan === null || scenario === null) return EMPTY_PICTURE;
  const { shareMet } = plan.outcomes.zones;
  const shares = byCommunity(plan, plan.outcomes.crops.inoculatedHa, plan.allocation.shares.plannedHa);
  return sharePicture(
    scenario,
    shares,
    byZone(plan, scenario.zones.length, (row) => shareMet[row] ?? null),
  );
});

export const STOCK: ViewParts = {
  Answer,
  Panel,
  Chart: () => null,
  Legend: () => <ShareLegend title={useWords().scale.shareTitle} />,
  picture: ({ plan, scenario }) => picture(plan, scenario),
};
