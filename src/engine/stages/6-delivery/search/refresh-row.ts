import { type DrivingRest, needsRest } from '../rules/driving-rest.ts';
import { DEPOT, type RouteState, restAt, SLACK } from './route-state.ts';
import type { PlaceMatrix } from './routing-problem.ts';

/**
 * Works a slot's row out anew after a change: kilometres, weights, the clock forward and backward, the cost.
 *
 * @returns whether the row has a way and keeps the hours; weights and volumes are kept by whoever changes a row
 */
export function refreshRow(state: RouteState, slot: number): boolean {
  const { problem, stride, version } = state;
  const count = state.nodes[slot] as number;
  state.versions++;
  version[slot] = count === 0 ? 0 : state.versions;
  if (count === 0) {
    state.km[slot] = 0;
    state.slotCost[slot] = 0;
    return true;
  }
  const row = slot * stride;
  const matrix = problem.matrices[problem.slots.matrix[slot] as number] as PlaceMatrix;
  sumRow(state, slot, row, count, matrix);
  if (!((state.km[slot] as number) < Number.POSITIVE_INFINITY)) return forbidRow(state, slot);
  if (problem.rest) layRests(state, row, count, matrix, problem.rest);
  return (
    !problem.timed || (runForward(state, slot, row, count, matrix) && runBackward(state, slot, row, count, matrix))
  );
}

/** A row without a way is taken back by whoever changed it; until then its cost must be a number. */
function forbidRow(state: RouteState, slot: number): false {
  state.km[slot] = 0;
  state.slotCost[slot] = 0;
  return false;
}

function sumRow(state: RouteState, slot: number, row: number, count: number, matrix: PlaceMatrix): void {
  const { problem, load, place, edge, tripKg, tripLitres, kgSoFar, litresSoFar } = state;
  const { kg, litres, shelfCost, releaseMinute } = problem.visits;
  const { kmFrom, size } = matrix;
  const shelves = problem.shelfStart.length - 1;
  const shelf = state.shelfOf[slot] as number;
  let km = 0;
  let visitCost = 0;
  let trip = row;
  let weight = 0;
  let volume = 0;
  let release = 0;
  let mostKg = 0;
  let trips = -1;
  let mostLitres = 0;
  for (let i = row; i < row + count; i++) {
    const visit = load[i] as number;
    if (i < row + count - 1) {
      const length = kmFrom[(place[i] as number) * size + (place[i + 1] as number)] as number;
      edge[i] = length;
      km += length;
    }
    if (visit !== DEPOT) {
      weight += kg[visit] as number;
      volume += litres[visit] as number;
      visitCost += shelfCost[visit * shelves + shelf] as number;
      if ((releaseMinute[visit] as number) > release) release = releaseMinute[visit] as number;
      kgSoFar[i] = weight;
      litresSoFar[i] = volume;
      continue;
    }
    for (let j = trip; j < i; j++) {
      tripKg[j] = weight;
      tripLitres[j] = volume;
    }
    if (problem.timed) state.tripRelease[trip] = release;
    trips++;
    if (weight > mostKg) mostKg = weight;
    if (volume > mostLitres) mostLitres = volume;
    trip = i;
    weight = volume = release = 0;
    kgSoFar[i] = 0;
    litresSoFar[i] = 0;
  }
  state.km[slot] = km;
  state.visitCost[slot] = visitCost;
  state.trips[slot] = trips;
  state.mostKg[slot] = mostKg;
  state.mostLitres[slot] = mostLitres;
  state.slotCost[slot] =
    (problem.slots.dayCost[slot] as number) + km * (problem.slots.kmCost[slot] as number) + visitCost;
}

/** Where the crew rests: on arrival where the next leg would take it beyond the most minutes of driving, at the depot before it loads. */
function layRests(state: RouteState, row: number, count: number, matrix: PlaceMatrix, rest: DrivingRest): void {
  const { load, place, restMinutes, drivenMinutes } = state;
  const last = row + count - 1;
  let driven = 0;
  for (let i = row; i < last; i++) {
    const here = place[i] as number;
    if (i > row) driven += drivingOf(matrix, place[i - 1] as number, here);
    const arrives = load[i] === DEPOT || here !== place[i - 1];
    let next = i + 1;
    while (place[next] === here) next++;
    const rests = arrives && needsRest(rest, driven, drivingOf(matrix, here, place[next] as number));
    if (rests) driven = 0;
    restMinutes[i] = rests ? rest.minutes : 0;
    drivenMinutes[i] = driven;
  }
}

function drivingOf({ minutesFrom, size, stopMinutes }: PlaceMatrix, from: number, to: number): number {
  if (from === to) return 0;
  return (minutesFrom[from * size + to] as number) - (to > 0 ? stopMinutes : 0);
}

function runForward(state: RouteState, slot: number, row: number, count: number, matrix: PlaceMatrix): boolean {
  const { problem, load, place, leaves, arrives, workSoFar, latestLeave, workMinutes } = state;
  const { slots } = problem;
  const { minutesFrom, opens, closes, size } = matrix;
  const perKg = slots.loadingMinutesPerKg[slot] as number;
  const earliest = slots.earliestLeave[slot] as number;
  const latestBack = (slots.latestBack[slot] as number) + SLACK;
  const most = (slots.mostMinutes[slot] as number) + SLACK;
  arrives[row] = slots.loadsFrom[slot] as number;
  let trip = row;
  let left = -1;
  let work = 0;
  let latest = Number.POSITIVE_INFINITY;
  let rested = 0;
  const last = row + count - 1;
  for (let i = row; i <= last; i++) {
    const here = place[i] as number;
    if (i > row) {
      const minutes = minutesFrom[(place[i - 1] as number) * size + here] as number;
      arrives[i] = left + minutes;
      work += minutes;
    }
    const visit = load[i] as number;
    if (visit !== DEPOT) {
      const opened = opens[here] as number;
      const arrive = arrives[i] as number;
      const work1 = workMinutes[visit] as number;
      const begins = Math.max(arrive, opened);
      // Where there is no way it never arrives, and how long it rests is no number.
      if (begins === Number.POSITIVE_INFINITY) return false;
      if (here !== place[i - 1]) rested = Math.max(arrive + restAt(state, i), opened) - begins;
      left = begins + (here === place[i - 1] ? 0 : rested) + work1;
      const closed = closes[here] as number;
      if (left > closed + SLACK) return false;
      work += work1;
      if (closed - work < latest) latest = closed - work;
      leaves[i] = left - rested;
      workSoFar[i] = work;
      latestLeave[i] = latest;
      continue;
    }
    if (i > row && (arrives[i] as number) > latestBack) return false;
    // Leaving as late as the hours on the way allow, it waits least.
    if (i > row && Math.max(work, (arrives[i] as number) - Math.max(latest, leaves[trip] as number)) > most)
      return false;
    if (i === last) break;
    trip = i;
    const ready = Math.max(arrives[i] as number, state.tripRelease[i] as number);
    const loading = (state.tripKg[i] as number) * perKg;
    left = Math.max(earliest, ready + restAt(state, i) + loading);
    work = 0;
    latest = Number.POSITIVE_INFINITY;
    leaves[i] = Math.max(earliest, ready + loading);
    workSoFar[i] = 0;
    latestLeave[i] = latest;
  }
  return true;
}

function runBackward(state: RouteState, slot: number, row: number, count: number, matrix: PlaceMatrix): boolean {
  const { problem, load, place, mustArrive, backAtBest, workToGo, workMinutes } = state;
  const { minutesFrom, opens, closes, size } = matrix;
  const latestBack = problem.slots.latestBack[slot] as number;
  const perKg = problem.slots.loadingMinutesPerKg[slot] as number;
  const last = row + count - 1;
  mustArrive[last] = latestBack;
  backAtBest[last] = Number.NEGATIVE_INFINITY;
  workToGo[last] = 0;
  for (let i = last - 1; i >= row; i--) {
    const here = place[i] as number;
    const minutes = minutesFrom[here * size + (place[i + 1] as number)] as number;
    const leave = (mustArrive[i + 1] as number) - minutes;
    const visit = load[i] as number;
    if (visit === DEPOT) {
      const ready = leave - (state.tripKg[i] as number) * perKg;
      mustArrive[i] = Math.min(ready - restAt(state, i), latestBack);
      backAtBest[i] = Number.NEGATIVE_INFINITY;
      workToGo[i] = 0;
      continue;
    }
    const work = workMinutes[visit] as number;
    const closed = closes[here] as number;
    mustArrive[i] = Math.min(closed, leave) - work - restAt(state, i);
    const rest = work + minutes + (workToGo[i + 1] as number);
    const soonest = (opens[here] as number) + rest;
    workToGo[i] = rest;
    backAtBest[i] = Math.max(soonest, backAtBest[i + 1] as number);
  }
  return true;
}
