import type { RandomStream } from '../../numerics/random-stream.ts';
import type { DispatchState } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { type Candidates, type InsertionMemory, insertLoad } from './insertion.ts';

/** Chance that a slot is passed over (Christiaens & Vanden Berghe 2020, section 5.3). */
const BLINK = 0.01;

type Order = (load: TaskLoad) => number;

/** Orders of insertion and how often each is drawn: heaviest, farthest, nearest, narrowest window; random with what is left of 1. */
const ORDERS: readonly { readonly share: number; readonly key: Order | 'far' | 'near' }[] = [
  { share: 0.35, key: (load) => -load.kg / 1000 - load.coolLitres },
  { share: 0.15, key: 'far' },
  { share: 0.1, key: 'near' },
  { share: 0.1, key: (load) => load.latest - load.earliest },
];

export interface Recreator {
  readonly state: DispatchState;
  readonly memory: InsertionMemory;
  readonly candidates: Candidates;
  /** Minutes from the depot to each load's place. */
  readonly minutesOut: Float64Array;
}

/** Inserts loads in a drawn order, seed before inoculant, passing over slots now and then. */
export function recreate(recreator: Recreator, loads: number[], random: RandomStream): void {
  const keys = drawKeys(recreator, loads, random);
  const blink = () => random.next() < BLINK;
  for (const load of orderBy(recreator, loads, keys)) {
    insertLoad(recreator.state, recreator.memory, recreator.candidates, load, blink);
  }
}

/** Inserts loads without chance: narrowest window first, then the dearest to leave behind. */
export function insertAll(recreator: Recreator, loads: readonly number[]): number {
  const { state, memory, candidates } = recreator;
  const window = (index: number) => {
    const load = state.task.loads[index] as TaskLoad;
    return load.latest - load.earliest;
  };
  const keys = new Map(loads.map((index) => [index, window(index)]));
  let served = 0;
  for (const load of orderBy(recreator, [...loads], keys)) {
    if (insertLoad(state, memory, candidates, load, never)) served++;
  }
  return served;
}

/** No blinking. */
export const never = () => false;

function drawKeys({ state, minutesOut }: Recreator, loads: readonly number[], random: RandomStream) {
  let draw = random.next();
  const order = ORDERS.find(({ share }) => {
    draw -= share;
    return draw < 0;
  });
  const keyOf = (index: number): number => {
    if (!order) return random.next();
    if (order.key === 'far') return -(minutesOut[index] as number);
    if (order.key === 'near') return minutesOut[index] as number;
    return order.key(state.task.loads[index] as TaskLoad);
  };
  return new Map(loads.map((index) => [index, keyOf(index)]));
}

/** Dry goods first, because inoculant waits for its seed; then by key, dearest to leave behind, index. */
function orderBy({ state }: Recreator, loads: number[], keys: ReadonlyMap<number, number>): number[] {
  const { seedLinks, loads: all } = state.task;
  const waits = (index: number) => ((seedLinks.dryOf[index] as readonly number[]).length > 0 ? 1 : 0);
  const cost = (index: number) => (all[index] as TaskLoad).unservedCost;
  const key = (index: number) => keys.get(index) as number;
  return loads.sort((a, b) => waits(a) - waits(b) || key(a) - key(b) || cost(b) - cost(a) || a - b);
}
