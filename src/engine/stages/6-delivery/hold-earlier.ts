import type { KnownDelivery } from '../../vocabulary/told-plan.ts';
import { type DispatchState, dayOfLoad, slotOf } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { removeLoads } from './fill-up.ts';
import { beginStep, layRow, takeBack } from './search/change-rows.ts';
import { holdExtra } from './search/judge.ts';
import { DEPOT } from './search/route-state.ts';
import { dropTraining, firstDay, setWork } from './search/ties.ts';
import type { Slot } from './vehicle-day-slots.ts';

/**
 * Puts the loads held from an earlier round back on their vehicle-days, in their order, with the ice and the training they had,
 * and pins them. A vehicle-day that can no longer be driven as it was lets its loads go, and so does inoculant whose seed was
 * let go.
 *
 * @returns loads that could not be held
 */
export function holdEarlier(state: DispatchState, earlier: KnownDelivery): readonly number[] {
  const { task, rows, ties } = state;
  const held = [...task.loads.keys()].filter((load) => (task.loads[load] as TaskLoad).held !== null);
  for (const load of held) {
    const { community, mayTrain, held: at } = task.loads[load] as TaskLoad;
    if (mayTrain && at?.trains) ties.trainer[community] = load;
  }
  for (const load of held) setWork(rows, ties, load, trains(state, load));
  for (const [slot, loads] of groupBySlot(state, held)) holdDay(state, slot, loads, earlier);
  for (const load of held) {
    if (slotOf(state, load) === -1) dropTraining(ties, load);
    else if (firstDay(rows, ties, load) > dayOfLoad(state, load)) {
      beginStep(rows);
      removeLoads(state, [load]);
    }
  }
  for (const load of held) ties.pinned[load] = slotOf(state, load) === -1 ? 0 : 1;
  return held.filter((load) => slotOf(state, load) === -1);
}

function groupBySlot({ task }: DispatchState, held: readonly number[]): readonly [number, number[]][] {
  const slotOf = new Map(task.slots.map((slot, i) => [`${slot.vehicle} ${slot.day}`, i]));
  const bySlot = new Map<number, number[]>();
  for (const load of held) {
    const at = (task.loads[load] as TaskLoad).held;
    const slot = slotOf.get(`${at?.vehicle} ${at?.day}`);
    if (slot !== undefined) bySlot.set(slot, [...(bySlot.get(slot) ?? []), load]);
  }
  return [...bySlot].sort((a, b) => a[0] - b[0]);
}

/** Holds one vehicle-day, with the training its loads are to bring or, where that does not fit, without. */
function holdDay(state: DispatchState, slot: number, loads: readonly number[], earlier: KnownDelivery): void {
  if (layAsBefore(state, slot, loads, earlier)) return;
  for (const load of loads) {
    dropTraining(state.ties, load);
    setWork(state.rows, state.ties, load, false);
  }
  layAsBefore(state, slot, loads, earlier);
}

function trains({ ties }: DispatchState, load: number): boolean {
  const community = ties.trainsFor[load] as number;
  return community >= 0 && ties.trainer[community] === load;
}

/** Drives the day's trips as the first round did, without the loads that are no longer there; false where a rule forbids it. */
function layAsBefore(state: DispatchState, index: number, loads: readonly number[], earlier: KnownDelivery): boolean {
  const { rows, judge, task } = state;
  const slot = task.slots[index] as Slot;
  const { nodes, iced } = rowAsBefore(state, slot, loads, earlier);
  if (nodes.length < 2) return false;
  beginStep(rows);
  const fits = nodes.length <= rows.stride && layRow(rows, index, nodes) && fitsVehicle(state, index);
  const extra = fits ? judge.costWithIce(rows, index, iced) : Number.POSITIVE_INFINITY;
  if (extra < Number.POSITIVE_INFINITY) {
    holdExtra(rows, index, extra, iced);
    if (judge.iceLeft(rows, rows.shelfOf[index] as number, -1) >= -ICE_SLACK_KG) return true;
  }
  takeBack(rows);
  return false;
}

/** The row of a day's trips, and those that took ice as bits. */
function rowAsBefore({ task }: DispatchState, slot: Slot, loads: readonly number[], earlier: KnownDelivery) {
  const day = earlier.vehicleDays.find(({ vehicle, day }) => vehicle === slot.vehicle && day === slot.day);
  const at = (load: number) => (task.loads[load] as TaskLoad).held;
  const position = (load: number) => at(load)?.position ?? 0;
  const nodes: number[] = [DEPOT];
  let [iced, trips] = [0, 0];
  for (const [number, trip] of (day?.trips ?? []).entries()) {
    const aboard = loads.filter((load) => at(load)?.trip === number).sort((a, b) => position(a) - position(b));
    if (aboard.length === 0) continue;
    const cold = aboard.some((load) => (task.loads[load] as TaskLoad).inoculantKg > 0);
    if (cold && trip.iceKg > 0) iced |= 1 << trips;
    trips++;
    nodes.push(...aboard, DEPOT);
  }
  return { nodes, iced };
}

/** A vehicle may have become smaller since. */
function fitsVehicle({ rows }: DispatchState, index: number): boolean {
  const { payloadKg, coolLitres } = rows.problem.slots;
  return (
    (rows.mostKg[index] as number) <= (payloadKg[index] as number) + SLACK &&
    (rows.mostLitres[index] as number) <= (coolLitres[index] as number) + SLACK
  );
}

const SLACK = 1e-6;
const ICE_SLACK_KG = 1e-9;
