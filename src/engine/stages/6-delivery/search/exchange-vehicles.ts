import { swapRows } from './change-rows.ts';
import { swapIfCheaper } from './judge-moves.ts';
import { DEPOT, idleSlotOf, type RouteState } from './route-state.ts';
import type { PlaceMatrix } from './routing-problem.ts';
import { findRowDays, rowDays, type Ties } from './ties.ts';

/** Gains below this are rounding. */
const TINY = 1e-7;

/**
 * Gives the rows changed in a step to cheaper vehicles or days: to one that stands idle, or in exchange with another row. Insertion
 * alone cannot, because it pays for a vehicle with its first load.
 */
export function exchangeVehicles(state: RouteState): void {
  const { backup } = state;
  const touched = backup.count;
  for (let i = 0; i < touched; i++) {
    const slot = backup.slot[i] as number;
    // A row that was only tried out is as it was.
    if (state.version[slot] !== backup.version[i] && (state.nodes[slot] as number) > 0) exchangeRow(state, slot);
  }
}

function exchangeRow(state: RouteState, slot: number): void {
  const { problem } = state;
  const { ties } = problem;
  const { shelfFrom, shelfTo } = problem.visits;
  // The first load behind the depot tells where the row may be at all.
  const visit = state.load[slot * state.stride + 1] as number;
  let shelf = shelfFrom[visit] as number;
  let shelves = shelfTo[visit] as number;
  if (ties) {
    findRowDays(state, ties, slot);
    shelves = Math.min(shelves, shelf + (rowDays[1] as number) + 1);
    shelf += rowDays[0] as number;
  }
  const cost = (state.slotCost[slot] as number) - (state.extraCost[slot] as number);
  let bestGain = TINY;
  let bestOther = -1;
  for (; shelf < shelves; shelf++) {
    const lastGroup = state.groupStart[shelf + 1] as number;
    for (let group = state.groupStart[shelf] as number; group < lastGroup; group++) {
      const other = idleSlotOf(state, group);
      if (other < 0 || state.groupAt[slot] === group) continue;
      priceOn(state, slot, other);
      const gain = cost - (there[0] as number);
      if (gain > bestGain) {
        bestGain = gain;
        bestOther = other;
      }
    }
    const start = problem.shelfStart[shelf] as number;
    const end = start + (state.used[shelf] as number);
    for (let i = start; i < end; i++) {
      const other = state.usedSlots[i] as number;
      if (state.groupAt[slot] === state.groupAt[other]) continue;
      priceOn(state, slot, other);
      if (there[0] === Number.POSITIVE_INFINITY) continue;
      const before = cost + (state.slotCost[other] as number) - (state.extraCost[other] as number);
      const left = before - (there[0] as number);
      priceOn(state, other, slot);
      const gain = left - (there[0] as number);
      if (gain > bestGain && (ties === null || comesOnDayOf(state, ties, other, slot))) {
        bestGain = gain;
        bestOther = other;
      }
    }
  }
  if (bestOther >= 0 && problem.judge) swapIfCheaper(state, slot, bestOther);
  else if (bestOther >= 0 && !swapRows(state, slot, bestOther)) swapRows(state, slot, bestOther);
}

/** Whether a slot's row could come on the day of another slot. */
function comesOnDayOf(state: RouteState, ties: Ties, slot: number, other: number): boolean {
  findRowDays(state, ties, slot);
  const day = ties.day[other] as number;
  return day >= (rowDays[0] as number) && day <= (rowDays[1] as number);
}

/** The price made last: in an array, so that it is not put on the heap. */
const there = new Float64Array(1);

/** Whether weight, volume and visits allow a slot's row on another slot. The hours are not looked at. */
export function couldTake(state: RouteState, slot: number, other: number): boolean {
  priceOn(state, slot, other);
  return there[0] !== Number.POSITIVE_INFINITY;
}

/** What a slot's row would cost on another slot, but for what a judge adds; Infinity where weight, volume or a visit forbids it. The hours are not looked at. */
function priceOn(state: RouteState, slot: number, other: number): void {
  there[0] = Number.POSITIVE_INFINITY;
  const { problem, load, place } = state;
  const { slots, visits } = problem;
  if ((state.mostKg[slot] as number) > (slots.payloadKg[other] as number)) return;
  if ((state.mostLitres[slot] as number) > (slots.coolLitres[other] as number)) return;
  const kmCost = slots.kmCost[other] as number;
  const dayCost = slots.dayCost[other] as number;
  const sameShelf = state.shelfOf[slot] === state.shelfOf[other];
  const sameMatrix = slots.matrix[slot] === slots.matrix[other];
  if (sameShelf && sameMatrix) {
    there[0] = dayCost + (state.km[slot] as number) * kmCost + (state.visitCost[slot] as number);
    return;
  }
  const { kmFrom, size } = problem.matrices[slots.matrix[other] as number] as PlaceMatrix;
  const shelves = problem.shelfStart.length - 1;
  const shelf = state.shelfOf[other] as number;
  const row = slot * state.stride;
  const first = load[row + 1] as number;
  if (shelf < (visits.shelfFrom[first] as number) || shelf >= (visits.shelfTo[first] as number)) return;
  let km = sameMatrix ? (state.km[slot] as number) : 0;
  let visitCost = 0;
  for (let i = row; i < row + (state.nodes[slot] as number) - 1; i++) {
    const visit = load[i] as number;
    if (visit !== DEPOT) visitCost += visits.shelfCost[visit * shelves + shelf] as number;
    if (!sameMatrix) km += kmFrom[(place[i] as number) * size + (place[i + 1] as number)] as number;
  }
  there[0] = dayCost + km * kmCost + visitCost;
}
