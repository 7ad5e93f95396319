import type { Decision, MoveAsked, MovePriced, Plan, Scenario, UnservedReason } from '../../engine/index.ts';
import { type PlanningDay, planningDays } from './days-axis.ts';
import { type DayStop, letterOf } from './days-fleet.ts';
import { consignmentsOfStop } from './days-stops.ts';

/** Where a stop could be moved. */
export interface MoveTarget {
  readonly vehicleId: string;
  readonly date: string;
}

export const isSameTarget = (a: MoveTarget, b: MoveTarget): boolean => a.vehicleId === b.vehicleId && a.date === b.date;

/** What has to be asked to price the move of a whole stop; null where nothing of it can be moved. */
export function moveQuestion(plan: Plan, stop: DayStop, { vehicleId, date }: MoveTarget): MoveAsked | null {
  const vehicle = plan.ids.vehicles.indexOf(vehicleId);
  const day = planningDays(plan).find(({ iso, works }) => works && iso === date)?.offset ?? -1;
  const [consignment, ...along] = consignmentsOfStop(plan, stop);
  return consignment === undefined ? null : { consignment, along, vehicle, day };
}

/** What moving a whole stop would cost. */
export interface MovePrice {
  /** Why it cannot be; null: it can. */
  readonly barred: UnservedReason | null;
  /** Money, promises and worth; 0 where it cannot be. */
  readonly cost: number;
  /** The money of it; null where nothing has a price. */
  readonly money: number | null;
  /** What it is reckoned at that people hear another day; 0 where the day stays. */
  readonly promises: number;
  /** Hand-overs of others that would find no place. */
  readonly leftBehind: number;
}

/** The desk's answer to a question about a stop. */
export function movePrice({ along = [] }: MoveAsked, answer: MovePriced): MovePrice {
  const { reason, cost, money, otherDay, promisePrice, leftBehind } = answer;
  if (reason !== null) return { barred: reason, cost: 0, money: null, promises: 0, leftBehind: 0 };
  return {
    barred: null,
    cost: cost ?? 0,
    money,
    // Who waits for several things is promised each of them.
    promises: otherDay ? promisePrice * (1 + along.length) : 0,
    leftBehind: leftBehind.length,
  };
}

interface BoardVehicle {
  readonly id: string;
  readonly letter: string;
}

/** All that a stop may be taken to without leaving its depot: vehicles on its day, days of its vehicle. */
export interface MoveBoard {
  readonly vehicles: readonly BoardVehicle[];
  /** Weekdays on which vehicles run at all, 0 Monday. */
  readonly weekdays: readonly number[];
  /** One row a week, one place a weekday; null where nobody drives. */
  readonly weeks: readonly (readonly (PlanningDay | null)[])[];
}

export function moveBoard(plan: Plan, scenario: Scenario, { vehicleId }: MoveTarget): MoveBoard {
  const depotId = scenario.vehicles[plan.ids.vehicles.indexOf(vehicleId)]?.depotId;
  const days = planningDays(plan);
  const works = days.filter((day) => day.works);
  const weekdays = [...new Set(works.map(({ weekday }) => weekday))].sort((a, b) => a - b);
  const first = days[0]?.weekday ?? 0;
  const weekOf = ({ offset }: PlanningDay) => Math.floor((offset + first) / 7);
  const weeks = [...new Set(works.map(weekOf))].map((week) =>
    weekdays.map((weekday) => works.find((day) => weekOf(day) === week && day.weekday === weekday) ?? null),
  );
  const vehicles = plan.ids.vehicles.flatMap((id, vehicle) =>
    scenario.vehicles[vehicle]?.depotId === depotId ? [{ id, letter: letterOf(vehicle) }] : [],
  );
  return { vehicles, weekdays, weeks };
}

/** Where decisions take goods that stand elsewhere in the plan; null where they stay. The last decision counts. */
export function decidedTarget(decisions: readonly Decision[], locks: readonly Decision[]): MoveTarget | null {
  for (const lock of locks) {
    if (lock.kind !== 'lock') continue;
    const last = decisions.findLast(
      (one) => one.kind === 'lock' && one.communityId === lock.communityId && one.commodity === lock.commodity,
    );
    if (last?.kind === 'lock' && !isSameTarget(last, lock)) return { vehicleId: last.vehicleId, date: last.date };
  }
  return null;
}
