import { exp, log } from '../../numerics/elementary.ts';
import { RandomStream } from '../../numerics/random-stream.ts';
import type { SearchSettings } from '../../vocabulary/settings.ts';
import { type DispatchState, takeBack } from './dispatch-state.ts';
import { handOnDay } from './hand-on-day.ts';
import type { SlotPlan } from './plan-slot.ts';
import { insertAll, type Recreator, recreate } from './recreate.ts';
import { listNeighbours, ruin } from './ruin.ts';

/** Start and end temperature, as parts of the mean cost of a used vehicle-day: the instance's own unit. */
const START_HEAT = 1;
const END_HEAT = 0.01;
/** The same where the search begins from a plan that is to be kept as far as it can. */
const START_HEAT_OF_PRESENT = 0.1;
const STEPS_BETWEEN_QUESTIONS = 50;
/** Share of steps that try to give a whole vehicle-day to another that stands idle. */
const HAND_ON = 0.05;
/** Loads still unserved that are tried again in one step, beside those just removed. */
const MOST_RETRIED = 12;

export interface SearchEnd {
  readonly iterationsDone: number;
  readonly stoppedBy: 'iterations' | 'time';
}

/** A plan kept by reference: plans are never changed. */
interface Kept {
  readonly plans: readonly SlotPlan[];
  readonly slotOf: Int32Array;
  readonly dayOf: Int32Array;
  readonly trainer: Int32Array;
  readonly iceLeftKg: Float64Array;
  readonly cost: number;
}

/**
 * Ruin and recreate under simulated annealing (Christiaens & Vanden Berghe 2020, Transportation Science 54:417). Leaves the best
 * plan met in the state. The same seed and steps give the same plan.
 *
 * @param hopeful loads that some vehicle-day could bring on its own; no others are tried
 * @param disturbed where the state holds a plan that people have been told, the loads that found no place in it: the search stays
 *   around them, so that whoever they do not touch keeps day, vehicle and hour; null: a plan that nobody knows
 */
export function improve(
  recreator: Recreator,
  hopeful: Uint8Array,
  settings: SearchSettings,
  disturbed: readonly number[] | null,
): SearchEnd {
  const { state } = recreator;
  if (disturbed?.length === 0) return { iterationsDone: 0, stoppedBy: 'iterations' };
  const random = new RandomStream(settings.seed);
  const neighbours = listNeighbours(state.task);
  let best = keep(state);
  const dayCost = meanDayCost(state);
  const start = disturbed ? START_HEAT_OF_PRESENT : START_HEAT;
  let heat = start * dayCost;
  const cooling = exp(log(END_HEAT / start) / Math.max(1, settings.iterations));
  for (let step = 0; step < settings.iterations; step++) {
    if (step % STEPS_BETWEEN_QUESTIONS === 0) {
      if (settings.stop?.()) {
        restore(state, best);
        return { iterationsDone: step, stoppedBy: 'time' };
      }
      settings.progress?.(step, step / settings.iterations, best.cost);
    }
    const before = state.cost;
    state.log.length = 0;
    const handedOn = random.next() < HAND_ON && handOnDay(state, random, disturbed);
    if (!handedOn) {
      ruin(state, neighbours, random, disturbed);
      recreate(recreator, absentLoads(state, hopeful, random), random);
    }
    if (state.cost < before - heat * log(1 - random.next())) {
      if (state.cost < best.cost - TINY) best = keep(state);
    } else {
      takeBack(state);
      state.cost = before;
    }
    heat *= cooling;
  }
  restore(state, best);
  return { iterationsDone: settings.iterations, stoppedBy: 'iterations' };
}

/** Gains below this are rounding. */
const TINY = 1e-7;

/** Serves whatever still fits without moving anything, until nothing does. */
export function fillUp(recreator: Recreator, hopeful: Uint8Array): void {
  const { state } = recreator;
  for (;;) {
    const absent = [...state.slotOf.keys()].filter((load) => state.slotOf[load] === -1 && hopeful[load] === 1);
    if (absent.length === 0 || insertAll(recreator, absent) === 0) return;
  }
}

/** Loads removed in this step, and a few of those that were unserved before. */
function absentLoads(state: DispatchState, hopeful: Uint8Array, random: RandomStream): number[] {
  const removed = new Set<number>();
  for (const change of state.log) if (change.kind === 'load') removed.add(change.load);
  const waiting: number[] = [];
  for (let load = 0; load < hopeful.length; load++) {
    if (hopeful[load] === 1 && state.slotOf[load] === -1 && !removed.has(load)) waiting.push(load);
  }
  for (let i = 0; i < MOST_RETRIED && i < waiting.length; i++) {
    const j = i + random.below(waiting.length - i);
    [waiting[i], waiting[j]] = [waiting[j] as number, waiting[i] as number];
    removed.add(waiting[i] as number);
  }
  return [...removed].sort((a, b) => a - b);
}

function meanDayCost({ plans }: DispatchState): number {
  const used = plans.filter((plan) => plan.version > 0);
  const total = used.reduce((sum, plan) => sum + plan.cost, 0);
  return used.length === 0 ? 1 : Math.max(total / used.length, TINY);
}

function keep(state: DispatchState): Kept {
  return {
    plans: [...state.plans],
    slotOf: state.slotOf.slice(),
    dayOf: state.dayOf.slice(),
    trainer: state.trial.trainer.slice(),
    iceLeftKg: state.iceLeftKg.slice(),
    cost: state.cost,
  };
}

function restore(state: DispatchState, kept: Kept): void {
  kept.plans.forEach((plan, i) => {
    state.plans[i] = plan;
  });
  state.slotOf.set(kept.slotOf);
  state.dayOf.set(kept.dayOf);
  state.trial.trainer.set(kept.trainer);
  state.iceLeftKg.set(kept.iceLeftKg);
  state.cost = kept.cost;
  state.log.length = 0;
}
