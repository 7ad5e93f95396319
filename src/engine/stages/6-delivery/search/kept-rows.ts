import { refreshRow } from './refresh-row.ts';
import { DEPOT, markUsed, type RouteState } from './route-state.ts';
import { restoreTraining } from './ties.ts';

/** The best rows met so far: those of the slots in use, one behind the other. */
export interface KeptRows {
  cost: number;
  count: number;
  readonly slot: Int32Array;
  readonly nodes: Int32Array;
  readonly load: Int32Array;
  readonly extraCost: Float64Array;
  readonly iced: Int32Array;
  /** Who trains each community. */
  readonly trainer: Int32Array;
}

export function newKeptRows(state: RouteState): KeptRows {
  const { slots, visits } = state.problem;
  const most = Math.min(slots.count, visits.count);
  return {
    cost: 0,
    count: 0,
    slot: new Int32Array(most),
    nodes: new Int32Array(most),
    load: new Int32Array(visits.count * 2 + most + 1),
    extraCost: new Float64Array(most),
    iced: new Int32Array(most),
    trainer: new Int32Array(state.problem.ties?.trainer.length ?? 0),
  };
}

export function keepRows(state: RouteState, kept: KeptRows): void {
  const { stride, load, nodes, problem } = state;
  kept.cost = state.cost;
  kept.count = 0;
  if (problem.ties) kept.trainer.set(problem.ties.trainer);
  let to = 0;
  for (let slot = 0; slot < problem.slots.count; slot++) {
    const count = nodes[slot] as number;
    if (count === 0) continue;
    kept.slot[kept.count] = slot;
    kept.nodes[kept.count] = count;
    kept.iced[kept.count] = state.iced[slot] as number;
    kept.extraCost[kept.count++] = state.extraCost[slot] as number;
    for (let i = slot * stride; i < slot * stride + count; i++) kept.load[to++] = load[i] as number;
  }
}

/** Puts kept rows back in the place of whatever stands in the state. */
export function restoreRows(state: RouteState, kept: KeptRows): void {
  const { stride, problem } = state;
  for (let slot = 0; slot < problem.slots.count; slot++) {
    if ((state.nodes[slot] as number) > 0) markUsed(state, slot, false);
    state.nodes[slot] = 0;
    state.extraCost[slot] = 0;
    state.iced[slot] = 0;
    refreshRow(state, slot);
  }
  state.slotOf.fill(-1);
  state.served = 0;
  const { ties } = problem;
  if (ties) restoreTraining(state, ties, kept.trainer);
  let from = 0;
  for (let k = 0; k < kept.count; k++) {
    const slot = kept.slot[k] as number;
    const count = kept.nodes[k] as number;
    for (let i = slot * stride; i < slot * stride + count; i++) {
      const visit = kept.load[from++] as number;
      state.load[i] = visit;
      state.place[i] = visit === DEPOT ? 0 : (problem.visits.place[visit] as number);
      if (visit === DEPOT) continue;
      state.slotOf[visit] = slot;
      state.served++;
    }
    state.nodes[slot] = count;
    markUsed(state, slot, true);
    refreshRow(state, slot);
    state.extraCost[slot] = kept.extraCost[k] as number;
    state.iced[slot] = kept.iced[k] as number;
    state.slotCost[slot] = (state.slotCost[slot] as number) + (kept.extraCost[k] as number);
  }
  state.cost = kept.cost;
}
