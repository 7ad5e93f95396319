import type { Plan, Position, Scenario } from '../../engine/index.ts';
import { communitiesOfStop, type VehicleDay } from './days-fleet.ts';
import { dayMarks, placePosition, routeLines } from './days-route.ts';
import { type NotServed, servedNothing } from './days-unserved.ts';
import { depotSymbols, districtBounds, type Hatch, type MapLabel, type MapPicture, zoneLabels } from './map-view.ts';

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
    inoculantHa: hectares((group) => group === 'inoculant' || group === 'both'),
    seedHa: hectares((group) => group === 'dry' || group === 'both'),
  };
}

/** What of the day's map stays while its hours go by. */
export type DayGround = Omit<MapPicture, 'symbols'>;

/** Land of the communities served that day lifted from the ground, those not fully served hatched, the day's routes. */
export function dayGround(
  plan: Plan,
  scenario: Scenario,
  vehicles: readonly VehicleDay[],
  left: readonly NotServed[],
): DayGround {
  const stops = vehicles.flatMap(({ trips }) => trips.flatMap((trip) => trip.stops));
  const served = new Set(stops.flatMap(({ row }) => communitiesOfStop(plan, row)));
  const short = new Set(left.flatMap(({ communities }) => communities));
  const bare = servedNothing(plan, left);
  return {
    fills: scenario.communities.map((_, community) => (served.has(community) ? 'sheet' : null)),
    hatches: scenario.communities.map((_, community): Hatch | null =>
      bare.has(community) ? 'nothing' : short.has(community) ? 'some' : null,
    ),
    lines: routeLines(plan, scenario, vehicles),
    labels: clearLabels(
      scenario,
      stops.map(({ place }) => placePosition(plan, place)),
    ),
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

/** Tries, in heights of a label: where it stands, then below and above by turns. */
const LABEL_SHIFTS = [0, -1.2, 1.2, -2.4, 2.4] as const;
/** A label and a stop as parts of the district's width: half a label's width, and its height with a stop's. */
const [HALF_LABEL, LABEL_HEIGHT] = [0.085, 0.035];

/** Zone names moved up or down from under the day's stops, which lie over them. */
function clearLabels(scenario: Scenario, stops: readonly Position[]): MapLabel[] {
  const [west, , east] = districtBounds(scenario) ?? [0, 0, 1, 1];
  const width = Math.max(1e-9, east - west);
  return zoneLabels(scenario, () => null).map((label) => {
    const [lon, lat] = label.position;
    const shifted = LABEL_SHIFTS.map((shift): Position => [lon, lat + shift * LABEL_HEIGHT * width]);
    const isClear = (at: Position) =>
      stops.every(
        (stop) => Math.abs(stop[0] - at[0]) > HALF_LABEL * width || Math.abs(stop[1] - at[1]) > LABEL_HEIGHT * width,
      );
    return { ...label, position: shifted.find(isClear) ?? label.position };
  });
}
