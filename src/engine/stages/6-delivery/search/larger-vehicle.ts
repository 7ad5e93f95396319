import { idleSlotOf, type RouteState } from './route-state.ts';

/** Kilometres that a visit adds, for `findLarger`: in an array, so that they are not put on the heap on the way. */
export const addedKm = new Float64Array(1);

/** Cheapest of the larger vehicles found last: what it costs more, and the slot; -1 where there is none. */
const more = new Float64Array(1);
let larger = -1;

/** What the vehicle found last costs more than the one the row has now, kilometres of the visit included; Infinity: none. */
export function largerCost(): number {
  return more[0] as number;
}

/** The slot found last; -1 where there is none. */
export function largerSlot(): number {
  return larger;
}

/**
 * Looks for the cheapest vehicle of the same shelf and roads that could take over a slot's only trip with one load more: one that
 * stands idle, or one whose own trips the slot's vehicle could take over in exchange.
 * The kilometres that the visit adds stand in `addedKm`.
 */
export function findLarger(state: RouteState, visit: number, slot: number): void {
  const { slots, visits } = state.problem;
  const shelf = state.shelfOf[slot] as number;
  const kg = (state.mostKg[slot] as number) + (visits.kg[visit] as number);
  const litres = (state.mostLitres[slot] as number) + (visits.litres[visit] as number);
  const kmThen = (state.km[slot] as number) + (addedKm[0] as number);
  const now = (slots.dayCost[slot] as number) + (state.km[slot] as number) * (slots.kmCost[slot] as number);
  let least = Number.POSITIVE_INFINITY;
  larger = -1;
  const last = state.groupStart[shelf + 1] as number;
  for (let group = state.groupStart[shelf] as number; group < last; group++) {
    const other = idleSlotOf(state, group);
    if (other < 0 || slots.matrix[other] !== slots.matrix[slot]) continue;
    if (kg > (slots.payloadKg[other] as number) || litres > (slots.coolLitres[other] as number)) continue;
    const then = (slots.dayCost[other] as number) + kmThen * (slots.kmCost[other] as number);
    if (then - now < least) {
      least = then - now;
      larger = other;
    }
  }
  const start = state.problem.shelfStart[shelf] as number;
  for (let i = start; i < start + (state.used[shelf] as number); i++) {
    const other = state.usedSlots[i] as number;
    if (state.groupAt[other] === state.groupAt[slot] || slots.matrix[other] !== slots.matrix[slot]) continue;
    if (kg > (slots.payloadKg[other] as number) || litres > (slots.coolLitres[other] as number)) continue;
    if ((state.mostKg[other] as number) > (slots.payloadKg[slot] as number)) continue;
    if ((state.mostLitres[other] as number) > (slots.coolLitres[slot] as number)) continue;
    const theirs = (state.km[other] as number) * ((slots.kmCost[slot] as number) - (slots.kmCost[other] as number));
    const ours = kmThen * (slots.kmCost[other] as number) - (state.km[slot] as number) * (slots.kmCost[slot] as number);
    if (ours + theirs < least) {
      least = ours + theirs;
      larger = other;
    }
  }
  more[0] = least;
}
