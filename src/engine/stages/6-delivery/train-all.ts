import { type DispatchState, setPlan } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { insertLoad } from './insertion.ts';
import { planSlot, type SlotPlan } from './plan-slot.ts';
import { never, type Recreator } from './recreate.ts';
import { removeLoads } from './ruin.ts';
import type { Slot } from './vehicle-day-slots.ts';

/**
 * Sees to it that every community that is visited is trained. Only loads held from an earlier round can lack it. First a served
 * load whose day has the time takes it on; else one of them gives up its place to a load of the community that brings training.
 */
export function trainAll(recreator: Recreator): void {
  const { state } = recreator;
  if (state.task.trainingMinutes <= 0) return;
  state.task.trainees.forEach((loads, community) => {
    const served = () => loads.filter((load) => state.slotOf[load] !== -1);
    if (isTrained(state, community) || served().length === 0) return;
    if (served().some((load) => takeOnTraining(state, community, load))) return;
    for (const load of served().sort((a, b) => kgOf(state, a) - kgOf(state, b))) {
      state.pinned[load] = 0;
      removeLoads(state, [load]);
      const absent = loads
        .filter((other) => state.slotOf[other] === -1)
        .sort((a, b) => kgOf(state, a) - kgOf(state, b));
      for (const other of absent) {
        if (!isTrained(state, community)) insertLoad(state, recreator.memory, recreator.candidates, other, never);
      }
      if (isTrained(state, community)) return;
    }
  });
  state.log.length = 0;
}

function isTrained({ trial }: DispatchState, community: number): boolean {
  return (trial.trainer[community] as number) >= 0;
}

const kgOf = ({ task }: DispatchState, load: number) => (task.loads[load] as TaskLoad).kg;

/** Lets a served load bring the training, if its vehicle-day still keeps every rule. */
function takeOnTraining(state: DispatchState, community: number, load: number): boolean {
  const index = state.slotOf[load] as number;
  const slot = state.task.slots[index] as Slot;
  const before = state.plans[index] as SlotPlan;
  state.trial.trainer[community] = load;
  const plan = planSlot(
    state.trial,
    slot,
    before.trips.map(({ loads, iceKg }) => ({ loads, iceKg, readyMinute: Number.NaN })),
    -1,
  );
  if (!plan) {
    state.trial.trainer[community] = -1;
    return false;
  }
  setPlan(state, index, plan);
  return true;
}
