import type { DispatchTask, TaskLoad } from './dispatch-task.ts';
import { isDrivable } from './rules/driving-rest.ts';
import type { Orders } from './search/put-back.ts';
import { type PlaceMatrix, placeMatrix, type RoutingProblem } from './search/routing-problem.ts';
import type { Ties } from './search/ties.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Kilometres where there is no leg, so that sums stay finite; its minutes have no end, hence it is never driven. */
const NO_LEG_KM = 1e4;

/**
 * Writes the task down for the search: a slot a vehicle-day, a shelf a depot's day, loads in columns. What ties the
 * loads and what judges the rows is put in by the caller.
 */
export function poseDeliveries(task: DispatchTask): Omit<RoutingProblem, 'judge' | 'ties'> {
  const { loads, slots, rounds, planningDays } = task;
  const shelves = rounds.length * planningDays;
  const each = (value: (load: TaskLoad) => number) => Float64Array.from(loads, value);
  const column = (value: (slot: Slot) => number) => Float64Array.from(slots, value);
  const shelfCost = new Float64Array(loads.length * shelves).fill(Number.POSITIVE_INFINITY);
  for (const [i, load] of loads.entries()) shelfCost.set(load.dayCost, i * shelves + load.depot * planningDays);
  const { matrices, ofSlot } = listMatrices(slots);
  return {
    visits: {
      count: loads.length,
      place: Int32Array.from(loads, ({ place }) => place),
      kg: each(({ kg }) => kg),
      litres: each(({ coolLitres }) => coolLitres),
      minutes: each(({ unloadingMinutes }) => unloadingMinutes),
      releaseMinute: new Float64Array(loads.length),
      unservedCost: each(({ unservedCost }) => unservedCost),
      shelfFrom: Int32Array.from(loads, ({ depot }) => depot * planningDays),
      shelfTo: Int32Array.from(loads, ({ depot }) => (depot + 1) * planningDays),
      shelfCost,
    },
    slots: {
      count: slots.length,
      matrix: ofSlot,
      group: groupsOf(task),
      payloadKg: column(({ payloadKg }) => payloadKg),
      // Without a box packs ride in cartons, limited by payload alone.
      coolLitres: column(({ coolLitres }) => (coolLitres > 0 ? coolLitres : Number.POSITIVE_INFINITY)),
      dayCost: column(({ dayCost }) => dayCost),
      kmCost: column(({ kmCost }) => kmCost),
      loadsFrom: column(({ loadsFrom }) => loadsFrom),
      earliestLeave: column(({ earliestLeave }) => earliestLeave),
      latestBack: column(({ latestBack }) => latestBack),
      mostMinutes: new Float64Array(slots.length).fill(Number.POSITIVE_INFINITY),
      loadingMinutesPerKg: column(({ loadingMinutesPerKg }) => loadingMinutesPerKg),
    },
    matrices,
    shelfStart: Int32Array.from({ length: shelves + 1 }, (_, shelf) =>
      shelf === shelves
        ? slots.length
        : (task.slotOffsets[Math.floor(shelf / planningDays) * (planningDays + 1) + (shelf % planningDays)] as number),
    ),
    reloads: true,
    rest: slots.find(({ rest }) => rest.afterMinutes < Number.POSITIVE_INFINITY)?.rest ?? null,
    grows: false,
    timed: true,
    mostLoads: mostLoadsOfDay(task, matrices, ofSlot),
    orders: ordersOf(task, matrices, ofSlot),
  };
}

/** Ties of the loads: seed before inoculant, training once, locks. */
export function tieLoads({ loads, slots, seedLinks, trainees, trainingMinutes }: DispatchTask): Ties {
  return {
    seedLinks,
    day: Int32Array.from(slots, ({ day }) => day),
    pinned: new Uint8Array(loads.length),
    lockedTo: Int32Array.from(loads, ({ lock }) =>
      lock === null ? -1 : lock.vehicle < 0 ? NO_SUCH_VEHICLE : lock.vehicle,
    ),
    vehicle: Int32Array.from(slots, ({ vehicle }) => vehicle),
    trainsFor: Int32Array.from(loads, ({ mayTrain, community }) => (mayTrain ? community : -1)),
    trainees,
    trainingMinutes,
    trainer: new Int32Array(trainees.length).fill(-1),
    trainerLog: [],
  };
}

/** What a lock on a vehicle that does not exist holds a load to: it may ride with none. */
const NO_SUCH_VEHICLE = 1 << 30;

/** A vehicle that some load is held to is no longer like the others of its group. */
function groupsOf({ loads, slots }: DispatchTask): Int32Array {
  const held = new Set(loads.map(({ lock }) => lock?.vehicle ?? -1));
  const most = slots.reduce((max, { group }) => Math.max(max, group), 0);
  return Int32Array.from(slots, ({ group, vehicle }) => (held.has(vehicle) ? most + 1 + vehicle : group));
}

/** One matrix for each set of legs and minutes of service. Service is part of the leg there: a place opens for it that much later. */
function listMatrices(slots: readonly Slot[]): { readonly matrices: PlaceMatrix[]; readonly ofSlot: Int32Array } {
  const matrices: PlaceMatrix[] = [];
  const known = new Map<object, Map<number, number>>();
  const ofSlot = Int32Array.from(slots, (slot) => {
    const byService = known.get(slot.legs) ?? new Map<number, number>();
    known.set(slot.legs, byService);
    const found = byService.get(slot.serviceMinutes) ?? matrices.push(matrixOf(slot)) - 1;
    byService.set(slot.serviceMinutes, found);
    return found;
  });
  return { matrices, ofSlot };
}

function matrixOf({ legs, round, serviceMinutes, rest }: Slot): PlaceMatrix {
  const { size, at } = legs;
  const km = new Float64Array(size * size);
  const minutes = new Float64Array(size * size);
  for (let from = 0; from < size; from++) {
    for (let to = 0; to < size; to++) {
      if (from === to) continue;
      const leg = at[from * size + to] as number;
      const isDriven = leg >= 0 && isDrivable(rest, legs.minutes[leg] as number);
      km[from * size + to] = isDriven ? (legs.kilometres[leg] as number) : NO_LEG_KM;
      minutes[from * size + to] = isDriven
        ? (legs.minutes[leg] as number) + (to > 0 ? serviceMinutes : 0)
        : Number.POSITIVE_INFINITY;
    }
  }
  const opens = round.opensMinute.map((minute, place) => (place > 0 ? minute + serviceMinutes : minute));
  return placeMatrix(size, km, minutes, opens, round.closesMinute, serviceMinutes);
}

/**
 * No vehicle-day holds more loads than the quickest of a depot's that fill its longest day: the first load of a place takes at least the
 * shortest way there with service, each further one its unloading.
 */
function mostLoadsOfDay(task: DispatchTask, matrices: readonly PlaceMatrix[], ofSlot: Int32Array): number {
  let most = 1;
  task.rounds.forEach((_, depot) => {
    const own = task.slots.flatMap((slot, i) => (slot.depot === depot ? [{ slot, i }] : []));
    const longestDay = Math.max(0, ...own.map(({ slot }) => slot.latestBack - slot.loadsFrom));
    const used = [...new Set(own.map(({ i }) => ofSlot[i] as number))].map((m) => matrices[m] as PlaceMatrix);
    const seen = new Set<number>();
    const work = task.loads
      .filter((load) => load.depot === depot)
      .map(({ place, unloadingMinutes }) => {
        const first = !seen.has(place);
        seen.add(place);
        return unloadingMinutes + (first ? Math.min(...used.map((matrix) => shortestWay(matrix, place))) : 0);
      })
      .sort((a, b) => a - b);
    let [count, sum] = [0, 0];
    for (const load of work) {
      sum += load;
      if (sum > longestDay + 1) break;
      count++;
    }
    most = Math.max(most, count);
  });
  return most;
}

function shortestWay({ size, minutesTo }: PlaceMatrix, place: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let from = 0; from < size; from++) {
    if (from !== place) least = Math.min(least, minutesTo[place * size + from] as number);
  }
  return least;
}

/** Heaviest, farthest, nearest, narrowest window first; random with what is left of 1. */
function ordersOf({ loads, slots }: DispatchTask, matrices: readonly PlaceMatrix[], ofSlot: Int32Array): Orders {
  const firstOfDepot = new Map<number, number>();
  slots.forEach(({ depot }, i) => {
    if (!firstOfDepot.has(depot)) firstOfDepot.set(depot, i);
  });
  const near = Float64Array.from(loads, ({ depot, place }) => {
    const slot = firstOfDepot.get(depot);
    return slot === undefined ? 0 : (matrices[ofSlot[slot] as number]?.minutesFrom[place] as number);
  });
  return {
    keys: [
      Float64Array.from(loads, ({ kg, coolLitres }) => -kg / 1000 - coolLitres),
      near.map((minutes) => -minutes),
      near,
      Float64Array.from(loads, ({ latest, earliest }) => latest - earliest),
    ],
    shares: [0.35, 0.15, 0.1, 0.1],
  };
}
