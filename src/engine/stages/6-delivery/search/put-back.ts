import { log } from '../../../numerics/elementary.ts';
import type { RandomStream } from '../../../numerics/random-stream.ts';
import { happens, timesUntil } from './chances.ts';
import { insertVisit, removeVisit, swapRows } from './change-rows.ts';
import { ALONE, LARGER, NEVER } from './find-place.ts';
import { judgePrice, putAt, takeOut } from './judge-places.ts';
import { addedKm, findLarger, largerCost, largerSlot } from './larger-vehicle.ts';
import { AT_LEAST, type PriceMemory, renewPrice } from './price-insertion.ts';
import type { Ruins } from './remove-strings.ts';
import { idleSlotOf, type RouteState } from './route-state.ts';
import type { PlaceMatrix, RoutingProblem } from './routing-problem.ts';
import { firstDay, lastDay, setWork, type Ties, wouldTrain } from './ties.ts';

/** Chance that a slot is passed over (Christiaens & Vanden Berghe 2020, section 5.3). */
const BLINK = 0.01;

/** Keys by which absent loads are put in order, and how often each is drawn. Lowest key first. */
export interface Orders {
  /** One column a key. */
  readonly keys: readonly Float64Array[];
  /** Shares of the columns; what is left of 1 is a random order. */
  readonly shares: readonly number[];
}

/**
 * Heaviest, farthest, nearest first; where there are hours also the shortest, the soonest to open and the last to close. Shares
 * after Christiaens & Vanden Berghe 2020, section 5.3.
 */
export function listOrders({ visits, matrices, slots, shelfStart, timed }: RoutingProblem): Orders {
  const column = (key: (matrix: PlaceMatrix, place: number) => number) =>
    Float64Array.from({ length: visits.count }, (_, visit) => {
      const slot = shelfStart[visits.shelfFrom[visit] as number] as number;
      const matrix = matrices[slots.matrix[slot] ?? 0];
      return matrix ? key(matrix, visits.place[visit] as number) : 0;
    });
  const heavy = visits.kg.map((kg) => -kg);
  const far = column(({ kmFrom }, place) => -(kmFrom[place] as number));
  const near = far.map((km) => -km);
  if (!timed) return { keys: [heavy, far, near], shares: [4 / 11, 2 / 11, 1 / 11] };
  const short = column(({ opens, closes }, place) => (closes[place] as number) - (opens[place] as number));
  const opens = column((matrix, place) => matrix.opens[place] as number);
  const closes = column((matrix, place) => -(matrix.closes[place] as number));
  return {
    keys: [heavy, far, near, short, opens, closes],
    shares: [4 / 17, 2 / 17, 1 / 17, 2 / 17, 2 / 17, 2 / 17],
  };
}

/**
 * Puts absent loads back one after the other, each where it is cheapest; those that fit nowhere stay absent.
 *
 * @returns false where it was given up, because the rows alone cost more than a step may
 */
export function putBack(
  state: RouteState,
  memory: PriceMemory,
  blinks: Blinks,
  ruins: Ruins,
  orders: Orders,
  sortKey: Float64Array,
  random: RandomStream,
): boolean {
  orderAbsent(ruins, orders, sortKey, random);
  if (state.problem.ties) putSeedFirst(ruins, state.problem.ties, happens(random, ALL_SEED_FIRST));
  const { unservedCost } = state.problem.visits;
  let waiting = 0;
  for (let i = ruins.resting; i < ruins.count; i++) waiting += unservedCost[ruins.absent[i] as number] as number;
  let left = ruins.resting;
  for (let i = ruins.resting; i < ruins.count; i++) {
    if (state.cost - waiting > ruins.mostCost) return false;
    const visit = ruins.absent[i] as number;
    waiting -= unservedCost[visit] as number;
    const { ties } = state.problem;
    if (ties && joinNeighbour(state, memory, blinks, ruins, ties, visit, random)) continue;
    if (!insertCheapest(state, memory, blinks, visit, random)) ruins.absent[left++] = visit;
  }
  ruins.count = left;
  return true;
}

/**
 * Chance that seed whose inoculant waits as well is put on the day of a near load, and any other load, and how many near loads are drawn
 * from: put back one after the other each looks for its own cheapest day, although the second finds the way paid where the first went.
 */
const TOGETHER = 0.3;
const ALONG = 0.02;
const NEAREST = 10;

/** Puts a load on the day on which a near load stands, or last stood; false where this is not tried or not found. */
function joinNeighbour(
  state: RouteState,
  memory: PriceMemory,
  blinks: Blinks,
  { cameFrom, neighbours, nearby }: Ruins,
  { seedLinks }: Ties,
  visit: number,
  random: RandomStream,
): boolean {
  const partner = (seedLinks.inoculantOf[visit] as readonly number[])[0] ?? -1;
  const isFollowed = partner >= 0 && (state.slotOf[partner] as number) < 0;
  if (!happens(random, isFollowed ? TOGETHER : ALONG)) return false;
  const near = neighbours[visit * nearby + random.pick(Math.min(NEAREST, nearby))] as number;
  if (near < 0) return false;
  const slot = state.slotOf[near] as number;
  const shelf = slot < 0 ? (cameFrom[near] as number) : (state.shelfOf[slot] as number);
  const { shelfFrom, shelfTo } = state.problem.visits;
  if (shelf < (shelfFrom[visit] as number) || shelf >= (shelfTo[visit] as number)) return false;
  return insertCheapest(state, memory, blinks, visit, random, shelf);
}

/** Fineness of drawn shares and of random orders. */
const PERMILLE = 1000;
const MANY = 1 << 30;

/** Share of steps that put back all that waits for nothing first; in the others seed goes right before the first that waits for it. */
const ALL_SEED_FIRST = 0.8;

/** Puts seed before what waits for it, the order otherwise kept. */
function putSeedFirst({ absent, resting, count, order, waits }: Ruins, { seedLinks }: Ties, allFirst: boolean): void {
  for (let i = resting; i < count; i++) {
    const visit = absent[i] as number;
    order[i] = visit;
    waits[visit] = 1;
  }
  let to = resting;
  for (let i = resting; i < count && allFirst; i++) {
    const visit = order[i] as number;
    if ((seedLinks.dryOf[visit] as readonly number[]).length > 0) continue;
    waits[visit] = 0;
    absent[to++] = visit;
  }
  for (let i = resting; i < count; i++) {
    const visit = order[i] as number;
    if (waits[visit] === 0) continue;
    const dry = seedLinks.dryOf[visit] as readonly number[];
    for (let k = 0; k < dry.length; k++) {
      const seed = dry[k] as number;
      if (waits[seed] === 0) continue;
      waits[seed] = 0;
      absent[to++] = seed;
    }
    waits[visit] = 0;
    absent[to++] = visit;
  }
}

function orderAbsent(
  { absent, count, resting }: Ruins,
  orders: Orders,
  sortKey: Float64Array,
  random: RandomStream,
): void {
  let draw = random.pick(PERMILLE) / PERMILLE;
  let column = 0;
  while (column < orders.shares.length) {
    draw -= orders.shares[column] as number;
    if (draw < 0) break;
    column++;
  }
  const keys = orders.keys[column];
  for (let i = resting; i < count; i++) {
    const visit = absent[i] as number;
    const key = keys ? (keys[visit] as number) : random.pick(MANY);
    let j = i - 1;
    while (j >= resting && (sortKey[j] as number) > key) {
      sortKey[j + 1] = sortKey[j] as number;
      absent[j + 1] = absent[j] as number;
      j--;
    }
    sortKey[j + 1] = key;
    absent[j + 1] = visit;
  }
}

const LOG_STAY = log(1 - BLINK);

/**
 * Puts a load where it is cheapest, if anywhere for less than leaving it behind.
 *
 * @param only the one shelf that is looked at; -1: all
 */
export function insertCheapest(
  state: RouteState,
  memory: PriceMemory,
  blinks: Blinks,
  visit: number,
  random: RandomStream,
  only = -1,
): boolean {
  const { problem, version, usedSlots } = state;
  const { visits, shelfStart } = problem;
  const shelves = shelfStart.length - 1;
  const { stamp, price, where, offers } = memory;
  const base = memory.base[visit] as number;
  // From here on a price is of no interest: the cheapest yet, but what leaving the load behind costs where a judge may raise the cheapest.
  let most = visits.unservedCost[visit] as number;
  let offered = 0;
  let toBlink = blinks.slotsLeft;
  const { judge, ties } = problem;
  let first = visits.shelfFrom[visit] as number;
  let end = visits.shelfTo[visit] as number;
  if (ties) {
    setWork(state, ties, visit, wouldTrain(ties, visit));
    end = Math.min(end, first + lastDay(state, ties, visit) + 1);
    first += firstDay(state, ties, visit);
  }
  if (only >= 0) {
    first = Math.max(first, only);
    end = Math.min(end, only + 1);
  }
  for (let shelf = first; shelf < end; shelf++) {
    if (visits.shelfCost[visit * shelves + shelf] === NEVER) continue;
    const mark = judge ? judge.markOf(state, visit, shelf) : 0;
    const start = shelfStart[shelf] as number;
    const stop = start + (state.used[shelf] as number);
    for (let i = start; i < stop; i++) {
      if (toBlink-- === 0) {
        toBlink = timesUntil(random, LOG_STAY);
        continue;
      }
      const slot = usedSlots[i] as number;
      const entry = base + slot;
      const now = (version[slot] as number) + mark;
      if (stamp[entry] !== now || ((price[entry] as number) < most && where[entry] === AT_LEAST)) {
        price[entry] = most;
        renewPrice(state, memory, entry, visit, slot, now);
      }
      if ((price[entry] as number) < most) {
        offers[offered++] = slot;
        if (judge === null) most = price[entry] as number;
      }
    }
    if (stop === shelfStart[shelf + 1]) continue;
    const lastGroup = state.groupStart[shelf + 1] as number;
    for (let group = state.groupStart[shelf] as number; group < lastGroup; group++) {
      const slot = idleSlotOf(state, group);
      if (slot < 0) continue;
      if (toBlink-- === 0) {
        toBlink = timesUntil(random, LOG_STAY);
        continue;
      }
      const entry = base + slot;
      if (stamp[entry] !== mark) {
        price[entry] = NEVER;
        renewPrice(state, memory, entry, visit, slot, mark);
      }
      if ((price[entry] as number) < most) {
        offers[offered++] = slot;
        if (judge === null) most = price[entry] as number;
      }
    }
  }
  blinks.slotsLeft = toBlink;
  if (offered === 0) return false;
  if (judge) return insertJudged(state, memory, visit, offered);
  const bestSlot = offers[offered - 1] as number;
  const entry = base + bestSlot;
  const at = where[entry] as number;
  if ((at & LARGER) !== 0) {
    if (insertInLarger(state, visit, bestSlot, at >> 2, most)) return true;
    price[entry] = NEVER;
    where[entry] = 0;
    return insertCheapest(state, memory, blinks, visit, random, only);
  }
  insertVisit(state, bestSlot, visit, at >> 2, (at & ALONE) !== 0);
  return true;
}

/** Puts a load where it is cheapest of the slots on offer, everything judged: the cheapest by bound is judged until it is exact. */
function insertJudged(state: RouteState, memory: PriceMemory, visit: number, offered: number): boolean {
  const { price, where, exact, offers } = memory;
  const base = memory.base[visit] as number;
  for (;;) {
    let least = state.problem.visits.unservedCost[visit] as number;
    let next = least;
    let slot = -1;
    for (let i = 0; i < offered; i++) {
      const offer = offers[i] as number;
      const here = price[base + offer] as number;
      if (here < least) {
        next = least;
        least = here;
        slot = offer;
      } else if (here < next) next = here;
    }
    if (slot < 0) return false;
    const entry = base + slot;
    if (exact[entry] === 0) {
      if (judgePrice(state, memory, visit, slot, next)) return true;
      continue;
    }
    if (putAt(state, visit, slot, where[entry] as number)) return true;
    // The ice it was priced with is gone.
    takeOut(state, visit, slot);
    price[entry] = NEVER;
    where[entry] = 0;
  }
}

/** Gives a row to a larger vehicle and puts the load in; false where the one that was priced is not to be had any more. */
function insertInLarger(state: RouteState, visit: number, slot: number, after: number, price: number): boolean {
  const { problem } = state;
  const { kmFrom, kmTo, size } = problem.matrices[problem.slots.matrix[slot] as number] as PlaceMatrix;
  const hub = (problem.visits.place[visit] as number) * size;
  const node = slot * state.stride + after;
  addedKm[0] =
    (kmTo[hub + (state.place[node] as number)] as number) +
    (kmFrom[hub + (state.place[node + 1] as number)] as number) -
    (state.edge[node] as number);
  findLarger(state, visit, slot);
  const shelves = problem.shelfStart.length - 1;
  const visitCost = problem.visits.shelfCost[visit * shelves + (state.shelfOf[slot] as number)] as number;
  const other = largerSlot();
  if (other < 0 || largerCost() + visitCost > price + TINY) return false;
  if (!swapRows(state, slot, other)) {
    swapRows(state, slot, other);
    return false;
  }
  if (insertVisit(state, other, visit, after, false)) return true;
  // The larger vehicle keeps other hours.
  removeVisit(state, other, visit);
  swapRows(state, slot, other);
  return false;
}

/** Prices made in another order may differ by so much. */
const TINY = 1e-6;

/** Slots until the next is passed over. */
export interface Blinks {
  slotsLeft: number;
}
