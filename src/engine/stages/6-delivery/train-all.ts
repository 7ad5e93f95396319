import { type DispatchState, slotOf } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { insertLoad, removeLoads } from './fill-up.ts';
import { beginStep, reworkRow, takeBack } from './search/change-rows.ts';
import { judgeRow } from './search/judge.ts';
import { setTrainer, setWork } from './search/ties.ts';

/**
 * Sees to it that every community that is visited is trained. Only loads held from an earlier round can lack it. First a served
 * load whose day has the time takes it on; else one of them gives up its place to a load of the community that brings training.
 */
export function trainAll(state: DispatchState): void {
  if (state.task.trainingMinutes <= 0) return;
  const isServed = (load: number) => slotOf(state, load) !== -1;
  state.task.trainees.forEach((loads, community) => {
    const served = loads.filter(isServed);
    if (isTrained(state, community) || served.length === 0) return;
    if (served.some((load) => bringTraining(state, community, load))) return;
    for (const load of served.sort((a, b) => kgOf(state, a) - kgOf(state, b))) {
      state.ties.pinned[load] = 0;
      beginStep(state.rows);
      removeLoads(state, [load]);
      const absent = loads.filter((other) => !isServed(other)).sort((a, b) => kgOf(state, a) - kgOf(state, b));
      for (const other of absent) if (!isTrained(state, community)) insertLoad(state, other);
      if (isTrained(state, community)) return;
    }
  });
}

function isTrained({ ties }: DispatchState, community: number): boolean {
  return (ties.trainer[community] as number) >= 0;
}

const kgOf = ({ task }: DispatchState, load: number) => (task.loads[load] as TaskLoad).kg;

/** Lets a served load bring the training, if its vehicle-day still keeps every rule. */
function bringTraining(state: DispatchState, community: number, load: number): boolean {
  const { rows, ties } = state;
  beginStep(rows);
  setTrainer(ties, community, load);
  setWork(rows, ties, load, true);
  const slot = slotOf(state, load);
  if (reworkRow(rows, slot) && judgeRow(rows, slot)) return true;
  takeBack(rows);
  return false;
}
