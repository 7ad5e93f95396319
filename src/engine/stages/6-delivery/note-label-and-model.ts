import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Delivery } from '../../vocabulary/stage-results/delivery.ts';

/** Less than this is little, whatever the label says: a ninth of the cells (assumed). */
const LITTLE_LOG10 = 0.05;
/** More than this is much: half of the cells. */
const MUCH_LOG10 = 0.3;

/** Hand-overs at which the label and the model tell two tales: said, so that neither is silently preferred. */
export function noteLabelAndModel({ vehicleDays }: Delivery): Problem[] {
  const stops = vehicleDays
    .flatMap(({ trips }) => trips.flatMap((trip) => trip.stops))
    .filter(({ log10Loss }) => !Number.isNaN(log10Loss));
  const breached = stops.filter(
    ({ hoursAboveStorage, log10Loss }) => hoursAboveStorage > 0 && log10Loss < LITTLE_LOG10,
  );
  const weakened = stops.filter(
    ({ hoursAboveStorage, log10Loss }) => !(hoursAboveStorage > 0) && log10Loss > MUCH_LOG10,
  );
  const most = (values: readonly number[], digits: number) => Number(Math.max(...values).toPrecision(digits));
  const problems: Problem[] = [];
  if (breached.length > 0) {
    const hours = most(
      breached.map(({ hoursAboveStorage }) => hoursAboveStorage),
      2,
    );
    const log10 = most(
      breached.map(({ log10Loss }) => log10Loss),
      2,
    );
    problems.push(problem('E6010', { facts: { stops: breached.length, hours, log10 } }));
  }
  if (weakened.length > 0) {
    const log10 = most(
      weakened.map(({ log10Loss }) => log10Loss),
      2,
    );
    problems.push(problem('E6011', { facts: { stops: weakened.length, log10 } }));
  }
  return problems;
}
