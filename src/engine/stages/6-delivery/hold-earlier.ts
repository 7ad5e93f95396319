import type { KnownDelivery } from '../../vocabulary/told-plan.ts';
import { type DispatchState, iceLeftFor, setLoad, setPlan } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { planSlot, type SlotPlan, type TripWish } from './plan-slot.ts';
import { removeLoads } from './ruin.ts';
import { firstDayAfterSeed } from './rules/seed-first.ts';
import type { Slot } from './vehicle-day-slots.ts';

/**
 * Puts the loads held from an earlier round back on their vehicle-days, in their order, with the ice and the training they had,
 * and pins them. A vehicle-day that can no longer be driven as it was lets its loads go, and so does inoculant whose seed was
 * let go.
 *
 * @returns loads that could not be held
 */
export function holdEarlier(state: DispatchState, earlier: KnownDelivery): readonly number[] {
  const { task } = state;
  const held = [...task.loads.keys()].filter((load) => (task.loads[load] as TaskLoad).held !== null);
  for (const load of held) {
    const { community, mayTrain, held: at } = task.loads[load] as TaskLoad;
    if (mayTrain && at?.trains) state.trial.trainer[community] = load;
  }
  for (const [slot, loads] of groupBySlot(state, held)) holdDay(state, slot, loads, earlier);
  for (const load of held) {
    if (state.slotOf[load] === -1) dropTraining(state, load);
    if (firstDayAfterSeed(task.seedLinks, load, state.dayOf) > (state.dayOf[load] as number))
      removeLoads(state, [load]);
  }
  for (const load of held) state.pinned[load] = state.slotOf[load] === -1 ? 0 : 1;
  state.log.length = 0;
  return held.filter((load) => state.slotOf[load] === -1);
}

function groupBySlot({ task }: DispatchState, held: readonly number[]): readonly [number, number[]][] {
  const slotOf = new Map(task.slots.map((slot, i) => [`${slot.vehicle} ${slot.day}`, i]));
  const bySlot = new Map<number, number[]>();
  for (const load of held) {
    const at = (task.loads[load] as TaskLoad).held;
    const slot = slotOf.get(`${at?.vehicle} ${at?.day}`);
    if (slot !== undefined) bySlot.set(slot, [...(bySlot.get(slot) ?? []), load]);
  }
  return [...bySlot].sort((a, b) => a[0] - b[0]);
}

/** Holds one vehicle-day, with the training its loads are to bring or, where that does not fit, without. */
function holdDay(state: DispatchState, index: number, loads: readonly number[], earlier: KnownDelivery): void {
  const { trainer } = state.trial;
  const slot = state.task.slots[index] as Slot;
  let plan = planAsBefore(state, slot, loads, earlier);
  if (!plan) {
    for (const load of loads) dropTraining(state, load);
    plan = planAsBefore(state, slot, loads, earlier);
  }
  if (!plan) return;
  setPlan(state, index, plan);
  for (const load of loads) {
    const { community } = state.task.loads[load] as TaskLoad;
    const before = trainer[community] as number;
    setLoad(state, load, index);
    trainer[community] = before;
  }
}

function dropTraining({ task, trial }: DispatchState, load: number): void {
  const { community } = task.loads[load] as TaskLoad;
  if (trial.trainer[community] === load) trial.trainer[community] = -1;
}

/** The day's trips as the first round drove them, without the loads that are no longer there; null where a rule forbids it. */
function planAsBefore(
  state: DispatchState,
  slot: Slot,
  loads: readonly number[],
  earlier: KnownDelivery,
): SlotPlan | null {
  const day = earlier.vehicleDays.find(({ vehicle, day }) => vehicle === slot.vehicle && day === slot.day);
  const at = (load: number) => (state.task.loads[load] as TaskLoad).held;
  const position = (load: number) => at(load)?.position ?? 0;
  const wishes = (day?.trips ?? []).map((trip, number): TripWish => {
    const aboard = loads.filter((load) => at(load)?.trip === number).sort((a, b) => position(a) - position(b));
    const cold = aboard.some((load) => (state.task.loads[load] as TaskLoad).inoculantKg > 0);
    return { loads: aboard, iceKg: cold ? trip.iceKg : 0, readyMinute: Number.NaN };
  });
  const plan = planSlot(state.trial, slot, wishes, -1);
  return plan !== null && plan.iceKg <= iceLeftFor(state, slot) + ICE_SLACK_KG ? plan : null;
}

const ICE_SLACK_KG = 1e-9;
