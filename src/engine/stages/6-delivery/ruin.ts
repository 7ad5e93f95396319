import type { RandomStream } from '../../numerics/random-stream.ts';
import { type DispatchState, setLoad, setPlan } from './dispatch-state.ts';
import type { DispatchTask, TaskLoad } from './dispatch-task.ts';
import { groupRows } from './group-rows.ts';
import { planSlot, type SlotPlan, type TripWish } from './plan-slot.ts';
import type { Legs } from './rules/road-access.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Ruin by strings of neighbouring stops (Christiaens & Vanden Berghe 2020, Transportation Science 54:417, sections 5.1-5.2). */
const MEAN_REMOVED = 10;
const LONGEST_STRING = 10;
/** Neighbours kept per load. */
const NEIGHBOURS = 60;

/** Per load that the search moves: loads of the same depot by driving time, nearest first, itself at the head. */
export function listNeighbours(task: DispatchTask): readonly Int32Array[] {
  const byDepot = groupRows(task.loads, (load) => (load.ridesLast ? -1 : load.depot));
  const legsOfDepot = task.rounds.map((_, depot) => {
    const kinds = new Set<Legs>();
    for (const slot of task.slots) if (slot.depot === depot) kinds.add(slot.legs);
    return [...kinds];
  });
  return task.loads.flatMap((load, i) => {
    if (load.ridesLast) return [];
    const minutes = fastestFrom(legsOfDepot[load.depot] as readonly Legs[], load.place);
    const away = (other: number) => (other === i ? -1 : (minutes[(task.loads[other] as TaskLoad).place] as number));
    const near = [...(byDepot.get(load.depot) ?? [])].sort((a, b) => compareAway(away(a), away(b)) || a - b);
    return [Int32Array.from(near.slice(0, NEIGHBOURS))];
  });
}

/** Infinity less Infinity is no order. */
function compareAway(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

function fastestFrom(kinds: readonly Legs[], from: number): Float64Array {
  const size = kinds[0]?.size ?? from + 1;
  const fastest = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  fastest[from] = 0;
  for (const { at, minutes } of kinds) {
    for (let to = 0; to < size; to++) {
      const leg = at[from * size + to] as number;
      if (leg >= 0 && (minutes[leg] as number) < (fastest[to] as number)) fastest[to] = minutes[leg] as number;
    }
  }
  return fastest;
}

/**
 * Takes strings of stops off the vehicle-days around a random load.
 *
 * @param around loads of which the one is taken; null: any
 */
export function ruin(
  state: DispatchState,
  neighbours: readonly Int32Array[],
  random: RandomStream,
  around: readonly number[] | null,
): void {
  const { slotOf, plans } = state;
  const used = plans.filter((plan) => plan.version > 0);
  if (used.length === 0) return;
  const served = slotOf.reduce((count, slot) => count + (slot >= 0 ? 1 : 0), 0);
  const longest = Math.min(LONGEST_STRING, served / used.length);
  const strings = Math.floor(1 + random.next() * ((4 * MEAN_REMOVED) / (1 + longest)));
  const ruined = new Set<number>();
  const seed = around ? (around[random.below(around.length)] as number) : random.below(neighbours.length);
  for (const load of neighbours[seed] as Int32Array) {
    if (ruined.size >= strings) break;
    const slot = slotOf[load] as number;
    if (slot < 0 || ruined.has(slot)) continue;
    ruined.add(slot);
    const row = (plans[slot] as SlotPlan).trips.flatMap((trip) => trip.loads);
    const length = Math.floor(1 + random.next() * Math.min(row.length, longest));
    const at = row.indexOf(load);
    const first = Math.max(0, at - length + 1);
    const last = Math.min(at, row.length - length);
    const start = first + random.below(last - first + 1);
    removeLoads(state, row.slice(start, start + length));
  }
}

/**
 * Takes loads off their vehicle-days, and with them whatever may not stay without them: the inoculant for removed seed, and the
 * loads of a community whose trainer goes. Where what is left of a day could not be driven, the whole day goes.
 */
export function removeLoads(state: DispatchState, loads: readonly number[]): void {
  const bySlot = new Map<number, Set<number>>();
  const waiting = [...loads];
  for (let load = waiting.pop(); load !== undefined; load = waiting.pop()) {
    const slot = state.slotOf[load] as number;
    if (slot < 0 || state.pinned[load] === 1) continue;
    const going = bySlot.get(slot) ?? new Set<number>();
    if (going.has(load)) continue;
    bySlot.set(slot, going.add(load));
    for (const other of companions(state, load)) waiting.push(other);
  }
  for (const [slot, going] of bySlot) takeOff(state, slot, going);
}

/** Loads that may not stay where they are without this one. */
export function companions(state: DispatchState, load: number): readonly number[] {
  const { seedLinks, trainees } = state.task;
  const { community } = state.task.loads[load] as TaskLoad;
  const inoculant = seedLinks.inoculantOf[load] as readonly number[];
  return state.trial.trainer[community] === load
    ? [...inoculant, ...(trainees[community] as readonly number[])]
    : inoculant;
}

function takeOff(state: DispatchState, slotIndex: number, going: ReadonlySet<number>): void {
  const slot = state.task.slots[slotIndex] as Slot;
  const before = state.plans[slotIndex] as SlotPlan;
  const wishes: TripWish[] = before.trips.map((trip) => {
    const loads = trip.loads.filter((load) => !going.has(load));
    if (loads.length === trip.loads.length) return trip;
    const cold = loads.some((load) => (state.task.loads[load] as TaskLoad).inoculantKg > 0);
    return { loads, iceKg: cold ? trip.iceKg : 0, readyMinute: Number.NaN };
  });
  const after = planSlot(state.trial, slot, wishes, -1);
  if (after) {
    setPlan(state, slotIndex, after);
    for (const load of going) setLoad(state, load, -1);
    return;
  }
  const rest = before.trips.flatMap((trip) => trip.loads).filter((load) => !going.has(load));
  const free = rest.filter((load) => state.pinned[load] === 0);
  if (free.length > 0) removeLoads(state, [...going, ...free]);
}
