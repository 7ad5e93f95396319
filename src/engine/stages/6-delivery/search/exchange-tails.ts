import { swapTails, takeBack } from './change-rows.ts';
import { bothHold } from './judge-moves.ts';
import type { Ruins } from './remove-strings.ts';
import { DEPOT, idleSlotOf, type RouteState, SLACK } from './route-state.ts';
import type { PlaceMatrix } from './routing-problem.ts';

/** Neighbours looked at. */
const NEAREST = 20;
/** Sums of weights carry rounding. */
const WEIGHT_SLACK = 1e-6;

/** The price made last: in an array, so that it is not put on the heap. */
const price = new Float64Array(1);

/**
 * Cuts the row of a load behind it and lets it go on where a near load's row goes on, that row taking over the tail; or gives the
 * tail to an idle vehicle (2-opt*, Potvin & Rousseau 1995, J. Oper. Res. Soc. 46:1433). The cheapest such exchange is made
 * whether it gains or not: strings alone seldom change how many rows there are.
 *
 * @param split whether the tail is given to an idle vehicle in any case
 * @returns whether an exchange was made; to be called first in a step
 */
export function exchangeTails(state: RouteState, ruins: Ruins, visit: number, split: boolean): boolean {
  const slot = state.slotOf[visit] ?? -1;
  if (slot < 0) return false;
  const { stride, load, problem } = state;
  const row = slot * stride;
  let at = row;
  while (load[at] !== visit) at++;
  const end = at - row;
  const matrix = problem.matrices[problem.slots.matrix[slot] as number] as PlaceMatrix;
  let least = Number.POSITIVE_INFINITY;
  let bestSlot = -1;
  let bestEnd = 0;
  const { neighbours, nearby } = ruins;
  for (let k = 1; k < nearby && k <= NEAREST && !split; k++) {
    const other = neighbours[(visit * nearby + k) as number] as number;
    if (other < 0) break;
    const otherSlot = state.slotOf[other] as number;
    if (otherSlot < 0 || otherSlot === slot || state.shelfOf[otherSlot] !== state.shelfOf[slot]) continue;
    if (problem.slots.matrix[otherSlot] !== problem.slots.matrix[slot]) continue;
    let node = otherSlot * stride;
    while (load[node] !== other) node++;
    if (!haveRoom(state, slot, end, otherSlot, node - 1 - otherSlot * stride)) continue;
    priceTails(state, matrix, slot, at, otherSlot, node - 1);
    if ((price[0] as number) < least) {
      least = price[0] as number;
      bestSlot = otherSlot;
      bestEnd = node - 1 - otherSlot * stride;
    }
  }
  const idle = idleSlotOf(state, state.groupAt[slot] as number);
  if (idle >= 0 && load[at + 1] !== DEPOT) {
    const next = state.place[at + 1] as number;
    const kmCost = problem.slots.kmCost[slot] as number;
    const km =
      (matrix.kmFrom[next] as number) + (matrix.kmTo[state.place[at] as number] as number) - (state.edge[at] as number);
    if (km * kmCost + (problem.slots.dayCost[slot] as number) < least) {
      bestSlot = idle;
      bestEnd = 0;
    }
  }
  if (bestSlot < 0) return false;
  if (swapTails(state, slot, end, bestSlot, bestEnd) && bothHold(state, slot, bestSlot)) return true;
  takeBack(state);
  return false;
}

/** Whether rows have the length for each other's tails. */
function haveRoom({ nodes, stride }: RouteState, slotA: number, a: number, slotB: number, b: number): boolean {
  const [tailA, tailB] = [(nodes[slotA] as number) - a, (nodes[slotB] as number) - b];
  return a + tailB <= stride && b + tailA <= stride;
}

/** Whether a vehicle has room for the trips that another one's row makes behind the trip that a node belongs to. */
function tripsFit(state: RouteState, slot: number, other: number, node: number): boolean {
  const { problem, stride, nodes, load, tripKg, tripLitres } = state;
  if (state.groupAt[slot] === state.groupAt[other]) return true;
  const payload = (problem.slots.payloadKg[slot] as number) + WEIGHT_SLACK;
  const litres = (problem.slots.coolLitres[slot] as number) + WEIGHT_SLACK;
  const last = other * stride + (nodes[other] as number) - 1;
  for (let i = node + 1; i < last; i++) {
    if (load[i] !== DEPOT) continue;
    if ((tripKg[i] as number) > payload || (tripLitres[i] as number) > litres) return false;
  }
  return true;
}

/** Prices the exchange of the tails behind two nodes; Infinity where weight, volume or a glance at the hours forbids it. */
function priceTails(state: RouteState, matrix: PlaceMatrix, slotA: number, a: number, slotB: number, b: number): void {
  price[0] = Number.POSITIVE_INFINITY;
  const { problem, place, edge, tripKg, kgSoFar, tripLitres, litresSoFar } = state;
  const { slots } = problem;
  const kgA = (kgSoFar[a] as number) + (tripKg[b] as number) - (kgSoFar[b] as number);
  const kgB = (kgSoFar[b] as number) + (tripKg[a] as number) - (kgSoFar[a] as number);
  if (kgA > (slots.payloadKg[slotA] as number) + WEIGHT_SLACK) return;
  if (kgB > (slots.payloadKg[slotB] as number) + WEIGHT_SLACK) return;
  const litresA = (litresSoFar[a] as number) + (tripLitres[b] as number) - (litresSoFar[b] as number);
  const litresB = (litresSoFar[b] as number) + (tripLitres[a] as number) - (litresSoFar[a] as number);
  if (litresA > (slots.coolLitres[slotA] as number) + WEIGHT_SLACK) return;
  if (litresB > (slots.coolLitres[slotB] as number) + WEIGHT_SLACK) return;
  if (!tripsFit(state, slotA, slotB, b) || !tripsFit(state, slotB, slotA, a)) return;
  const [fromA, toA] = [place[a] as number, place[a + 1] as number];
  const [fromB, toB] = [place[b] as number, place[b + 1] as number];
  if (problem.timed) {
    const { leaves, mustArrive } = state;
    const toBFromA = matrix.minutesFrom[fromA * matrix.size + toB] as number;
    const toAFromB = matrix.minutesFrom[fromB * matrix.size + toA] as number;
    if ((leaves[a] as number) + toBFromA > (mustArrive[b + 1] as number) + SLACK) return;
    if ((leaves[b] as number) + toAFromB > (mustArrive[a + 1] as number) + SLACK) return;
  }
  const kmA = (matrix.kmFrom[fromA * matrix.size + toB] as number) - (edge[a] as number);
  const kmB = (matrix.kmFrom[fromB * matrix.size + toA] as number) - (edge[b] as number);
  price[0] = kmA * (slots.kmCost[slotA] as number) + kmB * (slots.kmCost[slotB] as number);
}
