import type { RouteState } from './route-state.ts';

/**
 * What rows cannot know of themselves, asked of whoever states the problem: the heat along a trip and the ice that is left for it.
 * Asked for the few best rows only; the screen is the price of a place by kilometres, hours and the day.
 */
export interface Judge {
  /**
   * Cost of a row beyond its kilometres, its day and its visits; Infinity where it breaks a rule that the row does not know. Writes
   * which of its trips take ice into `state.iced`, a bit a trip.
   */
  extraCost(state: RouteState, slot: number): number;
  /** What a load's price on a shelf depends on beside the row (ice that is left, training), as a number from 0 up to, not including, 1. */
  markOf(state: RouteState, visit: number, shelf: number): number;
}

/** Works out what the judge adds to a row. Whether the row may stay; where not, its cost is what it was. */
export function judgeRow(state: RouteState, slot: number): boolean {
  const { judge } = state.problem;
  if (judge === null) return true;
  const extra = state.nodes[slot] === 0 ? 0 : judge.extraCost(state, slot);
  if (extra === Number.POSITIVE_INFINITY) return false;
  setExtra(state, slot, extra);
  return true;
}

/** Takes over what the judge adds to a row, where it was asked what certain trips with ice come to. */
export function holdExtra(state: RouteState, slot: number, extra: number, iced: number): void {
  state.iced[slot] = iced;
  setExtra(state, slot, extra);
}

function setExtra(state: RouteState, slot: number, extra: number): void {
  const more = extra - (state.extraCost[slot] as number);
  state.extraCost[slot] = extra;
  state.slotCost[slot] = (state.slotCost[slot] as number) + more;
  state.cost += more;
}
