import type { RandomStream } from '../../../numerics/random-stream.ts';
import { happens, oneTo } from './chances.ts';
import { removeMarked } from './change-rows.ts';
import { judgeRow } from './judge.ts';
import { DEPOT, type RouteState } from './route-state.ts';
import { companionsOf, dropTraining } from './ties.ts';

/**
 * Ruin by strings of neighbouring stops (Christiaens & Vanden Berghe 2020, Transportation Science 54:417, sections 5.1 and 5.2):
 * a few trips near a random load each lose a string of stops about the one that is nearest to it.
 */
const MEAN_REMOVED = 10;
const LONGEST_STRING = 10;
/** Chance that a string is split, and that the part kept in its middle grows by one more stop. */
const SPLIT = 0.5;
const GROW = 0.01;

/** Chance that room is made about a load left behind, where there is one. */
const ABOUT_ABSENT = 0.5;

/** Loads taken out in a step, and room to say which. */
export interface Ruins {
  /** Loads that have no place now. */
  readonly absent: Int32Array;
  count: number;
  /** Room to put them in order: the loads, and 1 for each that is still to be put. */
  readonly order: Int32Array;
  readonly waits: Uint8Array;
  /** Loads about which a step may make room: all, or those that a search is to stay around. */
  centres: Int32Array;
  /** Whether the search stays around its centres, so that whole rows are given away there alone. */
  staysAround: boolean;
  /** Absent loads at the head that are not tried in this step. */
  resting: number;
  /** Whether loads that may not be moved cannot be driven without those taken off: the step is to be taken back. */
  stuck: boolean;
  /** Step in which a load was taken out or is tried again, and in which its trip was ruined. */
  readonly removedIn: Int32Array;
  readonly ruinedIn: Int32Array;
  /** Shelf on which a load last stood; -1 while it has had none. */
  readonly cameFrom: Int32Array;
  step: number;
  /** Most that all may cost after the step, for it to be kept. */
  mostCost: number;
  /** Nearest loads of each load, itself first: rows of `nearby`. */
  readonly neighbours: Int32Array;
  readonly nearby: number;
}

export function newRuins(loads: number, neighbours: Int32Array, nearby: number): Ruins {
  return {
    absent: new Int32Array(loads),
    count: 0,
    order: new Int32Array(loads),
    waits: new Uint8Array(loads),
    centres: Int32Array.from({ length: loads }, (_, visit) => visit),
    staysAround: false,
    resting: 0,
    stuck: false,
    removedIn: new Int32Array(loads).fill(-1),
    ruinedIn: new Int32Array(loads).fill(-1),
    cameFrom: new Int32Array(loads).fill(-1),
    step: 0,
    mostCost: Number.POSITIVE_INFINITY,
    neighbours,
    nearby,
  };
}

/**
 * Takes strings of stops off the trips around a load. What is taken off stands in `absent`.
 *
 * @param about the load; -1: a random one
 * @returns false where a load that may not be moved stands in the way, and the step is to be taken back
 */
export function removeStrings(state: RouteState, ruins: Ruins, about: number, random: RandomStream): boolean {
  beginRuin(ruins);
  const first = ruins.count;
  if (state.usedCount === 0) return true;
  const { neighbours, nearby, step } = ruins;
  const longest = Math.min(LONGEST_STRING, state.served / state.usedCount);
  let strings = oneTo(random, (4 * MEAN_REMOVED) / (1 + longest) - 1);
  const seed = about >= 0 ? about : drawCentre(ruins, random);
  for (let k = 0; k < nearby && strings > 0; k++) {
    const visit = neighbours[seed * nearby + k] as number;
    if (visit < 0) break;
    const slot = state.slotOf[visit] as number;
    if (slot < 0 || ruins.ruinedIn[visit] === step) continue;
    strings--;
    removeString(state, ruins, slot, visit, longest, random);
  }
  return removeTied(state, ruins, first);
}

function drawCentre({ absent, centres, count }: Ruins, random: RandomStream): number {
  if (count > 0 && happens(random, ABOUT_ABSENT)) return absent[random.pick(count)] as number;
  return centres[random.pick(centres.length)] as number;
}

function removeString(
  state: RouteState,
  ruins: Ruins,
  slot: number,
  visit: number,
  longest: number,
  random: RandomStream,
): void {
  const { load, stride } = state;
  const { step } = ruins;
  let at = slot * stride;
  while (load[at] !== visit) at++;
  let first = at;
  let last = at;
  while (load[first - 1] !== DEPOT) first--;
  while (load[last + 1] !== DEPOT) last++;
  for (let i = first; i <= last; i++) ruins.ruinedIn[load[i] as number] = step;
  const stops = last - first + 1;
  const length = oneTo(random, Math.min(stops, longest));
  let kept = 0;
  if (length > 1 && length < stops && happens(random, SPLIT)) {
    kept = 1;
    while (length + kept < stops && happens(random, GROW)) kept++;
  }
  const span = length + kept;
  const earliest = Math.max(first, at - span + 1);
  const latest = Math.min(at, last - span + 1);
  const start = earliest + random.pick(latest - earliest + 1);
  const gap = kept > 0 ? 1 + random.pick(length - 1) : length;
  for (let i = 0; i < span; i++) if (i < gap || i >= gap + kept) takeOut(state, ruins, load[start + i] as number);
  removeOrEmpty(state, ruins, slot);
}

function takeOut(state: RouteState, ruins: Ruins, visit: number): void {
  const { ties } = state.problem;
  if (ties?.pinned[visit] === 1) return;
  ruins.cameFrom[visit] = state.shelfOf[state.slotOf[visit] as number] as number;
  ruins.removedIn[visit] = ruins.step;
  ruins.absent[ruins.count++] = visit;
}

/** Takes the marked loads off a slot, and all of its loads where the rest could not be driven. */
function removeOrEmpty(state: RouteState, ruins: Ruins, slot: number): void {
  if (!removeMarked(state, slot, ruins.removedIn, ruins.step) && !emptyRow(state, ruins, slot)) ruins.stuck = true;
}

function beginRuin(ruins: Ruins): void {
  ruins.step++;
  ruins.stuck = false;
}

/** Takes every load off a slot that may be moved; whether what is left can be driven. */
function emptyRow(state: RouteState, ruins: Ruins, slot: number): boolean {
  const row = slot * state.stride;
  for (let i = row; i < row + (state.nodes[slot] as number); i++) {
    const visit = state.load[i] as number;
    if (visit !== DEPOT) takeOut(state, ruins, visit);
  }
  return removeMarked(state, slot, ruins.removedIn, ruins.step);
}

/** Takes loads off, beside those taken off in this step, and whatever may not stay without them. */
export function removeLoads(state: RouteState, ruins: Ruins, loads: readonly number[]): boolean {
  beginRuin(ruins);
  const first = ruins.count;
  for (const visit of loads) removeLoad(state, ruins, visit);
  return removeTied(state, ruins, first);
}

function removeLoad(state: RouteState, ruins: Ruins, visit: number): void {
  const slot = state.slotOf[visit] as number;
  if (slot < 0) return;
  takeOut(state, ruins, visit);
  removeOrEmpty(state, ruins, slot);
}

/**
 * Takes off what is tied to the loads taken off, `absent` from `first` on, and has every row that was touched judged anew; one that
 * breaks a rule without them is emptied.
 *
 * @returns false where a row would have to be emptied of loads that may not be moved: the step is to be taken back
 */
export function removeTied(state: RouteState, ruins: Ruins, first: number): boolean {
  const { backup, problem } = state;
  const { ties } = problem;
  if (ties === null) return true;
  let next = first;
  for (let at = 0; at < backup.count; ) {
    for (; next < ruins.count; next++) {
      const visit = ruins.absent[next] as number;
      const going = companionsOf(ties, visit);
      dropTraining(ties, visit);
      for (const other of going) removeLoad(state, ruins, other);
    }
    const slot = backup.slot[at] as number;
    if (judgeRow(state, slot)) {
      at++;
      continue;
    }
    if (!emptyRow(state, ruins, slot) || !judgeRow(state, slot)) return false;
    at = 0;
  }
  return !ruins.stuck;
}
