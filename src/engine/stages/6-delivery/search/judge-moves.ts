import type { RandomStream } from '../../../numerics/random-stream.ts';
import { swapRows } from './change-rows.ts';
import { couldTake } from './exchange-vehicles.ts';
import { judgeRow } from './judge.ts';
import type { Ruins } from './remove-strings.ts';
import type { RouteState } from './route-state.ts';
import { mayStay } from './ties.ts';

/** Whether two rows that were just exchanged, whole or in part, keep what ties their loads and what the judge knows. */
export function bothHold(state: RouteState, a: number, b: number): boolean {
  const { ties, judge } = state.problem;
  if (ties && !(mayStay(state, ties, a) && mayStay(state, ties, b))) return false;
  if (judge === null) return true;
  state.iced[a] = 0;
  state.iced[b] = 0;
  return judgeRow(state, a) && judgeRow(state, b);
}

/** Exchanges two rows where that costs less, everything judged; leaves them as they were where it does not. */
export function swapIfCheaper(state: RouteState, a: number, b: number): void {
  const { cost, extraCost, iced, version } = state;
  const [extraA, extraB] = [extraCost[a] as number, extraCost[b] as number];
  const [icedA, icedB] = [iced[a] as number, iced[b] as number];
  const [versionA, versionB] = [version[a] as number, version[b] as number];
  if (swapRows(state, a, b) && bothHold(state, a, b) && state.cost < cost) return;
  swapRows(state, a, b);
  for (const [slot, extra, ice, was] of [
    [a, extraA, icedA, versionA],
    [b, extraB, icedB, versionB],
  ] as const) {
    state.slotCost[slot] = (state.slotCost[slot] as number) + extra - (extraCost[slot] as number);
    extraCost[slot] = extra;
    iced[slot] = ice;
    version[slot] = was;
  }
  state.cost = cost;
}

const DRAWS = 8;

/**
 * Gives all that one slot does to another that stands idle, whatever that costs: insertion alone seldom does, because it pays for a
 * vehicle-day with its first load, and for a whole day's promises one by one.
 *
 * @returns whether it was done; to be called first in a step, and taken back where it was not
 */
export function handOnRow(state: RouteState, { centres, staysAround }: Ruins, random: RandomStream): boolean {
  const centre = staysAround ? (centres[random.pick(centres.length)] as number) : -1;
  const from = staysAround ? (state.slotOf[centre] as number) : drawSlot(state, random, true);
  const to = from < 0 ? -1 : drawSlot(state, random, false);
  if (to < 0 || !couldTake(state, from, to)) return false;
  return swapRows(state, from, to) && bothHold(state, from, to);
}

/** Tries a few slots for one that is in use or idle, as wanted; -1 where none of them is. */
function drawSlot({ problem, nodes }: RouteState, random: RandomStream, inUse: boolean): number {
  for (let i = 0; i < DRAWS; i++) {
    const slot = random.pick(problem.slots.count);
    if ((nodes[slot] as number) > 0 === inUse) return slot;
  }
  return -1;
}
