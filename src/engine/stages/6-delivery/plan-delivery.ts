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
import { type DispatchState, newState } from './dispatch-state.ts';
import { compileTask, type TaskLoad } from './dispatch-task.ts';
import { explainUnserved, findHopeful } from './explain-unserved.ts';
import { holdEarlier } from './hold-earlier.ts';
import { fillUp, improve } from './improve.ts';
import { newCandidates, newMemory } from './insertion.ts';
import { judgeDecisions, judgePromises } from './judge-decisions.ts';
import { keepPromises } from './keep-promises.ts';
import { noteLabelAndModel } from './note-label-and-model.ts';
import { NEVER } from './openings.ts';
import type { Recreator } from './recreate.ts';
import { removeLoads } from './ruin.ts';
import { scheduleTrips } from './schedule-trips.ts';
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
  const recreator = newRecreator(state);
  const disturbed = told ? [...state.slotOf.keys()].filter((load) => state.slotOf[load] === -1) : null;
  fillUp(recreator, hopeful);
  trainAll(recreator);
  const end = improve(recreator, hopeful, settings, disturbed);
  trainAll(recreator);
  fillUp(recreator, hopeful);
  for (const turn of fertiliserInTurns(state)) fillUp(recreator, turn);
  if (earlier?.days) keepPromises(recreator);
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
  const state = newState(task, scenario.communities.length);
  const released = cut.released + (earlier ? holdEarlier(state, earlier.delivery).length : 0);
  if (told) freeForbidden(state);
  return { state, cut, released };
}

/** Lets go what a decision or a closure now forbids where it stood, and leaves everything else free to move. */
function freeForbidden(state: DispatchState): void {
  const { loads, slots } = state.task;
  state.pinned.fill(0);
  const forbidden = loads.flatMap(({ dayCost, lock }, index) => {
    const slot = slots[state.slotOf[index] as number];
    if (!slot) return [];
    return dayCost[slot.day] === NEVER || (lock !== null && lock.vehicle !== slot.vehicle) ? [index] : [];
  });
  removeLoads(state, forbidden);
  state.log.length = 0;
}

export function newRecreator(state: DispatchState): Recreator {
  const { task } = state;
  const minutesOut = Float64Array.from(task.loads, (load) => {
    const slot = task.slots[task.slotOffsets[load.depot * (task.planningDays + 1)] ?? 0];
    const leg = slot?.depot === load.depot ? (slot.legs.at[load.place] as number) : -1;
    return leg >= 0 ? (slot?.legs.minutes[leg] as number) : 0;
  });
  return { state, memory: newMemory(state), candidates: newCandidates(task.slots.length), minutesOut };
}

/** Vehicle-days, crew, kilometres and ice, in the scenario's currency; null where nothing of it has a price. */
export function moneyOf(scenario: Scenario, { task, plans }: DispatchState): number | null {
  const priced =
    scenario.vehicles.some((v) => v.costPerDay > 0 || v.costPerKm > 0 || v.crew * v.perDiem > 0) ||
    scenario.prices.icePerKg !== null;
  if (!priced) return null;
  let total = 0;
  plans.forEach((plan, i) => {
    if (plan.trips.length === 0) return;
    const slot = task.slots[i];
    if (!slot) return;
    total += slot.dayCost + plan.iceKg * slot.icePerKg;
    for (const trip of plan.trips) total += kilometresOf(task.loads, slot, trip.loads) * slot.kmCost;
  });
  return total;
}

function kilometresOf(
  all: readonly TaskLoad[],
  { legs }: DispatchState['task']['slots'][number],
  loads: readonly number[],
): number {
  let [from, total] = [0, 0];
  for (const place of [...loads.map((load) => (all[load] as TaskLoad).place), 0]) {
    if (place !== from) total += legs.kilometres[legs.at[from * legs.size + place] as number] as number;
    from = place;
  }
  return total;
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
