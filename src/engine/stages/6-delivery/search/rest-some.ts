import type { RandomStream } from '../../../numerics/random-stream.ts';
import type { Ruins } from './remove-strings.ts';
import type { RouteState } from './route-state.ts';
import type { Ties } from './ties.ts';

/** Loads left behind that are tried again in one step, beside the inoculant that waits for them. */
const MOST_RETRIED = 30;

/**
 * Draws those of the loads left behind that are tried again in a step, beside what it has taken out: such as a row changed in this step
 * may have room for, for nowhere else has anything changed; with seed, the inoculant that stayed behind with it. The others rest.
 *
 * @param before loads that were left behind before the step, at the head of `absent`
 */
export function restSome(state: RouteState, ties: Ties, ruins: Ruins, before: number, random: RandomStream): void {
  const { absent, removedIn, step } = ruins;
  let resting = before;
  for (let i = before - 1; i >= 0 && before - resting < MOST_RETRIED; i--) {
    const j = random.pick(i + 1);
    const visit = absent[j] as number;
    absent[j] = absent[i] as number;
    absent[i] = visit;
    if (waits(state, ties, visit) || !mayFindRoom(state, visit)) continue;
    removedIn[visit] = step;
    absent[i] = absent[--resting] as number;
    absent[resting] = visit;
  }
  for (let i = resting - 1; i >= 0; i--) {
    const visit = absent[i] as number;
    if (!waits(state, ties, visit) || !comesWith(ties, removedIn, step, visit)) continue;
    absent[i] = absent[--resting] as number;
    absent[resting] = visit;
  }
  ruins.resting = resting;
}

/** Whether a load may not come because none of its seed does. */
function waits({ slotOf }: RouteState, { seedLinks }: Ties, visit: number): boolean {
  const seed = seedLinks.dryOf[visit] as readonly number[];
  if (seed.length === 0 || seedLinks.mayGoAlone[visit] === 1) return false;
  for (let i = 0; i < seed.length; i++) if ((slotOf[seed[i] as number] as number) >= 0) return false;
  return true;
}

/** Whether seed of an inoculant is put back, or tried again, in this step. */
function comesWith({ seedLinks }: Ties, removedIn: Int32Array, step: number, visit: number): boolean {
  const seed = seedLinks.dryOf[visit] as readonly number[];
  for (let i = 0; i < seed.length; i++) if (removedIn[seed[i] as number] === step) return true;
  return false;
}

/** Whether a vehicle whose row was changed in this step may serve a load at all, its weight looked at and no more. */
function mayFindRoom({ backup, shelfOf, problem }: RouteState, visit: number): boolean {
  const { kg, shelfFrom, shelfTo } = problem.visits;
  for (let i = 0; i < backup.count; i++) {
    const slot = backup.slot[i] as number;
    const shelf = shelfOf[slot] as number;
    if (shelf < (shelfFrom[visit] as number) || shelf >= (shelfTo[visit] as number)) continue;
    if ((kg[visit] as number) <= (problem.slots.payloadKg[slot] as number)) return true;
  }
  return false;
}
