import { addedKm, findLarger, largerCost } from './larger-vehicle.ts';
import { type RouteState, SLACK } from './route-state.ts';
import type { PlaceMatrix } from './routing-problem.ts';
import { mayRide } from './ties.ts';

/** Added to a place in a row: a trip of its own, a larger vehicle for the whole row. */
export const ALONE = 1;
export const LARGER = 2;
/** Price of what no rule allows. */
export const NEVER = Number.POSITIVE_INFINITY;

/** Price, and kilometres in a row, from which on a place is of no interest. */
export const most = new Float64Array(1).fill(NEVER);
const mostKm = new Float64Array(1);
/**
 * Kilometres or price of the place found last, and before it the most kilometres of interest. All these stand in arrays: a number
 * that is not whole would be put on the heap if it were returned.
 */
export const found = new Float64Array(1);
/** Kilometres of the same place. */
const foundKm = new Float64Array(1);

/** Places gone through one after the other: those up to here, by kilometres and then by node, are passed over. */
const passedKm = new Float64Array(1).fill(Number.NEGATIVE_INFINITY);
let passedNode = -1;
/** Trips of their own from this node on are passed over. */
const NO_TRIP_YET = 1 << 30;
let passedTrip = NO_TRIP_YET;

/** The next best place of a load in a slot's row, in the order of prices, as `findPlace` tells it; to be ended by `forgetPlaces`. */
export function nextPlace(state: RouteState, visit: number, slot: number): number {
  const where = findPlace(state, visit, slot);
  if ((where & ALONE) !== 0) passedTrip = where >> 2;
  else {
    passedKm[0] = foundKm[0] as number;
    passedNode = where >> 2;
  }
  return where;
}

/** Price of the place found last; NEVER where there was none. */
export function placePrice(): number {
  return found[0] as number;
}

export function forgetPlaces(): void {
  passedKm[0] = Number.NEGATIVE_INFINITY;
  passedNode = -1;
  passedTrip = NO_TRIP_YET;
}

/**
 * The cheapest place by kilometres for a load in a slot's row that keeps weight, volume and every hour; its price stands in `found`.
 *
 * @returns four times the node it follows, and ALONE more where it makes a trip of its own, LARGER where it takes a larger vehicle
 */
export function findPlace(state: RouteState, visit: number, slot: number): number {
  const { problem } = state;
  const { visits, slots } = problem;
  const shelves = problem.shelfStart.length - 1;
  const visitCost = visits.shelfCost[visit * shelves + (state.shelfOf[slot] as number)] as number;
  const kmCost = slots.kmCost[slot] as number;
  mostKm[0] = NEVER;
  if (kmCost > 0) mostKm[0] = ((most[0] as number) - visitCost) / kmCost;
  found[0] = NEVER;
  if (visitCost === NEVER) return 0;
  // Vehicles of one shelf differ where loads have ties: many are too small for a load whatever else they carry.
  if (problem.ties && !(mayRide(problem.ties, visit, slot) && fits(state, visit, slot, 0, 0))) return 0;
  if ((state.nodes[slot] as number) === 0) {
    if (passedTrip !== NO_TRIP_YET) return 0;
    openIdle(state, visit, slot);
    if (found[0] === NEVER) return 0;
    found[0] = (slots.dayCost[slot] as number) + (found[0] as number) * kmCost + visitCost;
    return ALONE;
  }
  if ((state.nodes[slot] as number) + 2 > state.stride) return 0;
  const first = slot * state.stride;
  if (problem.grows && state.trips[slot] === 1) {
    if (!fits(state, visit, slot, state.tripKg[first] as number, state.tripLitres[first] as number)) {
      // Rows stand on the vehicles that suit them, so a larger one saves nothing on the way.
      found[0] = mostKm[0] as number;
      const at = problem.timed ? findTimed(state, visit, slot, true) : findUntimed(state, visit, slot, true);
      if ((found[0] as number) >= (mostKm[0] as number)) {
        found[0] = NEVER;
        return 0;
      }
      addedKm[0] = found[0] as number;
      findLarger(state, visit, slot);
      found[0] = largerCost() + visitCost;
      return at + LARGER;
    }
  }
  found[0] = mostKm[0] as number;
  let where = problem.timed ? findTimed(state, visit, slot, false) : findUntimed(state, visit, slot, false);
  if (problem.reloads) {
    const within = found[0] as number;
    const alone = findTrip(state, visit, slot);
    if (alone >= 0 && (found[0] as number) < within) where = alone;
    else found[0] = within;
  }
  // Nothing found: what is of no interest any more would by rounding come to less, and a kilometre that costs nothing to no number.
  if (!((found[0] as number) < (mostKm[0] as number))) {
    found[0] = NEVER;
    return 0;
  }
  foundKm[0] = found[0] as number;
  found[0] = (found[0] as number) * kmCost + visitCost;
  return where;
}

function fits(state: RouteState, visit: number, slot: number, tripKg: number, tripLitres: number): boolean {
  const { visits, slots } = state.problem;
  return (
    tripKg + (visits.kg[visit] as number) <= (slots.payloadKg[slot] as number) + WEIGHT_SLACK &&
    tripLitres + (visits.litres[visit] as number) <= (slots.coolLitres[slot] as number) + WEIGHT_SLACK
  );
}

/** Sums of weights carry rounding. */
const WEIGHT_SLACK = 1e-6;

/** Finds the kilometres of a journey there and back on a slot that stands idle; NEVER where a rule forbids it. */
function openIdle(state: RouteState, visit: number, slot: number): void {
  const { problem } = state;
  const { slots, visits } = problem;
  if (!fits(state, visit, slot, 0, 0)) return;
  const matrix = problem.matrices[slots.matrix[slot] as number] as PlaceMatrix;
  const here = visits.place[visit] as number;
  const km = (matrix.kmFrom[here] as number) + (matrix.kmTo[here] as number);
  if (problem.timed) {
    const back = journeyBack(state, matrix, visit, slot, slots.loadsFrom[slot] as number);
    if (back > (slots.latestBack[slot] as number) + SLACK) return;
  }
  found[0] = km;
}

/** Whether an idle slot could bring a load on a journey of its own: weight, volume and every hour, whoever is allowed where. */
export function couldBring(state: RouteState, visit: number, slot: number): boolean {
  found[0] = NEVER;
  openIdle(state, visit, slot);
  return (found[0] as number) < NEVER;
}

/** When a journey to one load alone is back, if the slot stands ready at a minute; NEVER where a rule forbids it. */
function journeyBack(state: RouteState, matrix: PlaceMatrix, visit: number, slot: number, readyMinute: number): number {
  const { slots, visits } = state.problem;
  const here = visits.place[visit] as number;
  const work = state.workMinutes[visit] as number;
  const loading = (visits.kg[visit] as number) * (slots.loadingMinutesPerKg[slot] as number);
  const ready = Math.max(readyMinute, visits.releaseMinute[visit] as number) + loading;
  const leave = Math.max(slots.earliestLeave[slot] as number, ready);
  const out = matrix.minutesFrom[here] as number;
  const home = matrix.minutesTo[here] as number;
  const end = Math.max(leave + out, matrix.opens[here] as number) + work;
  if (end > (matrix.closes[here] as number) + SLACK) return NEVER;
  if (out + work + home > (slots.mostMinutes[slot] as number) + SLACK) return NEVER;
  return end + home;
}

/** Where a trip of its own fits between the trips of a row, the latest first; -1 where it fits nowhere. */
function findTrip(state: RouteState, visit: number, slot: number): number {
  const { problem, stride, load, arrives, mustArrive } = state;
  const { slots, visits } = problem;
  if (!fits(state, visit, slot, 0, 0)) return -1;
  const matrix = problem.matrices[slots.matrix[slot] as number] as PlaceMatrix;
  const here = visits.place[visit] as number;
  found[0] = (matrix.kmFrom[here] as number) + (matrix.kmTo[here] as number);
  const row = slot * stride;
  const last = row + (state.nodes[slot] as number) - 1;
  for (let i = Math.min(last, row + passedTrip - 1); i >= row; i--) {
    if ((load[i] as number) >= 0) continue;
    if (problem.timed) {
      const back = journeyBack(state, matrix, visit, slot, arrives[i] as number);
      if (back > (mustArrive[i] as number) + SLACK) continue;
    }
    // Behind the last trip it begins where the row ends; before a trip it takes over that trip's depot node.
    return (i - row) * 4 + ALONE;
  }
  return -1;
}

function findUntimed(state: RouteState, visit: number, slot: number, larger: boolean): number {
  const { problem, place, edge, tripKg, tripLitres, load } = state;
  const matrix = problem.matrices[problem.slots.matrix[slot] as number] as PlaceMatrix;
  const { kmFrom, kmTo, size } = matrix;
  const bothWays = kmFrom === kmTo;
  const hub = (problem.visits.place[visit] as number) * size;
  const row = slot * state.stride;
  const last = row + (state.nodes[slot] as number) - 1;
  const several = (state.trips[slot] as number) > 1;
  let best = found[0] as number;
  let where = 0;
  let open = larger || fits(state, visit, slot, tripKg[row] as number, tripLitres[row] as number);
  if (!open && !several) return 0;
  let there = kmTo[hub + (place[row] as number)] as number;
  for (let i = row; i < last; i++) {
    const next = hub + (place[i + 1] as number);
    const on = kmFrom[next] as number;
    const more = there + on - (edge[i] as number);
    there = bothWays ? on : (kmTo[next] as number);
    if (several && (load[i] as number) < 0)
      open = larger || fits(state, visit, slot, tripKg[i] as number, tripLitres[i] as number);
    if (more < best && open) {
      best = more;
      where = (i - row) * 4;
    }
  }
  found[0] = best;
  return where;
}

function findTimed(state: RouteState, visit: number, slot: number, larger: boolean): number {
  const { problem, place, edge, load, leaves, mustArrive, workSoFar, latestLeave } = state;
  const { visits, slots } = problem;
  const matrix = problem.matrices[slots.matrix[slot] as number] as PlaceMatrix;
  const { kmFrom, kmTo, minutesFrom, minutesTo, size } = matrix;
  const here = visits.place[visit] as number;
  const hub = here * size;
  const opened = matrix.opens[here] as number;
  const work = state.workMinutes[visit] as number;
  const latestStart = (matrix.closes[here] as number) - work + SLACK;
  const soonestEnd = opened + work - SLACK;
  const limited = (slots.mostMinutes[slot] as number) < NEVER;
  const row = slot * state.stride;
  const km = passedKm[0] as number;
  const passed = row + passedNode;
  const last = row + (state.nodes[slot] as number) - 1;
  let best = found[0] as number;
  let where = 0;
  let open = true;
  let leave = 0;
  let shifted = false;
  for (let i = row; i < last; i++) {
    if ((load[i] as number) < 0) {
      open = larger || fits(state, visit, slot, state.tripKg[i] as number, state.tripLitres[i] as number);
      if (!open) continue;
      leave = leaveWith(state, visit, slot, i);
      shifted = leave > (leaves[i] as number);
    }
    if (!open) continue;
    let left = leaves[i] as number;
    if (left > latestStart) break;
    if (soonestEnd > (mustArrive[i + 1] as number)) continue;
    const from = place[i] as number;
    const to = place[i + 1] as number;
    const more = (kmTo[hub + from] as number) + (kmFrom[hub + to] as number) - (edge[i] as number);
    if (!(more < best)) continue;
    if (more <= km && (more < km || i <= passed)) continue;
    if (shifted) {
      if (leave > (latestLeave[i] as number) + SLACK) continue;
      const later = leave + (workSoFar[i] as number);
      if (later > left) left = later;
    }
    const arrive = left + (minutesTo[hub + from] as number);
    const start = Math.max(arrive, opened);
    if (start > latestStart) continue;
    if (start + work + (minutesFrom[hub + to] as number) > (mustArrive[i + 1] as number) + SLACK) continue;
    if (limited && shortestMinutes(state, matrix, visit, slot, i) > (slots.mostMinutes[slot] as number) + SLACK)
      continue;
    best = more;
    where = (i - row) * 4;
  }
  found[0] = best;
  return where;
}

/** When a trip that begins at a depot node leaves with one load more. */
function leaveWith(state: RouteState, visit: number, slot: number, node: number): number {
  const { visits, slots } = state.problem;
  const ready = Math.max(
    state.arrives[node] as number,
    state.tripRelease[node] as number,
    visits.releaseMinute[visit] as number,
  );
  const kg = (state.tripKg[node] as number) + (visits.kg[visit] as number);
  return Math.max(slots.earliestLeave[slot] as number, ready + kg * (slots.loadingMinutesPerKg[slot] as number));
}

/** Minutes from leaving to coming back with a load put in behind a node, leaving as late as the hours on the way allow. */
function shortestMinutes(state: RouteState, matrix: PlaceMatrix, visit: number, slot: number, node: number): number {
  const { place, leaves, workSoFar, latestLeave } = state;
  const { minutesFrom, minutesTo, size } = matrix;
  const here = state.problem.visits.place[visit] as number;
  const work = state.workMinutes[visit] as number;
  const onTheWay = (workSoFar[node] as number) + (minutesTo[here * size + (place[node] as number)] as number);
  const closes = matrix.closes[here] as number;
  const latest = Math.min(latestLeave[node] as number, closes - work - onTheWay);
  const arrive = (leaves[node] as number) + (minutesTo[here * size + (place[node] as number)] as number);
  const end = Math.max(arrive, matrix.opens[here] as number) + work;
  const next = node + 1;
  const on = minutesFrom[here * size + (place[next] as number)] as number;
  const soFar = onTheWay + work + on;
  const last = Math.min(latest, (state.mustArrive[next] as number) - soFar);
  const back = Math.max(end + on + (state.workToGo[next] as number), state.backAtBest[next] as number);
  const leave = Math.max(last, earliestOf(state, slot));
  return Math.max(soFar + (state.workToGo[next] as number), back - leave);
}

function earliestOf(state: RouteState, slot: number): number {
  return state.leaves[slot * state.stride] as number;
}
