import type { UnservedReason } from '../../vocabulary/reasons.ts';
import type { Load, Unserved } from '../../vocabulary/stage-results/delivery.ts';
import { faultAtBest } from './choose-leave.ts';
import { type DispatchState, iceLeftFor, slotOf } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { fitsColdBox } from './rules/cold-box.ts';
import { iceForTrip } from './rules/ice-stock.ts';
import { fitsPayload } from './rules/payload.ts';
import { goesThereAndBack } from './rules/road-access.ts';
import { firstDay, lastDay, wouldTrain } from './search/ties.ts';
import type { TripFault } from './time-trip.ts';
import type { Slot } from './vehicle-day-slots.ts';

/**
 * Rules in the order in which a vehicle standing idle is held up by them. A load's reason is the last of these that any
 * vehicle-day of its depot got as far as.
 */
const HURDLES: readonly UnservedReason[] = [
  'not-reachable',
  'heavier-than-any-vehicle',
  'no-cold-box',
  'window-missed',
  'point-closed',
  'market-day-only',
  'overnight-trip-needed',
  'no-time-in-shift',
  'too-hot',
  'hours-above-storage',
  'seed-not-delivered',
  'decision',
  'no-vehicle-day-left',
];

const FAULT_REASON: Readonly<Record<TripFault, UnservedReason>> = {
  none: 'heavier-than-any-vehicle',
  'no-leg': 'not-reachable',
  'leg-too-long': 'overnight-trip-needed',
  'point-hours': 'no-time-in-shift',
  'back-too-late': 'no-time-in-shift',
  'too-hot': 'too-hot',
  'storage-hours': 'hours-above-storage',
};

/** Why each load left behind is: found by trying every rule on every vehicle-day as if it stood idle. */
export function explainUnserved(state: DispatchState, loads: readonly Load[]): Unserved[] {
  return loads.flatMap((load, index) =>
    slotOf(state, index) === -1 ? [{ load: index, reason: bindingReason(state, index), hectares: load.hectares }] : [],
  );
}

/**
 * Loads that some vehicle-day could bring on its own: 1 where there is hope, if that day stands idle and seed is there. Fertiliser, whose
 * days hang on the goods it goes with, has its turn after all else.
 */
export function findHopeful(state: DispatchState): Uint8Array {
  const enough: UnservedReason[] = ['seed-not-delivered', 'no-vehicle-day-left'];
  return Uint8Array.from(state.task.loads, ({ ridesLast }, index) =>
    !ridesLast && enough.includes(bindingReason(state, index)) ? 1 : 0,
  );
}

function bindingReason(state: DispatchState, index: number): UnservedReason {
  const { task } = state;
  const { depot } = task.loads[index] as TaskLoad;
  const row = depot * (task.planningDays + 1);
  const end = task.slotOffsets[row + task.planningDays] as number;
  const first = task.slotOffsets[row] as number;
  if (first === end) return 'no-vehicle-day-left';
  let farthest = 0;
  for (let slot = first; slot < end && farthest < HURDLES.length - 1; slot++) {
    farthest = Math.max(farthest, HURDLES.indexOf(firstHurdle(state, index, task.slots[slot] as Slot)));
  }
  return HURDLES[farthest] as UnservedReason;
}

/** What keeps a load off a vehicle-day that stands idle; `no-vehicle-day-left` where nothing does. */
export function firstHurdle(state: DispatchState, index: number, slot: Slot): UnservedReason {
  const load = state.task.loads[index] as TaskLoad;
  if (!goesThereAndBack(slot.legs, load.place)) return 'not-reachable';
  if (!fitsPayload(load.kg, slot.payloadKg)) return 'heavier-than-any-vehicle';
  if (!fitsColdBox(load.coolLitres, slot.coolLitres)) return 'no-cold-box';
  const { rows, ties, trial } = state;
  const last = Math.min(load.latest, lastDay(rows, ties, index));
  if (slot.day < load.earliest || slot.day > last) return 'window-missed';
  const verdict = load.dayVerdict[slot.day];
  if (verdict !== undefined && verdict !== 'allowed') return verdict;
  const iceKg = load.inoculantKg > 0 ? iceForTrip(slot.boxIceKg, iceLeftFor(state, slot)) : 0;
  const guest = wouldTrain(ties, index) ? index : -1;
  const fault = faultAtBest(trial, slot, [index], iceKg, guest);
  if (fault !== 'none') return isOvernight(slot, load.place) ? 'overnight-trip-needed' : FAULT_REASON[fault];
  if (slot.day < firstDay(rows, ties, index)) return 'seed-not-delivered';
  const { lock } = load;
  if (lock !== null && (lock.vehicle !== slot.vehicle || lock.day !== slot.day)) return 'decision';
  return 'no-vehicle-day-left';
}

/** Driving there and back alone takes more than the hours of the day. */
function isOvernight(slot: Slot, place: number): boolean {
  const { at, size, minutes } = slot.legs;
  const driving = (minutes[at[place] as number] as number) + (minutes[at[place * size] as number] as number);
  return driving > slot.latestBack - slot.earliestLeave;
}
