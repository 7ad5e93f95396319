import type { DispatchTask, TaskLoad } from './dispatch-task.ts';
import { idlePlan, newTrial, type SlotPlan, type Trial } from './plan-slot.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Who does what, as the search changes it. Every change is logged, so that a step may be taken back. */
export interface DispatchState {
  readonly task: DispatchTask;
  readonly trial: Trial;
  readonly plans: SlotPlan[];
  /** Slot and day of each load; -1 while unserved. */
  readonly slotOf: Int32Array;
  readonly dayOf: Int32Array;
  /** Ice left of the day's making, [depot * planningDays + day]. */
  readonly iceLeftKg: Float64Array;
  /** Loads served once and for all: held from an earlier round, or bound to one that is. */
  readonly pinned: Uint8Array;
  /** Vehicle-days and unserved loads together. */
  cost: number;
  readonly log: Change[];
}

type Change =
  | { readonly kind: 'plan'; readonly slot: number; readonly before: SlotPlan }
  | { readonly kind: 'load'; readonly load: number; readonly slot: number }
  | { readonly kind: 'trainer'; readonly community: number; readonly load: number };

export function newState(task: DispatchTask, communities: number): DispatchState {
  const iceLeftKg = new Float64Array(task.rounds.length * task.planningDays);
  task.rounds.forEach((round, depot) => {
    iceLeftKg.fill(round.iceKgPerDay, depot * task.planningDays, (depot + 1) * task.planningDays);
  });
  return {
    task,
    trial: newTrial(task, communities),
    plans: task.slots.map(idlePlan),
    slotOf: new Int32Array(task.loads.length).fill(-1),
    dayOf: new Int32Array(task.loads.length).fill(-1),
    iceLeftKg,
    pinned: new Uint8Array(task.loads.length),
    cost: task.loads.reduce((sum, load) => sum + load.unservedCost, 0),
    log: [],
  };
}

export function iceLeftFor(state: DispatchState, slot: Slot): number {
  return state.iceLeftKg[slot.depot * state.task.planningDays + slot.day] as number;
}

export function setPlan(state: DispatchState, index: number, plan: SlotPlan): void {
  state.log.push({ kind: 'plan', slot: index, before: state.plans[index] as SlotPlan });
  putPlan(state, index, plan);
}

/** Notes that a load is now served in a slot, or in none (-1), and who trains its community because of it. */
export function setLoad(state: DispatchState, load: number, slot: number): void {
  state.log.push({ kind: 'load', load, slot: state.slotOf[load] as number });
  putLoad(state, load, slot);
  const { community, mayTrain } = state.task.loads[load] as TaskLoad;
  const trainer = state.trial.trainer[community] as number;
  if (!mayTrain || (slot < 0 ? trainer !== load : trainer >= 0)) return;
  state.log.push({ kind: 'trainer', community, load: trainer });
  state.trial.trainer[community] = slot < 0 ? -1 : load;
}

/** Takes back every logged change, the last one first. */
export function takeBack(state: DispatchState): void {
  for (let i = state.log.length - 1; i >= 0; i--) {
    const change = state.log[i] as Change;
    if (change.kind === 'plan') putPlan(state, change.slot, change.before);
    else if (change.kind === 'load') putLoad(state, change.load, change.slot);
    else state.trial.trainer[change.community] = change.load;
  }
  state.log.length = 0;
}

function putPlan(state: DispatchState, index: number, plan: SlotPlan): void {
  const before = state.plans[index] as SlotPlan;
  const slot = state.task.slots[index] as Slot;
  const ice = slot.depot * state.task.planningDays + slot.day;
  state.iceLeftKg[ice] = (state.iceLeftKg[ice] as number) + before.iceKg - plan.iceKg;
  state.cost += plan.cost - before.cost;
  state.plans[index] = plan;
}

function putLoad(state: DispatchState, load: number, slot: number): void {
  const before = state.slotOf[load] as number;
  const { unservedCost } = state.task.loads[load] as TaskLoad;
  if (before < 0 && slot >= 0) state.cost -= unservedCost;
  if (before >= 0 && slot < 0) state.cost += unservedCost;
  state.slotOf[load] = slot;
  state.dayOf[load] = slot < 0 ? -1 : (state.task.slots[slot] as Slot).day;
}
