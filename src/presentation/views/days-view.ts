import type { Plan, Scenario } from '../../engine/index.ts';
import { communitiesOfStop, type VehicleDay } from './days-fleet.ts';
import { dayMarks, routeLines } from './days-route.ts';
import type { NotServed } from './days-unserved.ts';
import { depotSymbols, type Hatch, type MapPicture, zoneLabels } from './map-view.ts';

/** The answer of the view: all days together. */
export interface DaysHeadline {
  readonly vehicleDays: number;
  readonly days: number;
  readonly reachedHa: number;
  /** Communities that get nothing, or not all, of their goods. */
  readonly notServed: number;
}

export function daysHeadline(plan: Plan, left: readonly NotServed[]): DaysHeadline {
  const { trips } = plan.delivery;
  return {
    vehicleDays: new Set(trips.vehicle.map((vehicle, row) => `${vehicle} ${trips.date[row]}`)).size,
    days: new Set(trips.date).size,
    reachedHa: plan.outcomes.headline.reachedHa.p50,
    notServed: new Set(left.flatMap(({ communities }) => communities)).size,
  };
}

/** One day in figures: hectares of the goods that are handed over. */
export interface DayTotals {
  readonly vehicles: number;
  readonly stops: number;
  readonly inoculantHa: number;
  readonly seedHa: number;
}

export function dayTotals(plan: Plan, vehicles: readonly VehicleDay[]): DayTotals {
  const { delivery, allocation } = plan;
  const stops = vehicles.flatMap(({ trips }) => trips.flatMap((trip) => trip.stops));
  const loads = stops.flatMap(({ row }) => delivery.stops.loads[row] ?? []);
  const hectares = (wants: (group: string) => boolean) =>
    loads
      .filter((load) => wants(allocation.consignments.group[delivery.loads.consignment[load] ?? -1] ?? ''))
      .reduce((sum, load) => sum + (delivery.loads.hectares[load] ?? 0), 0);
  return {
    vehicles: vehicles.length,
    stops: stops.length,
    inoculantHa: hectares((group) => group !== 'dry'),
    seedHa: hectares((group) => group !== 'inoculant'),
  };
}

/** What of the day's map stays while its hours go by. */
export type DayGround = Omit<MapPicture, 'symbols'>;

/** Land of the communities served that day lifted from the ground, those never served hatched, the day's routes. */
export function dayGround(
  plan: Plan,
  scenario: Scenario,
  vehicles: readonly VehicleDay[],
  left: readonly NotServed[],
): DayGround {
  const stops = vehicles.flatMap(({ trips }) => trips.flatMap((trip) => trip.stops));
  const served = new Set(stops.flatMap(({ row }) => communitiesOfStop(plan, row)));
  const unserved = new Set(left.flatMap(({ communities }) => communities));
  return {
    fills: scenario.communities.map((_, community) => (served.has(community) ? 'sheet' : null)),
    hatches: scenario.communities.map((_, community): Hatch | null => (unserved.has(community) ? 'nothing' : null)),
    lines: routeLines(plan, scenario, vehicles),
    labels: zoneLabels(scenario, () => null),
  };
}

/** The map at one minute of the day. */
export function dayPicture(
  plan: Plan,
  scenario: Scenario,
  vehicles: readonly VehicleDay[],
  ground: DayGround,
  minute: number,
): MapPicture {
  return { ...ground, symbols: [...depotSymbols(scenario), ...dayMarks(plan, scenario, vehicles, minute)] };
}
