import { insertVisit, removeVisit } from './change-rows.ts';
import { ALONE, forgetPlaces, NEVER, nextPlace, placePrice } from './find-place.ts';
import { judgeRow } from './judge.ts';
import type { PriceMemory } from './price-insertion.ts';
import type { RouteState } from './route-state.ts';
import { dropTraining, takeOnTraining } from './ties.ts';

/**
 * Makes the price of a load and slot exact: place by place in the order of their bounds, each is tried and judged, until the next
 * bound is no less than the best price.
 *
 * @param enough price from which on no other slot is cheaper: where the cheapest place costs no more, the load stays there
 * @returns whether the load stays; where not, the row is left as it was
 */
export function judgePrice(
  state: RouteState,
  memory: PriceMemory,
  visit: number,
  slot: number,
  enough: number,
): boolean {
  const entry = (memory.base[visit] as number) + slot;
  const before = state.slotCost[slot] as number;
  const cost = state.cost;
  const version = state.version[slot] as number;
  const extra = state.extraCost[slot] as number;
  const iced = state.iced[slot] as number;
  let best = NEVER;
  let bestWhere = 0;
  let next = nextPlace(state, visit, slot);
  while (placePrice() < best) {
    const where = next;
    next = nextPlace(state, visit, slot);
    const price = putAt(state, visit, slot, where) ? (state.slotCost[slot] as number) - before : NEVER;
    if (price <= enough && price <= placePrice() && price < best) {
      forgetPlaces();
      return true;
    }
    takeOut(state, visit, slot);
    state.version[slot] = version;
    state.extraCost[slot] = extra;
    state.iced[slot] = iced;
    state.slotCost[slot] = before;
    state.cost = cost;
    if (price >= best) continue;
    best = price;
    bestWhere = where;
  }
  forgetPlaces();
  memory.price[entry] = best;
  memory.where[entry] = bestWhere;
  memory.exact[entry] = 1;
  return false;
}

/** Puts a load at a place. Whether every rule is kept; where not, the caller takes it out again. */
export function putAt(state: RouteState, visit: number, slot: number, where: number): boolean {
  const { ties } = state.problem;
  if (ties) takeOnTraining(state, ties, visit);
  return insertVisit(state, slot, visit, where >> 2, (where & ALONE) !== 0) && judgeRow(state, slot);
}

export function takeOut(state: RouteState, visit: number, slot: number): void {
  const { ties } = state.problem;
  removeVisit(state, slot, visit);
  if (ties) dropTraining(ties, visit);
}
