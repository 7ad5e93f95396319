import type { InstanceAnswer, RoutingInstance } from '../../engine/index.ts';

/**
 * Routes of a published instance in the text its kin are published in: `Route #k: c1 c2 …`, customers from 1 in the order of the
 * file, then `Cost X`. Mixed fleets add the type of vehicle; where vehicles reload, k is the vehicle and stands once a trip.
 */
export function solutionText(instance: RoutingInstance, answer: InstanceAnswer): string {
  const mixed = instance.vehicleTypes.length > 1;
  let route = 0;
  const lines = answer.routes.flatMap(({ vehicle, vehicleType, trips }) =>
    trips.map((customers) => {
      route++;
      const number = instance.mayReload ? vehicle : route;
      return `Route #${number}: ${customers.join(' ')}${mixed ? ` vehicle type ${vehicleType}` : ''}`;
    }),
  );
  return `${[...lines, `Cost ${costText(answer.cost)}`].join('\n')}\n`;
}

/** At most four decimals: sums of tenths carry rounding. */
export function costText(cost: number): string {
  return String(Math.round(cost * 1e4) / 1e4);
}
