import type { Decisions } from '../../vocabulary/decisions.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { SearchSettings } from '../../vocabulary/settings.ts';
import type { Allocation } from '../../vocabulary/stage-results/allocation.ts';
import type { Delivery } from '../../vocabulary/stage-results/delivery.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import type { StageResult } from '../../vocabulary/stage-results/stage-result.ts';
import type { KnownAllocation, KnownDelivery, ToldDay } from '../../vocabulary/told-plan.ts';
import { cutLoads } from './cut-loads.ts';
import { deliveryProvenance } from './delivery-provenance.ts';
import { type DispatchState, newState, slotOf } from './dispatch-state.ts';
import { compileTask } from './dispatch-task.ts';
import { explainUnserved, findHopeful } from './explain-unserved.ts';
import { fillUp, removeLoads } from './fill-up.ts';
import { holdEarlier } from './hold-earlier.ts';
import { improve } from './improve.ts';
import { judgeDecisions, judgePromises } from './judge-decisions.ts';
import { keepPromises } from './keep-promises.ts';
import { moneyOf } from './money-of.ts';
import { noteLabelAndModel } from './note-label-and-model.ts';
import { scheduleTrips } from './schedule-trips.ts';
import { beginStep } from './search/change-rows.ts';
import { NEVER } from './search/find-place.ts';
import { trainAll } from './train-all.ts';
import { listSlots } from './vehicle-day-slots.ts';

/** An earlier plan to begin from. */
export interface EarlierPlan {
  readonly allocation: KnownAllocation;
  readonly delivery: KnownDelivery;
  /**
   * `held`: a first round, whose served loads stay where they are. `told`: a plan that people know; its loads may move, each
   * consignment at the price of a broken promise.
   */
  readonly as: 'held' | 'told';
  /** Days that people were told, in either case. */
  readonly days?: readonly ToldDay[];
}

/**
 * Puts consignments on vehicles: which vehicle, day, order and hour, how warm the packs get, and who cannot be served and why.
 * Deterministic for the same inputs, seed and steps; `settings.stop` may end the search early.
 *
 * @param earlier plan to begin from, as far as its packs are still given and its trips can still be driven; null: none
 */
export function planDelivery(
  scenario: Scenario,
  decisions: Decisions,
  places: Places,
  season: SeasonOutlook,
  allocation: Allocation,
  settings: SearchSettings,
  earlier: EarlierPlan | null,
): StageResult<Delivery> {
  const { consignments } = allocation;
  const { state, cut, released } = beginDispatch(scenario, decisions, places, season, allocation, earlier);
  const told = earlier?.as === 'told';
  const hopeful = findHopeful(state);
  const disturbed = told ? [...state.task.loads.keys()].filter((load) => isWaiting(state, load)) : null;
  fillUp(state, hopeful);
  trainAll(state);
  const end = improve(state, hopeful, settings, disturbed);
  trainAll(state);
  fillUp(state, hopeful);
  if (earlier?.days) keepPromises(state);
  for (const turn of fertiliserInTurns(state)) fillUp(state, turn);
  const delivery: Delivery = {
    loads: cut.loads,
    vehicleDays: scheduleTrips(state, cut.loads),
    unserved: explainUnserved(state, cut.loads),
    iterationsDone: end.iterationsDone,
    stoppedBy: end.stoppedBy,
    cost: moneyOf(scenario, state),
    promisePrice: state.task.promisePrice,
  };
  const problems = [
    ...judgeDecisions(scenario, decisions),
    ...judgePromises(scenario, decisions, consignments, state),
    ...depotsWithoutVehicles(scenario, allocation),
    ...noteLabelAndModel(delivery),
    ...(released > 0 && !told ? [problem('E6004', { facts: { loads: released } })] : []),
  ];
  return { result: delivery, problems, provenance: deliveryProvenance(scenario) };
}

/** Loads that the search moves and that have no place in the plan people know. */
const isWaiting = (state: DispatchState, load: number): boolean =>
  slotOf(state, load) === -1 && state.task.loads[load]?.ridesLast === false;

/**
 * Fertiliser takes the room that is left, so that nothing else stays behind for it: a load of each consignment in turn, so that where room
 * is short nobody takes it all.
 *
 * @returns per turn, as for `fillUp`, the loads that are tried
 */
function fertiliserInTurns({ task }: DispatchState): Uint8Array[] {
  const turns: Uint8Array[] = [];
  const taken = new Map<number, number>();
  task.loads.forEach(({ ridesLast, consignment }, load) => {
    if (!ridesLast) return;
    const turn = taken.get(consignment) ?? 0;
    taken.set(consignment, turn + 1);
    const loads = turns[turn] ?? new Uint8Array(task.loads.length);
    loads[load] = 1;
    turns[turn] = loads;
  });
  return turns;
}

/** The state that a search begins with: idle vehicle-days, or an earlier plan's trips. */
export function beginDispatch(
  scenario: Scenario,
  decisions: Decisions,
  places: Places,
  season: SeasonOutlook,
  allocation: Allocation,
  earlier: EarlierPlan | null,
) {
  const listed = listSlots(scenario, decisions, places, season, allocation.consignments);
  const cut = cutLoads(scenario, allocation, listed.slots, earlier);
  const told = earlier?.as === 'told';
  const task = compileTask(scenario, decisions, places, season, allocation, listed, cut, told, earlier?.days ?? []);
  const state = newState(task);
  const released = cut.released + (earlier ? holdEarlier(state, earlier.delivery).length : 0);
  if (told) freeForbidden(state);
  return { state, cut, released };
}

/** Lets go what a decision or a closure now forbids where it stood, and leaves everything else free to move. */
function freeForbidden(state: DispatchState): void {
  const { loads, slots } = state.task;
  state.ties.pinned.fill(0);
  const forbidden = loads.flatMap(({ dayCost, lock }, index) => {
    const slot = slots[slotOf(state, index)];
    if (!slot) return [];
    return dayCost[slot.day] === NEVER || (lock !== null && lock.vehicle !== slot.vehicle) ? [index] : [];
  });
  beginStep(state.rows);
  removeLoads(state, forbidden);
}

/** Depots that are to send goods but have no vehicle. */
function depotsWithoutVehicles(scenario: Scenario, allocation: Allocation): Problem[] {
  const withVehicles = new Set(scenario.vehicles.map(({ depotId }) => depotId));
  return scenario.depots.flatMap(({ id }, depot) =>
    !withVehicles.has(id) && allocation.consignments.some((c) => c.depot === depot)
      ? [problem('E6003', { file: 'vehicles.csv', column: 'depot_id', value: id })]
      : [],
  );
}
