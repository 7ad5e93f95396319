import { isoDate, parseIsoDate } from '../vocabulary/calendar.ts';
import type { Decisions } from '../vocabulary/decisions.ts';
import type { Plan } from '../vocabulary/plan.ts';
import type { Scenario } from '../vocabulary/scenario.ts';
import type { Lot, Product } from '../vocabulary/supply.ts';
import { type DayNumber, dayNumber } from '../vocabulary/units.ts';

/** What every check is given: the three inputs and the look-ups that all of them need. Indexes as in the plan. */
export interface CheckedCase {
  readonly scenario: Scenario;
  readonly decisions: Decisions;
  readonly plan: Plan;
  readonly planningDays: number;
  readonly productOfLot: readonly number[];
  readonly depotOfLot: readonly number[];
  readonly depotOfVehicle: readonly number[];
  readonly communityIndex: ReadonlyMap<string, number>;
  /** Rows of places.shares of each community. */
  readonly zonesOf: readonly (readonly { readonly zone: number; readonly share: number }[])[];
  /** Rows of allocation.grants of each `community * crops + crop`. */
  readonly grantsOf: ReadonlyMap<number, readonly number[]>;
  /** Rows of needs of each `community * crops + crop`. */
  readonly needsOf: ReadonlyMap<number, readonly number[]>;
  /** Row of allocation.shares by `community * crops + crop`. */
  readonly shareRowOf: ReadonlyMap<number, number>;
}

/** Reads a list at an index that the shape check has vouched for. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  return list[index] as T;
}

export function openCase(scenario: Scenario, decisions: Decisions, plan: Plan): CheckedCase {
  const indexOf = (ids: readonly { readonly id: string }[]) => new Map(ids.map(({ id }, i) => [id, i]));
  const products = indexOf(scenario.products);
  const depots = indexOf(scenario.depots);
  const { grants, shares } = plan.allocation;
  const crops = scenario.crops.length;
  const zonesOf = scenario.communities.map((): { zone: number; share: number }[] => []);
  plan.places.shares.community.forEach((community, i) => {
    zonesOf[community]?.push({ zone: at(plan.places.shares.zone, i), share: at(plan.places.shares.share, i) });
  });
  const { needs } = plan;
  const byCell = (community: readonly number[], crop: readonly number[]) => {
    const rowsOf = new Map<number, number[]>();
    community.forEach((of, i) => {
      const key = of * crops + at(crop, i);
      const rows = rowsOf.get(key);
      if (rows) rows.push(i);
      else rowsOf.set(key, [i]);
    });
    return rowsOf;
  };
  return {
    scenario,
    decisions,
    plan,
    planningDays: scenario.planning.to - scenario.planning.from + 1,
    productOfLot: scenario.lots.map((lot) => products.get(lot.productId) ?? -1),
    depotOfLot: scenario.lots.map((lot) => depots.get(lot.depotId) ?? -1),
    depotOfVehicle: scenario.vehicles.map((vehicle) => depots.get(vehicle.depotId) ?? -1),
    communityIndex: indexOf(scenario.communities),
    zonesOf,
    grantsOf: byCell(grants.community, grants.crop),
    needsOf: byCell(needs.community, needs.crop),
    shareRowOf: new Map(shares.community.map((community, i) => [community * crops + at(shares.crop, i), i])),
  };
}

export function lotAndProduct(c: CheckedCase, lot: number): { readonly lot: Lot; readonly product: Product } | null {
  const product = c.scenario.products[at(c.productOfLot, lot)];
  return product ? { lot: at(c.scenario.lots, lot), product } : null;
}

/** Day number of a date that the shape check has vouched for. */
export function dayOf(date: string): DayNumber {
  return parseIsoDate(date) ?? dayNumber(0);
}

/** Planning day of a date, counted from planning.from. */
export function planningDayOf(c: CheckedCase, date: string): number {
  return dayOf(date) - c.scenario.planning.from;
}

export function dateOf(c: CheckedCase, planningDay: number): string {
  return isoDate(dayNumber(c.scenario.planning.from + planningDay));
}

/** Is a vehicle there on a planning day, by its own dates and by the decisions? */
export function isVehicleThere(c: CheckedCase, vehicle: number, planningDay: number): boolean {
  const { id, availableFrom, availableTo } = at(c.scenario.vehicles, vehicle);
  const day = c.scenario.planning.from + planningDay;
  if ((availableFrom !== null && day < availableFrom) || (availableTo !== null && day > availableTo)) return false;
  return !c.decisions.decisions.some(
    (decision) =>
      decision.kind === 'vehicle-away' &&
      decision.vehicleId === id &&
      day >= dayOf(decision.from) &&
      day <= dayOf(decision.to),
  );
}
