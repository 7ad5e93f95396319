import type { TripAsked } from './choose-leave.ts';
import type { DispatchTask } from './dispatch-task.ts';
import { DeliveryJudge } from './judge-deliveries.ts';
import { poseDeliveries, tieLoads } from './pose-deliveries.ts';
import { newTrial, type Trial } from './run-trip.ts';
import { beginSearch, type Search } from './search/anneal.ts';
import type { RouteState } from './search/route-state.ts';
import { dayOf, type Ties } from './search/ties.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Who does what, as the search changes it: the task, and the rows of its vehicle-days. */
export interface DispatchState {
  readonly task: DispatchTask;
  readonly rows: RouteState;
  readonly search: Search;
  readonly ties: Ties;
  readonly judge: DeliveryJudge;
  readonly trial: Trial;
}

/** One trip of a row, and when its loading begins, so as to leave at the hour chosen for it. */
export interface PlannedTrip extends TripAsked {
  readonly readyMinute: number;
}

/** Every vehicle-day idle, every load left behind. */
export function newState(task: DispatchTask): DispatchState {
  const ties = tieLoads(task);
  const trial = newTrial(task, ties.trainer);
  const judge = new DeliveryJudge(task, ties, trial);
  const moved = task.loads.flatMap(({ ridesLast }, load) => (ridesLast ? [] : [load]));
  const search = beginSearch({ ...poseDeliveries(task), ties, judge }, 0, moved);
  return { task, rows: search.state, search, ties, judge, trial };
}

/** Slot of a load; -1 while it is left behind. */
export function slotOf({ rows }: DispatchState, load: number): number {
  return rows.slotOf[load] as number;
}

/** Planning day of a load; -1 while it is left behind. */
export function dayOfLoad({ rows, ties }: DispatchState, load: number): number {
  return dayOf(rows, ties, load);
}

/** Ice left of the day's making of a slot's depot, kg. */
export function iceLeftFor({ rows, judge, task }: DispatchState, slot: Slot): number {
  return judge.iceLeft(rows, slot.depot * task.planningDays + slot.day, -1);
}

/** The trips of a slot, in order; none while it stands idle. */
export function tripsOf({ rows, judge }: DispatchState, slot: number): readonly PlannedTrip[] {
  return judge.chooseHours(rows, slot, rows.iced[slot] as number);
}
