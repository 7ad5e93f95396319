import type { RoutingProblem } from './routing-problem.ts';

/** Marks the depot in a slot's row. */
export const DEPOT = -1;
/** Minutes and weights added up in another order may differ by so much. */
export const SLACK = 1e-9;

/**
 * Who goes where, as the search changes it: a row of fixed length for each slot, written over in place. A row begins and ends at
 * the depot and may call there in between; node i of slot v stands at v * stride + i. Rows touched in a step are copied once,
 * so that the step may be taken back.
 */
export interface RouteState {
  readonly problem: RoutingProblem;
  readonly stride: number;
  /** Nodes of each row; 0 while the slot stands idle. */
  readonly nodes: Int32Array;
  /** Load at each node, or DEPOT. */
  readonly load: Int32Array;
  readonly place: Int32Array;
  /** Kilometres to the next node. */
  readonly edge: Float64Array;
  /** Weight and volume of the trip that a node belongs to. The depot belongs to the trip that begins there. */
  readonly tripKg: Float64Array;
  readonly tripLitres: Float64Array;
  /** The same from the beginning of the trip to the node, its own load included. */
  readonly kgSoFar: Float64Array;
  readonly litresSoFar: Float64Array;
  /**
   * Rest at a node, on arrival and before work, and driving since the last rest as it leaves; at a depot node before the trip that begins
   * there. Empty where no rule is stated.
   */
  readonly restMinutes: Float64Array;
  readonly drivenMinutes: Float64Array;
  /**
   * When it leaves the node at the earliest, a rest there not counted, which another way on may not need; and when it must arrive there at
   * the latest.
   */
  readonly leaves: Float64Array;
  readonly mustArrive: Float64Array;
  /** When it arrives at the node: at the depot, when it stands ready for the next trip. */
  readonly arrives: Float64Array;
  /** Minutes from leaving the depot to leaving the node without waiting, and the latest leave that keeps all hours so far. */
  readonly workSoFar: Float64Array;
  readonly latestLeave: Float64Array;
  /** From arriving at the node to the end of the row: when it is back however early it comes, and minutes without waiting. */
  readonly backAtBest: Float64Array;
  readonly workToGo: Float64Array;
  /** Latest release of the trip that begins at a depot node. */
  readonly tripRelease: Float64Array;
  readonly km: Float64Array;
  readonly visitCost: Float64Array;
  readonly trips: Int32Array;
  /** Heaviest and fullest trip of each slot. */
  readonly mostKg: Float64Array;
  readonly mostLitres: Float64Array;
  /** Cost of the slot, and the part of it that a rule of the caller's adds (heat, ice). */
  readonly slotCost: Float64Array;
  readonly extraCost: Float64Array;
  /** Trips of each slot that take ice, a bit a trip. */
  readonly iced: Int32Array;
  /** Equal versions mean equal rows; 0 while idle. */
  readonly version: Float64Array;
  readonly slotOf: Int32Array;
  /** Room to mark loads that are taken out of a row. */
  readonly goes: Int32Array;
  /** Minutes of work of each load, training included where it brings it. */
  readonly workMinutes: Float64Array;
  readonly shelfOf: Int32Array;
  /** Slots in use on each shelf, at shelfStart[shelf] to shelfStart[shelf] + used[shelf] - 1. */
  readonly used: Int32Array;
  readonly usedSlots: Int32Array;
  readonly usedAt: Int32Array;
  /** Groups of each shelf: groupStart[shelf] to groupStart[shelf + 1] - 1, each with its idle slots on a stack. */
  readonly groupStart: Int32Array;
  readonly firstOfGroup: Int32Array;
  readonly idle: Int32Array;
  readonly idleSlots: Int32Array;
  readonly groupAt: Int32Array;
  /** Cost of all slots and of all loads left behind. */
  cost: number;
  served: number;
  usedCount: number;
  versions: number;
  readonly backup: Backup;
}

/** Rows as they were before the step. */
interface Backup {
  count: number;
  readonly slot: Int32Array;
  /** Where a slot's copy stands; -1 where it is untouched. */
  readonly at: Int32Array;
  readonly nodes: Int32Array;
  readonly load: Int32Array;
  readonly version: Float64Array;
  readonly extraCost: Float64Array;
  readonly iced: Int32Array;
  /** Room for a part of a row while it is moved. */
  readonly tail: Int32Array;
  cost: number;
}

export function newRouteState(problem: RoutingProblem, stride: number): RouteState {
  const { visits, slots } = problem;
  const nodes = slots.count * stride;
  const clock = problem.timed ? nodes : 0;
  const shelves = problem.shelfStart.length - 1;
  const groups = listGroups(problem);
  const perNode = () => new Float64Array(nodes);
  const perNodeOfClock = () => new Float64Array(clock);
  const state: RouteState = {
    problem,
    stride,
    nodes: new Int32Array(slots.count),
    load: new Int32Array(nodes),
    place: new Int32Array(nodes),
    edge: perNode(),
    tripKg: perNode(),
    tripLitres: perNode(),
    kgSoFar: perNode(),
    litresSoFar: perNode(),
    restMinutes: new Float64Array(problem.rest ? nodes : 0),
    drivenMinutes: new Float64Array(problem.rest ? nodes : 0),
    leaves: perNodeOfClock(),
    mustArrive: perNodeOfClock(),
    arrives: perNodeOfClock(),
    workSoFar: perNodeOfClock(),
    latestLeave: perNodeOfClock(),
    backAtBest: perNodeOfClock(),
    workToGo: perNodeOfClock(),
    tripRelease: perNodeOfClock(),
    km: new Float64Array(slots.count),
    visitCost: new Float64Array(slots.count),
    trips: new Int32Array(slots.count),
    mostKg: new Float64Array(slots.count),
    mostLitres: new Float64Array(slots.count),
    slotCost: new Float64Array(slots.count),
    extraCost: new Float64Array(slots.count),
    iced: new Int32Array(slots.count),
    version: new Float64Array(slots.count),
    slotOf: new Int32Array(visits.count).fill(-1),
    goes: new Int32Array(visits.count),
    workMinutes: visits.minutes.slice(),
    shelfOf: new Int32Array(slots.count),
    used: new Int32Array(shelves),
    usedSlots: new Int32Array(slots.count),
    usedAt: new Int32Array(slots.count).fill(-1),
    ...groups,
    cost: visits.unservedCost.reduce((sum, cost) => sum + cost, 0),
    served: 0,
    usedCount: 0,
    versions: 0,
    backup: {
      count: 0,
      slot: new Int32Array(slots.count),
      at: new Int32Array(slots.count).fill(-1),
      nodes: new Int32Array(slots.count),
      load: new Int32Array(nodes),
      version: new Float64Array(slots.count),
      extraCost: new Float64Array(slots.count),
      iced: new Int32Array(slots.count),
      tail: new Int32Array(stride),
      cost: 0,
    },
  };
  for (let shelf = 0; shelf < shelves; shelf++) {
    state.shelfOf.fill(shelf, problem.shelfStart[shelf], problem.shelfStart[shelf + 1]);
  }
  return state;
}

/** Rest of the crew before the trip that begins at a depot node. */
export function restAt({ problem, restMinutes }: RouteState, node: number): number {
  return problem.rest ? (restMinutes[node] as number) : 0;
}

/** Driving since the crew's last rest, as the trip that begins at a depot node leaves. */
export function drivenAt({ problem, drivenMinutes }: RouteState, node: number): number {
  return problem.rest ? (drivenMinutes[node] as number) : 0;
}

function listGroups({ slots, shelfStart }: RoutingProblem) {
  const groupStart = [0];
  const firstOfGroup: number[] = [];
  const groupAt = new Int32Array(slots.count);
  for (let shelf = 0; shelf + 1 < shelfStart.length; shelf++) {
    for (let slot = shelfStart[shelf] as number; slot < (shelfStart[shelf + 1] as number); slot++) {
      const begins = slot === shelfStart[shelf] || slots.group[slot] !== slots.group[slot - 1];
      if (begins) firstOfGroup.push(slot);
      groupAt[slot] = firstOfGroup.length - 1;
    }
    groupStart.push(firstOfGroup.length);
  }
  const idle = new Int32Array(firstOfGroup.length);
  for (let slot = 0; slot < slots.count; slot++) {
    const group = groupAt[slot] as number;
    idle[group] = (idle[group] as number) + 1;
  }
  // The slot on top of a group's stack is the next to be used: the first of the group, to begin with.
  const idleSlots = new Int32Array(slots.count);
  firstOfGroup.forEach((first, group) => {
    const count = idle[group] as number;
    for (let i = 0; i < count; i++) idleSlots[first + i] = first + count - 1 - i;
  });
  return {
    groupStart: Int32Array.from(groupStart),
    firstOfGroup: Int32Array.from(firstOfGroup),
    idle,
    idleSlots,
    groupAt,
  };
}

/** The idle slot of a group that is next to be used; -1 where all are in use. */
export function idleSlotOf(state: RouteState, group: number): number {
  const count = state.idle[group] as number;
  return count === 0 ? -1 : (state.idleSlots[(state.firstOfGroup[group] as number) + count - 1] as number);
}

/** Puts a slot on its shelf's list of slots in use, or back on its group's stack. */
export function markUsed(state: RouteState, slot: number, inUse: boolean): void {
  const shelf = state.shelfOf[slot] as number;
  const start = state.problem.shelfStart[shelf] as number;
  const group = state.groupAt[slot] as number;
  const first = state.firstOfGroup[group] as number;
  if (inUse) {
    const at = start + (state.used[shelf] as number);
    state.usedSlots[at] = slot;
    state.usedAt[slot] = at;
    state.used[shelf] = (state.used[shelf] as number) + 1;
    state.usedCount++;
    let i = first + (state.idle[group] as number) - 1;
    const top = i;
    while (state.idleSlots[i] !== slot) i--;
    state.idleSlots[i] = state.idleSlots[top] as number;
    state.idle[group] = (state.idle[group] as number) - 1;
    return;
  }
  const at = state.usedAt[slot] as number;
  const last = start + (state.used[shelf] as number) - 1;
  const moved = state.usedSlots[last] as number;
  state.usedSlots[at] = moved;
  state.usedAt[moved] = at;
  state.usedAt[slot] = -1;
  state.used[shelf] = (state.used[shelf] as number) - 1;
  state.usedCount--;
  state.idleSlots[first + (state.idle[group] as number)] = slot;
  state.idle[group] = (state.idle[group] as number) + 1;
}
