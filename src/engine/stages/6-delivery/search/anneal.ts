import { exp, log } from '../../../numerics/elementary.ts';
import { RandomStream } from '../../../numerics/random-stream.ts';
import type { SearchSettings } from '../../../vocabulary/settings.ts';
import { drawAllowance, happens } from './chances.ts';
import { beginStep, takeBack } from './change-rows.ts';
import { exchangeTails } from './exchange-tails.ts';
import { exchangeVehicles } from './exchange-vehicles.ts';
import { handOnRow } from './judge-moves.ts';
import { keepRows, newKeptRows, restoreRows } from './kept-rows.ts';
import { listNeighbours } from './list-neighbours.ts';
import { newPriceMemory, type PriceMemory } from './price-insertion.ts';
import { type Blinks, listOrders, type Orders, putBack } from './put-back.ts';
import { newRuins, type Ruins, removeStrings } from './remove-strings.ts';
import { restSome } from './rest-some.ts';
import { newRouteState, type RouteState } from './route-state.ts';
import type { RoutingProblem } from './routing-problem.ts';

/** Temperatures at the start and at the end, as parts of the mean cost of a leg: the problem's own unit. */
const START_HEAT = 1;
const END_HEAT = 0.003;
/**
 * Steps of one cooling, in loads to the power of 1.5. With more steps than that the search is heated up again: on up to some 100
 * loads several coolings end nearer to the best known than one that is as long as all of them; more loads want longer ones.
 */
const COOLING_STEPS = 400;
/** Share of steps that begin with an exchange of tails, and share of these that give the tail to an idle vehicle. */
const TAILS = 0.15;
const SPLITS = 0.3;
/** Loads nearest to a load that strings are taken from. */
const MOST_NEARBY = 1000;
/** Share of steps that give a whole row to an idle slot, where loads have ties. */
const WHOLE_ROWS = 0.05;
const STEPS_BETWEEN_QUESTIONS = 64;
/** Gains below this are rounding. */
const TINY = 1e-7;

export interface SearchEnd {
  readonly state: RouteState;
  readonly iterationsDone: number;
  readonly stoppedBy: 'iterations' | 'time';
}

export interface Search {
  readonly state: RouteState;
  readonly memory: PriceMemory;
  readonly ruins: Ruins;
  readonly orders: Orders;
  readonly blinks: Blinks;
  readonly sortKey: Float64Array;
  readonly absentBefore: Int32Array;
  readonly random: RandomStream;
  readonly mixed: boolean;
  /** The temperature, and what a step may cost more at it: in arrays so that they are not put on the heap anew in every step. */
  readonly heat: Float64Array;
  readonly allowance: Float64Array;
}

/**
 * Searches for cheap routes: construction by cheapest insertion, then ruin and recreate under simulated annealing (Christiaens &
 * Vanden Berghe 2020, Transportation Science 54:417), with exchanges of tails and of vehicles. The same problem, seed and
 * iterations give the same routes.
 *
 * @returns the best state met; nothing is allocated in a step
 */
export function anneal(problem: RoutingProblem, settings: SearchSettings): SearchEnd {
  const search = beginSearch(problem, settings.seed, [...problem.visits.kg.keys()]);
  const { state, random } = search;
  for (let visit = 0; visit < problem.visits.count; visit++) search.ruins.absent[visit] = visit;
  search.ruins.count = problem.visits.count;
  beginStep(state);
  putBack(state, search.memory, search.blinks, search.ruins, search.orders, search.sortKey, random);
  const legCost = meanLegCost(state);
  return cool(search, settings, START_HEAT * legCost, END_HEAT * legCost);
}

/**
 * Betters the rows as they stand by ruin and recreate, at a heat that falls from step to step; leaves the best met.
 *
 * @param hottest cost that a step may lose now and then at the start, and `coldest` at the end
 */
export function cool(search: Search, settings: SearchSettings, hottest: number, coldest: number): SearchEnd {
  const { state } = search;
  const best = newKeptRows(state);
  keepRows(state, best);
  const count = search.ruins.centres.length;
  const coolings = Math.max(1, Math.floor(settings.iterations / (COOLING_STEPS * count * Math.sqrt(count))));
  const coolingSteps = Math.max(1, Math.ceil(settings.iterations / coolings));
  const cooling = exp(log(coldest / hottest) / coolingSteps);
  const { heat } = search;
  let step = 0;
  let stoppedBy: SearchEnd['stoppedBy'] = 'iterations';
  // Nobody to visit, nothing to change.
  const steps = count === 0 ? 0 : settings.iterations;
  for (; step < steps; step++) {
    if (step % STEPS_BETWEEN_QUESTIONS === 0) {
      if (settings.stop?.()) {
        stoppedBy = 'time';
        break;
      }
      settings.progress?.(step, step / settings.iterations, best.cost);
    }
    heat[0] = step % coolingSteps === 0 ? hottest : (heat[0] as number) * cooling;
    tryStep(search);
    if (state.cost < best.cost - TINY) keepRows(state, best);
  }
  restoreRows(state, best);
  return { state, iterationsDone: step, stoppedBy };
}

/**
 * A search over idle rows; nobody waits in `ruins.absent` yet.
 *
 * @param moved loads that it may move, which are neighbours of each other
 */
export function beginSearch(problem: RoutingProblem, seed: number, moved: readonly number[]): Search {
  const { count } = problem.visits;
  const state = newRouteState(problem, rowLength(problem));
  const nearby = Math.min(moved.length, MOST_NEARBY);
  const ruins = newRuins(count, listNeighbours(problem, nearby, moved), nearby);
  return {
    state,
    memory: newPriceMemory(problem),
    ruins,
    orders: problem.orders ?? listOrders(problem),
    blinks: { slotsLeft: 0 },
    sortKey: new Float64Array(count),
    absentBefore: new Int32Array(count),
    random: new RandomStream(seed),
    mixed: state.firstOfGroup.length > 1,
    heat: new Float64Array(1),
    allowance: new Float64Array(1),
  };
}

/** One step: taken back where it costs more than the heat allows. */
function tryStep(search: Search): void {
  const { state, ruins, random, absentBefore } = search;
  const before = state.cost;
  const absent = ruins.count;
  for (let i = 0; i < absent; i++) absentBefore[i] = ruins.absent[i] as number;
  drawAllowance(random, search.heat, search.allowance);
  ruins.mostCost = before + (search.allowance[0] as number);
  beginStep(state);
  const whole = state.problem.ties !== null && happens(random, WHOLE_ROWS);
  const stays = whole ? handOnRow(state, ruins, random) : changeRows(search);
  ruins.resting = 0;
  if (stays && state.cost < ruins.mostCost) return;
  takeBack(state);
  ruins.count = absent;
  for (let i = 0; i < absent; i++) ruins.absent[i] = absentBefore[i] as number;
}

/** Ruins some rows and recreates them; false where that cannot be done. */
function changeRows(search: Search): boolean {
  const { state, ruins, random } = search;
  let centre = -1;
  if (happens(random, TAILS)) {
    centre = ruins.centres[random.pick(ruins.centres.length)] as number;
    exchangeTails(state, ruins, centre, happens(random, SPLITS));
  }
  const before = ruins.count;
  if (!removeStrings(state, ruins, centre, random)) return false;
  if (state.problem.ties) restSome(state, state.problem.ties, ruins, before, random);
  if (!putBack(state, search.memory, search.blinks, ruins, search.orders, search.sortKey, random)) return false;
  if (search.mixed) exchangeVehicles(state);
  return true;
}

/** Nodes that a row may need: every load, and where it may reload a depot behind each. */
function rowLength({ mostLoads, reloads }: RoutingProblem): number {
  return mostLoads * (reloads ? 2 : 1) + 4;
}

/** Kilometres' cost of a mean leg. */
function meanLegCost(state: RouteState): number {
  const { slots } = state.problem;
  let cost = 0;
  for (let slot = 0; slot < slots.count; slot++) cost += (state.km[slot] as number) * (slots.kmCost[slot] as number);
  return Math.max(TINY, cost / Math.max(1, state.served + state.usedCount));
}
