import { LeavingHours, type TripAsked } from './choose-leave.ts';
import type { DispatchTask, TaskLoad } from './dispatch-task.ts';
import { iceForTrip } from './rules/ice-stock.ts';
import { runTrip, type Trial } from './run-trip.ts';
import type { Judge } from './search/judge.ts';
import { DEPOT, drivenAt, type RouteState, restAt } from './search/route-state.ts';
import { type Ties, wouldTrain } from './search/ties.ts';
import { TripValues } from './trip-values.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Marks of a price are parts of 1: whether the load would train, and how many sizes of box could still be filled with ice. */
const MARKS = 32;

/** Gain, as a part of a vehicle-day's cost, from which on a trip leaves later than it could: well below what plans are told apart by. */
const LATER_HOUR_SHARE = 1e-3;
/** While the search tries rows, later hours are looked at by the hour; the finished plan's by the quarter hour. */
const QUARTERS_ON_TRIAL = 4;

/**
 * What the rows of vehicle-days do not know: when trips leave, how warm the packs get, what that costs, whether it is allowed, and which
 * trips find ice. Where a day's ice is short, a vehicle's trips that gain most by it take it.
 */
export class DeliveryJudge implements Judge {
  private readonly task: DispatchTask;
  private readonly ties: Ties;
  private readonly trial: Trial;
  private readonly hours: LeavingHours;
  private readonly known = new TripValues();
  /** Sizes of the boxes of each depot, ascending, kg of ice. */
  private readonly boxes: readonly (readonly number[])[];
  /** Loads of the trip being judged. */
  private readonly aboard: number[] = [];
  /** What each cold trip of the row being judged loses, with ice and without. */
  private readonly withIce: number[] = [];
  private readonly without: number[] = [];

  constructor(task: DispatchTask, ties: Ties, trial: Trial) {
    this.task = task;
    this.ties = ties;
    this.trial = trial;
    this.hours = new LeavingHours(trial);
    this.boxes = task.rounds.map((_, depot) =>
      [...new Set(task.slots.filter((s) => s.depot === depot && s.boxIceKg > 0).map((s) => s.boxIceKg))].sort(
        (a, b) => a - b,
      ),
    );
  }

  markOf(state: RouteState, visit: number, shelf: number): number {
    const trains = wouldTrain(this.ties, visit) ? 1 : 0;
    const { inoculantKg, depot } = this.task.loads[visit] as TaskLoad;
    if (inoculantKg === 0) return trains / MARKS;
    const sizes = this.boxes[depot] as readonly number[];
    if (sizes.length === 0) return trains / MARKS;
    const left = this.iceLeft(state, shelf, -1);
    let filled = 0;
    for (const kg of sizes) if (iceForTrip(kg, left) > 0) filled++;
    return (2 * filled + trains) / MARKS;
  }

  extraCost(state: RouteState, slot: number): number {
    const { boxIceKg } = this.task.slots[slot] as Slot;
    const cold = this.countCold(state, slot);
    if (cold === 0) {
      state.iced[slot] = 0;
      return 0;
    }
    let boxes = 0;
    let left = boxIceKg > 0 ? this.iceLeft(state, state.shelfOf[slot] as number, slot) : 0;
    while (boxes < cold && iceForTrip(boxIceKg, left) > 0) {
      boxes++;
      left -= boxIceKg;
    }
    state.iced[slot] =
      boxes === 0 || boxes === cold ? this.coldTrips(state, slot, boxes) : this.share(state, slot, boxes);
    return this.costWithIce(state, slot, state.iced[slot] as number);
  }

  /** What the trips of a row cost beyond kilometres and days, given which of them take ice as bits; Infinity where a rule is broken. */
  costWithIce(state: RouteState, slot: number, iced: number): number {
    const { boxIceKg, icePerKg } = this.task.slots[slot] as Slot;
    let ice = 0;
    let lost = 0;
    let trip = 0;
    for (let node = this.firstNode(state, slot); node >= 0; node = this.nextTrip(state, slot, node)) {
      const takesIce = ((iced >> trip++) & 1) === 1;
      if (takesIce) ice += boxIceKg * icePerKg;
      lost += this.valueLost(state, slot, node, takesIce ? boxIceKg : 0);
    }
    return ice + (lost > this.matters(slot) ? this.leaveAtBest(state, slot, iced) : lost);
  }

  /** The trips of a row, given which of them take ice as bits, and when the loading of each begins for it to leave at the hour chosen. */
  chooseHours(state: RouteState, slot: number, iced: number) {
    const trips = this.tripsOf(state, slot, iced);
    this.hours.choose(this.task.slots[slot] as Slot, trips, this.matters(slot), 1);
    return trips.map((trip, i) => ({ ...trip, readyMinute: this.hours.readyMinutes[i] as number }));
  }

  private leaveAtBest(state: RouteState, slot: number, iced: number): number {
    const trips = this.tripsOf(state, slot, iced);
    return this.hours.choose(this.task.slots[slot] as Slot, trips, this.matters(slot), QUARTERS_ON_TRIAL);
  }

  private matters(slot: number): number {
    return LATER_HOUR_SHARE * (this.task.slots[slot] as Slot).dayCost;
  }

  private tripsOf(state: RouteState, slot: number, iced: number): TripAsked[] {
    const { boxIceKg } = this.task.slots[slot] as Slot;
    const trips: TripAsked[] = [];
    for (let node = this.firstNode(state, slot); node >= 0; node = this.nextTrip(state, slot, node)) {
      const loads: number[] = [];
      for (let i = node + 1; state.load[i] !== DEPOT; i++) loads.push(state.load[i] as number);
      const takesIce = ((iced >> trips.length) & 1) === 1;
      trips.push({
        loads,
        kg: state.tripKg[node] as number,
        iceKg: takesIce ? boxIceKg : 0,
        restBefore: restAt(state, node),
        drivenMinutes: drivenAt(state, node),
      });
    }
    return trips;
  }

  /** Ice left of a day's making at a depot, kg, one slot's own not counted. */
  iceLeft(state: RouteState, shelf: number, except: number): number {
    const { rounds, slots, planningDays } = this.task;
    let left = rounds[Math.floor(shelf / planningDays)]?.iceKgPerDay ?? 0;
    const start = state.problem.shelfStart[shelf] as number;
    for (let i = start; i < start + (state.used[shelf] as number); i++) {
      const slot = state.usedSlots[i] as number;
      if (slot === except) continue;
      for (let iced = state.iced[slot] as number; iced > 0; iced &= iced - 1) left -= (slots[slot] as Slot).boxIceKg;
    }
    return left;
  }

  private firstNode(state: RouteState, slot: number): number {
    return (state.nodes[slot] as number) > 0 ? slot * state.stride : -1;
  }

  /** The depot node at which the trip after this one begins; -1 behind the last. */
  private nextTrip(state: RouteState, slot: number, node: number): number {
    const last = slot * state.stride + (state.nodes[slot] as number) - 1;
    let next = node + 1;
    while (state.load[next] !== DEPOT) next++;
    return next >= last ? -1 : next;
  }

  private isCold(state: RouteState, node: number): boolean {
    for (let i = node + 1; state.load[i] !== DEPOT; i++) {
      if ((this.task.loads[state.load[i] as number] as TaskLoad).inoculantKg > 0) return true;
    }
    return false;
  }

  private countCold(state: RouteState, slot: number): number {
    let cold = 0;
    for (let node = this.firstNode(state, slot); node >= 0; node = this.nextTrip(state, slot, node)) {
      if (this.isCold(state, node)) cold++;
    }
    return cold;
  }

  /** Trips with inoculant as bits; none where there is no ice. */
  private coldTrips(state: RouteState, slot: number, boxes: number): number {
    let bits = 0;
    let trip = 0;
    for (let node = this.firstNode(state, slot); node >= 0 && boxes > 0; node = this.nextTrip(state, slot, node)) {
      if (this.isCold(state, node)) bits |= 1 << trip;
      trip++;
    }
    return bits;
  }

  /** Shares fewer boxes of ice than there are trips with inoculant: to those that gain most by it. */
  private share(state: RouteState, slot: number, boxes: number): number {
    const { boxIceKg } = this.task.slots[slot] as Slot;
    const { withIce, without } = this;
    let trips = 0;
    for (let node = this.firstNode(state, slot); node >= 0; node = this.nextTrip(state, slot, node)) {
      const cold = this.isCold(state, node);
      withIce[trips] = cold ? this.valueLost(state, slot, node, boxIceKg) : 0;
      without[trips++] = cold ? this.valueLost(state, slot, node, 0) : Number.NEGATIVE_INFINITY;
    }
    let bits = 0;
    for (let box = 0; box < boxes; box++) {
      let best = -1;
      let most = Number.NEGATIVE_INFINITY;
      for (let trip = 0; trip < trips; trip++) {
        const gain = (without[trip] as number) - (withIce[trip] as number);
        if (((bits >> trip) & 1) === 1 || !(gain > most)) continue;
        most = gain;
        best = trip;
      }
      if (best >= 0) bits |= 1 << best;
    }
    return bits;
  }

  /** What the loads of a trip that begins at a node lose on the road, leaving as early as allowed; Infinity where a rule forbids it. */
  private valueLost(state: RouteState, slot: number, node: number, iceKg: number): number {
    const { aboard, known, ties, trial, task } = this;
    aboard.length = 0;
    let cold = false;
    const ready = (state.arrives[node] as number) + restAt(state, node);
    const driven = drivenAt(state, node);
    known.begin((state.groupAt[slot] as number) * 2 + (iceKg > 0 ? 1 : 0), ready);
    known.andMinute(driven);
    for (let i = node + 1; state.load[i] !== DEPOT; i++) {
      const visit = state.load[i] as number;
      aboard.push(visit);
      if ((task.loads[visit] as TaskLoad).inoculantKg > 0) cold = true;
      const community = ties.trainsFor[visit] as number;
      known.and(visit * 2 + (community >= 0 && ties.trainer[community] === visit ? 1 : 0));
    }
    if (!cold) return 0;
    const found = known.find();
    if (!Number.isNaN(found)) return found;
    const value = runTrip(trial, task.slots[slot] as Slot, aboard, iceKg, ready, driven, -1);
    known.keep(value);
    return value;
  }
}
