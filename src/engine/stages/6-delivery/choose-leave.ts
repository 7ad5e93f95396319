import { runTrip, type Trial } from './run-trip.ts';
import type { TripFault } from './time-trip.ts';
import type { Slot } from './vehicle-day-slots.ts';

const QUARTERS = 96;
const QUARTER_MINUTES = 15;
/** What sums of minutes leave of nothing. */
const ROUNDING_MINUTES = 1e-6;

/** One trip of a vehicle-day: its loads in the order of hand-over, and its ice. */
export interface TripAsked {
  readonly loads: readonly number[];
  readonly kg: number;
  readonly iceKg: number;
  /** Rest of the crew at the depot before it, and driving since the last rest as it leaves. */
  readonly restBefore: number;
  readonly drivenMinutes: number;
}

/**
 * Chooses when the trips of a vehicle-day leave, each as early as allowed or on a quarter hour after that, so that together they lose least
 * on the road; exact but for gains that do not matter. Worked out from the last trip to the first: what the rest of the day comes to at best,
 * by the minute at which the vehicle is ready for it.
 */
export class LeavingHours {
  /** When the loading of each trip begins, as chosen last. */
  readonly readyMinutes: number[] = [];
  private readonly trial: Trial;
  private slot!: Slot;
  private trips: readonly TripAsked[] = [];
  /** Gain that a later hour must bring. */
  private matters = 0;
  /** Least that a trip and those after it lose if it leaves on a quarter hour or later, and that quarter hour: a row a trip. */
  private readonly least: Float64Array[] = [];
  private readonly quarter: Int32Array[] = [];

  constructor(trial: Trial) {
    this.trial = trial;
  }

  /**
   * @param matters gain in the scenario's currency from which on a trip leaves later than it could
   * @param step quarter hours from one hour that is looked at to the next
   * @returns what all loads lose on the road, in the scenario's currency; Infinity where no hours are allowed
   */
  choose(slot: Slot, trips: readonly TripAsked[], matters: number, step: number): number {
    this.slot = slot;
    this.trips = trips;
    this.matters = matters;
    for (let trip = trips.length - 1; trip >= 0; trip--) this.tabulate(trip, step);
    return this.follow();
  }

  private run(trip: number, readyMinute: number): number {
    const { loads, iceKg, drivenMinutes } = this.trips[trip] as TripAsked;
    return runTrip(this.trial, this.slot, loads, iceKg, readyMinute, drivenMinutes, -1);
  }

  /** When a trip is to be loaded in order to leave on a quarter hour. */
  private readyFor(trip: number, quarter: number): number {
    return quarter * QUARTER_MINUTES - (this.trips[trip] as TripAsked).kg * this.slot.loadingMinutesPerKg;
  }

  /** Fills a trip's rows of `least` and `quarter`; goods that do not mind the heat leave as early as they can. */
  private tabulate(trip: number, step: number): void {
    this.least[trip] ??= new Float64Array(QUARTERS + 1);
    this.quarter[trip] ??= new Int32Array(QUARTERS + 1);
    const [least, quarter] = [this.least[trip] as Float64Array, this.quarter[trip] as Int32Array];
    least.fill(Number.POSITIVE_INFINITY);
    this.run(trip, this.slot.loadsFrom);
    const { clock } = this.trial;
    if (clock.inoculantKg === 0 || isOutOfTime(clock.fault)) return;
    const first = quarterAfter(clock.leaveMinute);
    for (let q = first; q < QUARTERS; q += step) {
      const lost = this.run(trip, this.readyFor(trip, q));
      if (isOutOfTime(clock.fault)) break;
      least[q] = lost === Number.POSITIVE_INFINITY ? lost : lost + this.restOfDay(trip + 1, clock.returnMinute);
      quarter[q] = q;
    }
    for (let q = QUARTERS - 1; q >= first; q--) {
      if ((least[q + 1] as number) >= (least[q] as number)) continue;
      least[q] = least[q + 1] as number;
      quarter[q] = quarter[q + 1] as number;
    }
  }

  /** Least that a trip and those after it lose, the vehicle standing ready at a minute. */
  private restOfDay(trip: number, readyMinute: number): number {
    const asked = this.trips[trip];
    if (asked === undefined) return 0;
    const lost = this.run(trip, readyMinute + asked.restBefore);
    const { fault, leaveMinute, returnMinute } = this.trial.clock;
    if (isOutOfTime(fault)) return Number.POSITIVE_INFINITY;
    const early = lost === Number.POSITIVE_INFINITY ? lost : lost + this.restOfDay(trip + 1, returnMinute);
    const later = this.least[trip]?.[quarterAfter(leaveMinute)] as number;
    return later < early - this.matters ? later : early;
  }

  /** Goes through the day as chosen, from the first trip to the last. */
  private follow(): number {
    const { trial, readyMinutes } = this;
    let ready = this.slot.loadsFrom;
    let total = 0;
    for (let trip = 0; trip < this.trips.length; trip++) {
      ready += (this.trips[trip] as TripAsked).restBefore;
      const lost = this.run(trip, ready);
      const { fault, leaveMinute, returnMinute } = trial.clock;
      if (isOutOfTime(fault)) return Number.POSITIVE_INFINITY;
      const early = lost === Number.POSITIVE_INFINITY ? lost : lost + this.restOfDay(trip + 1, returnMinute);
      const q = quarterAfter(leaveMinute);
      if ((this.least[trip]?.[q] as number) < early - this.matters) {
        ready = this.readyFor(trip, this.quarter[trip]?.[q] as number);
        total += this.run(trip, ready);
      } else {
        total += lost;
        if (trip < this.trips.length - 1) this.run(trip, ready);
      }
      if (total === Number.POSITIVE_INFINITY) return total;
      readyMinutes[trip] = ready;
      ready = trial.clock.returnMinute;
    }
    return total;
  }
}

/**
 * Why a vehicle-day that stands idle cannot bring loads on one trip, whenever it leaves; `none` where it can.
 *
 * @param guest load on trial that would carry its community's training; -1 where none
 */
export function faultAtBest(
  trial: Trial,
  slot: Slot,
  loads: readonly number[],
  iceKg: number,
  guest: number,
): TripFault {
  const { clock } = trial;
  const run = (ready: number) => runTrip(trial, slot, loads, iceKg, ready, 0, guest);
  if (run(slot.loadsFrom) < Number.POSITIVE_INFINITY) return 'none';
  const fault = clock.fault;
  const loading = clock.kg * slot.loadingMinutesPerKg;
  for (let q = quarterAfter(clock.leaveMinute); isOfHeat(clock.fault) && q < QUARTERS; q++) {
    if (run(q * QUARTER_MINUTES - loading) < Number.POSITIVE_INFINITY) return 'none';
  }
  return fault;
}

const isOfHeat = (fault: TripFault): boolean => fault === 'too-hot' || fault === 'storage-hours';
/** Faults that a later hour does not mend. */
const isOutOfTime = (fault: TripFault): boolean =>
  fault === 'no-leg' || fault === 'leg-too-long' || fault === 'point-hours' || fault === 'back-too-late';
const quarterAfter = (minute: number): number =>
  Math.min(QUARTERS, Math.floor((minute + ROUNDING_MINUTES) / QUARTER_MINUTES) + 1);
