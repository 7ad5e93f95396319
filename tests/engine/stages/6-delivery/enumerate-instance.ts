import type { RoutingInstance } from '../../../../src/engine/index.ts';

/** The least cost of a small instance by trying every order, cut and vehicle; shares nothing with the search. Infinity: none. */
export function enumerateInstance(instance: RoutingInstance): number {
  const customers = Array.from({ length: instance.places - 1 }, (_, i) => i + 1);
  const vehicles = instance.vehicleTypes.flatMap((type) => type.numbers.map(() => type));
  let best = Number.POSITIVE_INFINITY;
  const place = (vehicle: number, left: readonly number[], cost: number) => {
    if (cost >= best) return;
    if (left.length === 0) {
      best = cost;
      return;
    }
    if (vehicle === vehicles.length) return;
    place(vehicle + 1, left, cost);
    const { fixedCost } = vehicles[vehicle] as (typeof vehicles)[number];
    drive(vehicle, left, [], instance.opens[0] as number, cost + fixedCost);
  };
  const drive = (vehicle: number, left: readonly number[], trip: readonly number[], ready: number, cost: number) => {
    if (trip.length > 0) {
      const type = vehicles[vehicle] as (typeof vehicles)[number];
      const run = runTrip(instance, type, trip, ready);
      if (run !== null) {
        place(vehicle + 1, left, cost + run.length * type.costPerLength);
        if (instance.mayReload) drive(vehicle, left, [], run.back, cost + run.length * type.costPerLength);
      }
    }
    for (const next of left)
      drive(
        vehicle,
        left.filter((c) => c !== next),
        [...trip, next],
        ready,
        cost,
      );
  };
  place(0, customers, 0);
  return best / instance.costUnits;
}

function runTrip(
  instance: RoutingInstance,
  type: RoutingInstance['vehicleTypes'][number],
  trip: readonly number[],
  ready: number,
) {
  const { lengths, minutes, places, demand, opens, closes, service, release } = instance;
  if (trip.reduce((sum, c) => sum + (demand[c] as number), 0) > type.capacity) return null;
  if (trip.some((c) => type.mayVisit !== null && type.mayVisit[c] !== 1)) return null;
  const start = Math.max(ready, ...trip.map((c) => release[c] as number));
  const stops = [0, ...trip, 0];
  // Leaving at every later whole minute as well, for the longest journey allowed.
  let shortest = Number.POSITIVE_INFINITY;
  let soonest = Number.NaN;
  for (let leave = start; leave <= Math.min(closes[0] as number, start + 400); leave++) {
    let minute = leave;
    let fits = true;
    for (let i = 1; i < stops.length && fits; i++) {
      const [from, to] = [stops[i - 1] as number, stops[i] as number];
      minute = Math.max(minute + (minutes[from * places + to] as number), opens[to] as number);
      fits = minute <= (closes[to] as number);
      minute += to === 0 ? 0 : (service[to] as number);
    }
    if (!fits) break;
    if (Number.isNaN(soonest)) soonest = minute;
    shortest = Math.min(shortest, minute - leave);
    if (!Number.isFinite(type.mostMinutes)) break;
  }
  if (Number.isNaN(soonest) || shortest > type.mostMinutes) return null;
  const length = stops
    .slice(1)
    .reduce((sum, to, i) => sum + (lengths[(stops[i] as number) * places + to] as number), 0);
  return { length, back: soonest };
}
