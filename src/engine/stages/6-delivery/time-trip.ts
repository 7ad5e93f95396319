import type { DispatchTask, TaskLoad } from './dispatch-task.ts';
import { isDrivable, needsRest } from './rules/driving-rest.ts';
import { endsBeforeClosing, serviceStart } from './rules/point-hours.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Why a trip cannot be driven. `none`: it can. */
export type TripFault =
  | 'none'
  | 'no-leg'
  | 'leg-too-long'
  | 'point-hours'
  | 'back-too-late'
  | 'too-hot'
  | 'storage-hours';

/** The clock of one trip, filled anew for each trial and read before the next: columns, one row a stop. */
export interface TripClock {
  fault: TripFault;
  leaveMinute: number;
  returnMinute: number;
  kilometres: number;
  kg: number;
  coolLitres: number;
  inoculantKg: number;
  /** Driving since the crew's last rest, at the end of the trip. */
  drivenMinutes: number;
  stops: number;
  place: Int32Array;
  /** Stop s hands over loads[firstLoad[s]] to loads[firstLoad[s + 1] - 1]. */
  firstLoad: Int32Array;
  leg: Int32Array;
  arriveMinute: Float64Array;
  startMinute: Float64Array;
  departMinute: Float64Array;
  /** Rest on arrival, before service. */
  restMinutes: Float64Array;
  returnLeg: number;
}

export function newTripClock(mostLoads: number): TripClock {
  return {
    fault: 'none',
    leaveMinute: 0,
    returnMinute: 0,
    kilometres: 0,
    kg: 0,
    coolLitres: 0,
    inoculantKg: 0,
    drivenMinutes: 0,
    stops: 0,
    place: new Int32Array(mostLoads + 1),
    firstLoad: new Int32Array(mostLoads + 2),
    leg: new Int32Array(mostLoads + 1),
    arriveMinute: new Float64Array(mostLoads + 1),
    startMinute: new Float64Array(mostLoads + 1),
    departMinute: new Float64Array(mostLoads + 1),
    restMinutes: new Float64Array(mostLoads + 1),
    returnLeg: -1,
  };
}

/**
 * Runs the clock of a trip: loading from `readyMinute`, leaving as early as the hours allow but not so early that the crew
 * waits at the first stop, then leg, rest where one is owed before driving on, wait for opening, service. A rest is taken on arrival, before
 * the hand-over, so that the packs are counted on the road for as long as they can be. Loads that follow each other to one place are one stop.
 *
 * @param drivenMinutes driving since the crew's last rest, before the trip
 * @param trainer load that carries the training of its community, per community
 * @param guest load on trial that would carry its community's training; -1 where none
 * @returns whether the trip can be driven; the reason stands in `clock.fault`
 */
export function timeTrip(
  task: DispatchTask,
  slot: Slot,
  loads: readonly number[],
  readyMinute: number,
  drivenMinutes: number,
  trainer: Int32Array,
  guest: number,
  clock: TripClock,
): boolean {
  weighTrip(task, loads, clock);
  const { legs, round } = slot;
  let minute = Math.max(slot.earliestLeave, readyMinute + clock.kg * slot.loadingMinutesPerKg);
  clock.kilometres = 0;
  let from = 0;
  let driven = drivenMinutes;
  for (let s = 0; s < clock.stops; s++) {
    const place = clock.place[s] as number;
    const leg = legs.at[from * legs.size + place] as number;
    if (leg < 0) return fail(clock, 'no-leg');
    const legMinutes = legs.minutes[leg] as number;
    const opens = round.opensMinute[place] as number;
    if (s === 0) {
      minute = Math.max(minute, opens - legMinutes);
      clock.leaveMinute = minute;
    }
    const arrive = minute + legMinutes;
    if (!isDrivable(slot.rest, legMinutes)) return fail(clock, 'leg-too-long');
    const next = legs.at[place * legs.size + (s + 1 < clock.stops ? (clock.place[s + 1] as number) : 0)] as number;
    driven += legMinutes;
    const rests = next >= 0 && needsRest(slot.rest, driven, legs.minutes[next] as number);
    if (rests) driven = 0;
    clock.restMinutes[s] = rests ? slot.rest.minutes : 0;
    const start = serviceStart(arrive + (clock.restMinutes[s] as number), opens);
    clock.leg[s] = leg;
    clock.kilometres += legs.kilometres[leg] as number;
    clock.arriveMinute[s] = arrive;
    clock.startMinute[s] = start;
    minute = start + serviceAt(task, slot, loads, clock, s, trainer, guest);
    clock.departMinute[s] = minute;
    if (!endsBeforeClosing(minute, round.closesMinute[place] as number)) return fail(clock, 'point-hours');
    from = place;
  }
  const home = legs.at[from * legs.size] as number;
  if (home < 0) return fail(clock, 'no-leg');
  clock.returnLeg = home;
  clock.kilometres += legs.kilometres[home] as number;
  if (!isDrivable(slot.rest, legs.minutes[home] as number)) return fail(clock, 'leg-too-long');
  clock.returnMinute = minute + (legs.minutes[home] as number);
  clock.drivenMinutes = driven + (legs.minutes[home] as number);
  if (clock.returnMinute > slot.latestBack + 1e-9) return fail(clock, 'back-too-late');
  clock.fault = 'none';
  return true;
}

function fail(clock: TripClock, fault: TripFault): false {
  clock.fault = fault;
  return false;
}

/** Sums the trip's goods and groups its loads into stops. */
function weighTrip(task: DispatchTask, loads: readonly number[], clock: TripClock): void {
  let [kg, litres, inoculant, stops, last] = [0, 0, 0, 0, -1];
  for (let i = 0; i < loads.length; i++) {
    const load = task.loads[loads[i] as number] as TaskLoad;
    kg += load.kg;
    litres += load.coolLitres;
    inoculant += load.inoculantKg;
    if (load.place !== last) {
      clock.place[stops] = load.place;
      clock.firstLoad[stops++] = i;
      last = load.place;
    }
  }
  clock.firstLoad[stops] = loads.length;
  clock.stops = stops;
  clock.kg = kg;
  clock.coolLitres = litres;
  clock.inoculantKg = inoculant;
}

/** Minutes from the start of service at a stop to its end: hand-over, unloading, training. */
function serviceAt(
  task: DispatchTask,
  slot: Slot,
  loads: readonly number[],
  clock: TripClock,
  stop: number,
  trainer: Int32Array,
  guest: number,
): number {
  let minutes = slot.serviceMinutes;
  for (let i = clock.firstLoad[stop] as number; i < (clock.firstLoad[stop + 1] as number); i++) {
    const index = loads[i] as number;
    const load = task.loads[index] as TaskLoad;
    minutes += load.unloadingMinutes;
    if (index === guest || trainer[load.community] === index) minutes += task.trainingMinutes;
  }
  return minutes;
}
