import { firstDayAfterSeed, lastDayBeforeInoculant, type SeedLinks } from '../rules/seed-first.ts';
import { DEPOT, type RouteState } from './route-state.ts';

/** What ties loads to each other, to a day or to a vehicle, whatever row they ride in. Columns, one row a load. */
export interface Ties {
  readonly seedLinks: SeedLinks;
  /** Day of each slot. A shelf is one depot's day, and a load's shelves are its depot's days, day 0 first. */
  readonly day: Int32Array;
  /** Loads served once and for all: 1 where a load may not be moved. */
  readonly pinned: Uint8Array;
  /** Vehicle that a load is held to, -1 where none, and the vehicle of each slot. */
  readonly lockedTo: Int32Array;
  readonly vehicle: Int32Array;
  /** One load of each community brings its training: the community of each load that may, -1 of others. */
  readonly trainsFor: Int32Array;
  /** Loads of each community that may. */
  readonly trainees: readonly (readonly number[])[];
  readonly trainingMinutes: number;
  /** Load that brings the training now, per community; -1 while none does. Changed by the search. */
  readonly trainer: Int32Array;
  /** Changes of `trainer` in this step, as pairs of community and load before. */
  readonly trainerLog: number[];
}

/** Day on which a load is handed over; -1 while it is left behind. */
export function dayOf({ slotOf }: RouteState, { day }: Ties, visit: number): number {
  const slot = slotOf[visit] as number;
  return slot < 0 ? -1 : (day[slot] as number);
}

/** First day on which a load may be handed over, given who is served when; Infinity: not at all. */
export function firstDay(state: RouteState, ties: Ties, visit: number): number {
  return Math.max(0, firstDayAfterSeed(ties.seedLinks, visit, state.slotOf, ties.day));
}

/** Last day on which a load may be handed over, given who is served when; Infinity: any. */
export function lastDay(state: RouteState, ties: Ties, visit: number): number {
  return lastDayBeforeInoculant(ties.seedLinks, visit, state.slotOf, ties.day);
}

/** Whether a load that is held to a vehicle is held to that of a slot. */
export function mayRide({ lockedTo, vehicle }: Ties, visit: number, slot: number): boolean {
  const held = lockedTo[visit] as number;
  return held < 0 || held === vehicle[slot];
}

/** Whether every load of a row that was moved as a whole may stay: the vehicle it is held to, seed before inoculant. */
export function mayStay(state: RouteState, ties: Ties, slot: number): boolean {
  const row = slot * state.stride;
  const today = ties.day[slot] as number;
  for (let i = row; i < row + (state.nodes[slot] as number); i++) {
    const visit = state.load[i] as number;
    if (visit === DEPOT) continue;
    if (ties.pinned[visit] === 1 || !mayRide(ties, visit, slot)) return false;
    if (today < firstDay(state, ties, visit) || today > lastDay(state, ties, visit)) return false;
  }
  return true;
}

/** First and last day that `findRowDays` has found. */
export const rowDays = new Int32Array(2);
const ANY_DAY = 0x7fffffff;

/** Finds the days to which a row could be moved as a whole, given when seed and inoculant come that do not ride in it; `mayStay` is the rule. */
export function findRowDays({ stride, load, nodes, slotOf }: RouteState, ties: Ties, slot: number): void {
  const { day, pinned, seedLinks } = ties;
  const row = slot * stride;
  let first = 0;
  let last = ANY_DAY;
  for (let i = row; i < row + (nodes[slot] as number); i++) {
    const visit = load[i] as number;
    if (visit === DEPOT) continue;
    if (pinned[visit] === 1) last = -1;
    const seed = seedLinks.dryOf[visit] as readonly number[];
    for (let k = 0; k < seed.length; k++) {
      const other = slotOf[seed[k] as number] as number;
      if (other >= 0 && other !== slot && (day[other] as number) > first) first = day[other] as number;
    }
    const inoculant = seedLinks.inoculantOf[visit] as readonly number[];
    for (let k = 0; k < inoculant.length; k++) {
      const other = slotOf[inoculant[k] as number] as number;
      if (other >= 0 && other !== slot && (day[other] as number) < last) last = day[other] as number;
    }
  }
  rowDays[0] = first;
  rowDays[1] = last;
}

/** Would the load bring its community's training, if it came? */
export function wouldTrain({ trainsFor, trainer }: Ties, visit: number): boolean {
  const community = trainsFor[visit] as number;
  return community >= 0 && (trainer[community] as number) < 0;
}

/** Makes a load's minutes of work those with its training or without. */
export function setWork(state: RouteState, ties: Ties, visit: number, trains: boolean): void {
  const minutes = state.problem.visits.minutes[visit] as number;
  state.workMinutes[visit] = trains ? minutes + ties.trainingMinutes : minutes;
}

/** Notes that a load is now served: it trains, where nobody else does. */
export function takeOnTraining(state: RouteState, ties: Ties, visit: number): void {
  const trains = wouldTrain(ties, visit);
  if (trains) setTrainer(ties, ties.trainsFor[visit] as number, visit);
  setWork(state, ties, visit, trains);
}

/** Notes that a load is no longer served. */
export function dropTraining(ties: Ties, visit: number): void {
  const community = ties.trainsFor[visit] as number;
  if (community >= 0 && ties.trainer[community] === visit) setTrainer(ties, community, -1);
}

export function setTrainer({ trainer, trainerLog }: Ties, community: number, load: number): void {
  trainerLog.push(community, trainer[community] as number);
  trainer[community] = load;
}

/** Takes back who trained, and the work of the loads of the rows that are about to be put back. */
export function takeBackTraining(state: RouteState, ties: Ties): void {
  const { trainer, trainerLog, trainsFor } = ties;
  for (let i = trainerLog.length - 2; i >= 0; i -= 2) trainer[trainerLog[i] as number] = trainerLog[i + 1] as number;
  trainerLog.length = 0;
  const { backup, stride } = state;
  for (let at = 0; at < backup.count; at++) {
    for (let i = at * stride; i < at * stride + (backup.nodes[at] as number); i++) {
      const visit = backup.load[i] as number;
      if (visit === DEPOT) continue;
      const community = trainsFor[visit] as number;
      setWork(state, ties, visit, community >= 0 && trainer[community] === visit);
    }
  }
}

/** Puts back who trained, before the rows that were kept along with it. */
export function restoreTraining(state: RouteState, ties: Ties, trainer: Int32Array): void {
  ties.trainer.set(trainer);
  ties.trainsFor.forEach((community, visit) => {
    setWork(state, ties, visit, community >= 0 && trainer[community] === visit);
  });
}

/** Loads that may not stay where they are without this one: inoculant without its seed, loads whose trainer goes. */
export function companionsOf(ties: Ties, visit: number): readonly number[] {
  const inoculant = ties.seedLinks.inoculantOf[visit] as readonly number[];
  const community = ties.trainsFor[visit] as number;
  return community >= 0 && ties.trainer[community] === visit
    ? [...inoculant, ...(ties.trainees[community] as readonly number[])]
    : inoculant;
}
