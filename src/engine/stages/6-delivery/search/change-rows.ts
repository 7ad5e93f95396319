import { refreshRow } from './refresh-row.ts';
import { DEPOT, markUsed, type RouteState } from './route-state.ts';
import { takeBackTraining } from './ties.ts';

/** Begins a step: what is changed from here on can be taken back. */
export function beginStep(state: RouteState): void {
  const { backup } = state;
  for (let i = 0; i < backup.count; i++) backup.at[backup.slot[i] as number] = -1;
  backup.count = 0;
  backup.cost = state.cost;
  const { ties } = state.problem;
  if (ties) ties.trainerLog.length = 0;
}

/** Copies a row before its first change in a step. */
function touch(state: RouteState, slot: number): void {
  const { backup, stride } = state;
  if ((backup.at[slot] as number) >= 0) return;
  const at = backup.count++;
  backup.at[slot] = at;
  backup.slot[at] = slot;
  const count = state.nodes[slot] as number;
  backup.nodes[at] = count;
  backup.version[at] = state.version[slot] as number;
  backup.extraCost[at] = state.extraCost[slot] as number;
  backup.iced[at] = state.iced[slot] as number;
  const [from, to] = [slot * stride, at * stride];
  for (let i = 0; i < count; i++) backup.load[to + i] = state.load[from + i] as number;
}

/** Takes back the step: every touched row is as it was, version included. */
export function takeBack(state: RouteState): void {
  const { backup, stride } = state;
  if (state.problem.ties) takeBackTraining(state, state.problem.ties);
  for (let at = 0; at < backup.count; at++) {
    const slot = backup.slot[at] as number;
    for (let i = slot * stride; i < slot * stride + (state.nodes[slot] as number); i++) {
      const visit = state.load[i] as number;
      if (visit !== DEPOT && state.slotOf[visit] === slot) {
        state.slotOf[visit] = -1;
        state.served--;
      }
    }
  }
  for (let at = 0; at < backup.count; at++) {
    const slot = backup.slot[at] as number;
    const count = backup.nodes[at] as number;
    const [from, to] = [at * stride, slot * stride];
    for (let i = 0; i < count; i++) putNode(state, slot, to + i, backup.load[from + i] as number);
    changeLength(state, slot, count);
    state.served += countVisits(state, slot);
    refreshRow(state, slot);
    state.version[slot] = backup.version[at] as number;
    state.extraCost[slot] = backup.extraCost[at] as number;
    state.iced[slot] = backup.iced[at] as number;
    state.slotCost[slot] = (state.slotCost[slot] as number) + (backup.extraCost[at] as number);
  }
  state.cost = backup.cost;
}

function countVisits(state: RouteState, slot: number): number {
  let visits = 0;
  const row = slot * state.stride;
  for (let i = row; i < row + (state.nodes[slot] as number); i++) if (state.load[i] !== DEPOT) visits++;
  return visits;
}

function putNode(state: RouteState, slot: number, at: number, visit: number): void {
  state.load[at] = visit;
  state.place[at] = visit === DEPOT ? 0 : (state.problem.visits.place[visit] as number);
  if (visit !== DEPOT) state.slotOf[visit] = slot;
}

function changeLength(state: RouteState, slot: number, nodes: number): void {
  const before = state.nodes[slot] as number;
  state.nodes[slot] = nodes;
  if (before === 0 && nodes > 0) markUsed(state, slot, true);
  if (before > 0 && nodes === 0) markUsed(state, slot, false);
}

/**
 * Puts a load into a row: behind node `after`, or where `alone` on a trip of its own that begins at depot node `after`. An idle
 * slot takes it on a trip of its own at 0.
 *
 * @returns whether the hours are kept. Where not, the caller takes it out again
 */
export function insertVisit(state: RouteState, slot: number, visit: number, after: number, alone: boolean): boolean {
  touch(state, slot);
  const row = slot * state.stride;
  const count = state.nodes[slot] as number;
  state.cost -= state.slotCost[slot] as number;
  if (count === 0) {
    putNode(state, slot, row, DEPOT);
    putNode(state, slot, row + 1, visit);
    putNode(state, slot, row + 2, DEPOT);
    changeLength(state, slot, 3);
  } else {
    const more = alone ? 2 : 1;
    for (let i = row + count - 1; i > row + after; i--) {
      state.load[i + more] = state.load[i] as number;
      state.place[i + more] = state.place[i] as number;
    }
    putNode(state, slot, row + after + 1, visit);
    if (alone) putNode(state, slot, row + after + 2, DEPOT);
    changeLength(state, slot, count + more);
  }
  state.served++;
  const fits = refreshRow(state, slot);
  state.slotCost[slot] = (state.slotCost[slot] as number) + (state.extraCost[slot] as number);
  state.cost += (state.slotCost[slot] as number) - (state.problem.visits.unservedCost[visit] as number);
  return fits;
}

/**
 * Lays a whole row on a slot that stands idle, the depot at its ends and between its trips; who trains and what takes ice is set by the
 * caller.
 *
 * @returns whether the hours are kept. Where not, the caller takes the step back
 */
export function layRow(state: RouteState, slot: number, nodes: readonly number[]): boolean {
  touch(state, slot);
  nodes.forEach((visit, i) => {
    putNode(state, slot, slot * state.stride + i, visit);
    if (visit === DEPOT) return;
    state.served++;
    state.cost -= state.problem.visits.unservedCost[visit] as number;
  });
  changeLength(state, slot, nodes.length);
  const fits = refreshRow(state, slot);
  state.cost += state.slotCost[slot] as number;
  return fits;
}

/** Works a row out anew after the work of a load has changed; whether the hours are kept. Where not, the caller takes the step back. */
export function reworkRow(state: RouteState, slot: number): boolean {
  touch(state, slot);
  state.cost -= state.slotCost[slot] as number;
  const fits = refreshRow(state, slot);
  addExtra(state, slot);
  state.cost += state.slotCost[slot] as number;
  return fits;
}

/** Takes one load out of a row, and with a trip's last load the trip. */
export function removeVisit(state: RouteState, slot: number, visit: number): boolean {
  state.goes[visit] = 1;
  const fits = removeMarked(state, slot, state.goes, 1);
  state.goes[visit] = 0;
  return fits;
}

/**
 * Takes out of a row every load whose mark is `mark`, and with a trip's last load the trip.
 *
 * @returns whether what is left keeps the hours: legs that are not the shortest way can make less take longer
 */
export function removeMarked(state: RouteState, slot: number, marks: Int32Array, mark: number): boolean {
  touch(state, slot);
  const { load, place, stride, problem } = state;
  const row = slot * stride;
  const end = row + (state.nodes[slot] as number);
  state.cost -= state.slotCost[slot] as number;
  let to = row;
  for (let i = row; i < end; i++) {
    const visit = load[i] as number;
    if (visit !== DEPOT && marks[visit] === mark) {
      state.slotOf[visit] = -1;
      state.served--;
      state.cost += problem.visits.unservedCost[visit] as number;
      continue;
    }
    if (visit === DEPOT && to > row && load[to - 1] === DEPOT) continue;
    load[to] = visit;
    place[to] = place[i] as number;
    to++;
  }
  changeLength(state, slot, to - row <= 1 ? 0 : to - row);
  const fits = refreshRow(state, slot);
  addExtra(state, slot);
  state.cost += state.slotCost[slot] as number;
  return fits;
}

/** Adds to the cost of a row worked out anew what the judge last added to it: nothing to one that stands idle. */
function addExtra(state: RouteState, slot: number): void {
  if (state.nodes[slot] === 0) {
    state.extraCost[slot] = 0;
    state.iced[slot] = 0;
  }
  state.slotCost[slot] = (state.slotCost[slot] as number) + (state.extraCost[slot] as number);
}

/**
 * Exchanges the rows of two slots, one of which may stand idle.
 *
 * @returns whether both keep the hours. Where not, the caller exchanges them back
 */
export function swapRows(state: RouteState, a: number, b: number): boolean {
  touch(state, a);
  touch(state, b);
  const { stride, load } = state;
  state.cost -= (state.slotCost[a] as number) + (state.slotCost[b] as number);
  const [atA, atB] = [state.nodes[a] as number, state.nodes[b] as number];
  for (let i = 0; i < Math.max(atA, atB); i++) {
    const [fromA, fromB] = [load[a * stride + i] as number, load[b * stride + i] as number];
    if (i < atB) putNode(state, a, a * stride + i, fromB);
    if (i < atA) putNode(state, b, b * stride + i, fromA);
  }
  changeLength(state, a, atB);
  changeLength(state, b, atA);
  return refreshBoth(state, a, b);
}

/**
 * Exchanges the tails of two rows: a keeps its nodes up to `endA`, b those up to `endB`, and each goes on with what the other
 * gives up. An idle row b takes the whole tail, `endB` being 0.
 *
 * @returns whether both keep the hours. Where not, the caller takes the step back
 */
export function swapTails(state: RouteState, a: number, endA: number, b: number, endB: number): boolean {
  touch(state, a);
  touch(state, b);
  const { stride, load, backup } = state;
  state.cost -= (state.slotCost[a] as number) + (state.slotCost[b] as number);
  const [countA, countB] = [state.nodes[a] as number, state.nodes[b] as number];
  const rowA = a * stride;
  const rowB = b * stride;
  // Two depots must not stand side by side: a trip that brings nothing would move every node behind it once it is dropped.
  const endsTrip = countB > 0 && load[rowB + endB] === DEPOT && load[rowA + endA + 1] === DEPOT;
  const fromA = endsTrip ? endA + 2 : endA + 1;
  const tailA = countA - fromA;
  const tailB = countB === 0 ? 1 : countB - endB - 1;
  for (let i = 0; i < tailB; i++) backup.tail[i] = countB === 0 ? DEPOT : (load[rowB + endB + 1 + i] as number);
  if (countB === 0) putNode(state, b, rowB, DEPOT);
  for (let i = 0; i < tailA; i++) putNode(state, b, rowB + endB + 1 + i, load[rowA + fromA + i] as number);
  for (let i = 0; i < tailB; i++) putNode(state, a, rowA + endA + 1 + i, backup.tail[i] as number);
  changeLength(state, a, trimmed(state, rowA, endA + 1 + tailB));
  changeLength(state, b, trimmed(state, rowB, endB + 1 + tailA));
  return refreshBoth(state, a, b);
}

/** Nodes of a row that is not empty: 0 where nothing but the depot is left. */
function trimmed(state: RouteState, row: number, count: number): number {
  return count === 1 || (count === 2 && state.load[row + 1] === DEPOT) ? 0 : count;
}

/** Works out two rows whose old cost has been taken off. */
function refreshBoth(state: RouteState, a: number, b: number): boolean {
  const fitsA = refreshRow(state, a);
  const fitsB = refreshRow(state, b);
  for (let i = 0; i < 2; i++) {
    const slot = i === 0 ? a : b;
    addExtra(state, slot);
    state.cost += state.slotCost[slot] as number;
  }
  return fitsA && fitsB;
}
