import { grouped } from '../../../presentation/grouped-figure.ts';
import { plainPicture } from '../../map/plain-picture.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { NotPlanned } from '../empty-states.tsx';
import { Figure } from '../figure.tsx';
import { figureColumn, ZoneTable } from '../zone-table.tsx';

function Answer() {
  const words = useWords().firstViews;
  const plan = useSeason((season) => season.plan);
  if (plan === null) return <NotPlanned />;
  const { trips } = plan.delivery;
  const vehicleDays = new Set(trips.vehicle.map((vehicle, row) => `${vehicle} ${trips.date[row]}`)).size;
  const days = new Set(trips.date).size;
  return (
    <h1>
      {words.vehicleDays(grouped(vehicleDays), grouped(days))}{' '}
      <Figure path="outcomes.headline.reachedHa" title={words.reachedTitle}>
        {`${grouped(plan.outcomes.headline.reachedHa.p50)} ha`}
      </Figure>{' '}
      {words.aliveAndInTime}
    </h1>
  );
}

function Panel() {
  const { zones } = useWords();
  return (
    <ZoneTable
      columns={[
        figureColumn(zones.communities, 'outcomes.zones.communities', (z) => z.communities),
        figureColumn(zones.packs, 'outcomes.zones.inoculantPacks', (z) => z.inoculantPacks),
        figureColumn(zones.reachedHa, 'outcomes.zones.reachedHa', (z) => z.reachedHa, 1),
      ]}
    />
  );
}

export const DAYS: ViewParts = {
  Answer,
  Panel,
  Chart: () => null,
  Legend: () => null,
  picture: ({ scenario }) => plainPicture(scenario),
};
