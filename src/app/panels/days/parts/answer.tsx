import { localNumber, withUnit } from '../../../../presentation/local-number.ts';
import { useWords } from '../../../state/use-stores.ts';
import { NotPlanned } from '../../empty-states.tsx';
import { Figure } from '../../figure.tsx';
import { useDay } from './day-case.ts';

/** How many vehicle-days reach how much land, and how many communities are left out. */
export function DaysAnswer() {
  const words = useWords();
  const day = useDay();
  if (day === null) return <NotPlanned />;
  const { plan, left } = day;
  const { dayRoutes } = words;
  const { vehicle, date } = plan.delivery.trips;
  if (vehicle.length === 0) return <h1>{dayRoutes.nothing}</h1>;
  const vehicleDays = new Set(vehicle.map((one, row) => `${one} ${date[row]}`)).size;
  const missed = new Set(left.flatMap(({ communities }) => communities)).size;
  return (
    <h1>
      {dayRoutes.answer(localNumber(vehicleDays, words), localNumber(new Set(date).size, words))}{' '}
      <Figure path="outcomes.headline.reachedHa" title={dayRoutes.reachedTitle}>
        {withUnit(localNumber(plan.outcomes.headline.reachedHa.p50, words), dayRoutes.ha)}
      </Figure>{' '}
      {dayRoutes.aliveInTime} {missed === 0 ? dayRoutes.noneLeftOut : dayRoutes.leftOut(localNumber(missed, words))}
    </h1>
  );
}
