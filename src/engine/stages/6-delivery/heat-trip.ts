import { HOT_BAND_KELVIN } from '../../reference/boxes.ts';
import { type Box, fillBox, integrateStep, minutesAbove, newBox, stepBox, takeFromBox } from '../../science/box.ts';
import type { DispatchTask, TaskLoad } from './dispatch-task.ts';
import { reachAt } from './reach-value.ts';
import { staysBelowHotLimit } from './rules/hot-band.ts';
import { withinStorageHours } from './rules/storage-hours.ts';
import type { TripClock } from './time-trip.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Heat of one trip, filled anew for each trial: columns, one row a stop; NaN at stops that get no inoculant. */
export interface TripHeat {
  /** Value that the loads lose because of the road, beyond what the day alone costs. */
  valueLost: number;
  readonly packC: Float64Array;
  readonly packMaxC: Float64Array;
  readonly hotBandMaxC: Float64Array;
  readonly log10Loss: Float64Array;
  readonly hoursAboveStorage: Float64Array;
  /** The packs on their way, their twin in the hot band, and what has befallen them since the depot. */
  readonly box: Box;
  readonly hotBox: Box;
  packMax: number;
  hotMax: number;
  /** Told at the start and after every step where the curve is wanted; null while searching. */
  trace: ((minute: number, boxAirC: number, shadeC: number) => void) | null;
  /** log10 lost so far, and hours above so far, per survival set and per storage limit of the task. */
  readonly lossBySet: Float64Array;
  readonly hoursByLimit: Float64Array;
}

export function newTripHeat(mostLoads: number, survivalSets: number, storageLimits: number): TripHeat {
  const column = () => new Float64Array(mostLoads + 1);
  return {
    valueLost: 0,
    packC: column(),
    packMaxC: column(),
    hotBandMaxC: column(),
    log10Loss: column(),
    hoursAboveStorage: column(),
    box: newBox(),
    hotBox: newBox(),
    packMax: 0,
    hotMax: 0,
    trace: null,
    lossBySet: new Float64Array(survivalSets),
    hoursByLimit: new Float64Array(storageLimits),
  };
}

const QUARTER_MINUTES = 15;
const QUARTERS = 96;
const MINUTES_PER_DAY = 1440;
const HOT = HOT_BAND_KELVIN.value;
/** Packs weigh grams: less than this is what subtraction leaves of nothing. */
const EMPTY_KG = 1e-9;

/**
 * Runs the packs of a timed trip from the depot to their hand-over at the end of each stop's service, along with a twin in air
 * 2 K hotter. Air is that of the weather place being driven to, constant within a quarter hour, hence every step is exact.
 *
 * @returns whether packs stay below 40 °C in the hot band and within the hours above storage; the reason stands in `clock.fault`
 */
export function heatTrip(
  task: DispatchTask,
  slot: Slot,
  loads: readonly number[],
  iceKg: number,
  clock: TripClock,
  heat: TripHeat,
): boolean {
  startHeat(slot, iceKg, clock, heat);
  if (heat.trace) traceStart(slot, clock, heat.trace);
  const sets = setsAboard(task, loads);
  let minute = clock.leaveMinute;
  let packsKg = clock.inoculantKg;
  for (let s = 0; s < clock.stops; s++) {
    if (packsKg > 0) {
      const station = slot.round.station[clock.place[s] as number] as number;
      const row = (station * slot.planningDays + slot.day) * QUARTERS;
      const arrive = clock.arriveMinute[s] as number;
      const depart = clock.departMinute[s] as number;
      const cool =
        ride(task, sets, slot.air.moving, slot.shadeAirC, row, minute, arrive, heat) &&
        ride(task, sets, slot.air.parked, slot.shadeAirC, row, arrive, depart, heat);
      if (!cool) {
        clock.fault = 'too-hot';
        return false;
      }
      minute = depart;
    }
    packsKg -= handOver(task, slot, loads, s, clock, heat);
    if (packsKg < EMPTY_KG) packsKg = 0;
    if (clock.fault !== 'none') return false;
  }
  return true;
}

function startHeat(slot: Slot, iceKg: number, clock: TripClock, heat: TripHeat): void {
  let start = slot.packStartC;
  let hotStart = start;
  if (Number.isNaN(start)) {
    const row = ((slot.round.station[0] as number) * slot.planningDays + slot.day) * QUARTERS;
    start = slot.shadeAirC[row + Math.min(QUARTERS - 1, Math.floor(clock.leaveMinute / QUARTER_MINUTES))] as number;
    hotStart = start + HOT;
  }
  fillBox(heat.box, clock.inoculantKg, start, iceKg, slot.uaWPerK, slot.coolantC);
  fillBox(heat.hotBox, clock.inoculantKg, hotStart, iceKg, slot.uaWPerK, slot.coolantC);
  heat.packMax = start;
  heat.hotMax = hotStart;
  heat.valueLost = 0;
  heat.lossBySet.fill(0);
  heat.hoursByLimit.fill(0);
}

/** Tells of the moment of leaving, with the air that the first step begins in. */
function traceStart(slot: Slot, clock: TripClock, trace: NonNullable<TripHeat['trace']>): void {
  const row = ((slot.round.station[clock.place[0] as number] as number) * slot.planningDays + slot.day) * QUARTERS;
  const at = row + Math.min(QUARTERS - 1, Math.floor(clock.leaveMinute / QUARTER_MINUTES));
  trace(clock.leaveMinute, slot.air.moving[at] as number, slot.shadeAirC[at] as number);
}

/** Survival sets of the inoculant aboard, as bits. */
function setsAboard(task: DispatchTask, loads: readonly number[]): number {
  let bits = 0;
  for (const index of loads) {
    const { survival } = task.loads[index] as TaskLoad;
    if (survival >= 0) bits |= 1 << survival;
  }
  return bits;
}

/** Runs both boxes from one minute to another, quarter hour by quarter hour. False where the hot band gets too hot. */
function ride(
  task: DispatchTask,
  sets: number,
  air: Float32Array,
  shadeAirC: ArrayLike<number>,
  row: number,
  fromMinute: number,
  toMinute: number,
  heat: TripHeat,
): boolean {
  const { box, hotBox, lossBySet, hoursByLimit } = heat;
  let minute = fromMinute;
  while (minute < toMinute) {
    const quarter = Math.floor(minute / QUARTER_MINUTES);
    const next = Math.min(toMinute, (quarter + 1) * QUARTER_MINUTES);
    const airC = air[row + Math.min(QUARTERS - 1, quarter)] as number;
    stepBox(hotBox, airC + HOT, next - minute);
    if (hotBox.celsius > heat.hotMax) heat.hotMax = hotBox.celsius;
    if (!staysBelowHotLimit(heat.hotMax)) return false;
    stepBox(box, airC, next - minute);
    if (box.celsius > heat.packMax) heat.packMax = box.celsius;
    for (let set = 0; set < lossBySet.length; set++) {
      if ((sets & (1 << set)) === 0) continue;
      const rate = task.survivalRates[set] as (celsius: number) => number;
      lossBySet[set] = (lossBySet[set] as number) + integrateStep(box, rate) / MINUTES_PER_DAY;
    }
    for (let limit = 0; limit < hoursByLimit.length; limit++) {
      const above = minutesAbove(box, task.storageLimits[limit] as number);
      hoursByLimit[limit] = (hoursByLimit[limit] as number) + above / 60;
    }
    if (heat.trace) heat.trace(next, airC, shadeAirC[row + Math.min(QUARTERS - 1, quarter)] as number);
    minute = next;
  }
  return true;
}

/** Hands over the inoculant of a stop: writes the stop's row, adds up the value lost, takes the packs out of the box; kg. */
function handOver(
  task: DispatchTask,
  slot: Slot,
  loads: readonly number[],
  stop: number,
  clock: TripClock,
  heat: TripHeat,
): number {
  let kg = 0;
  let loss = Number.NaN;
  let hours = Number.NaN;
  for (let i = clock.firstLoad[stop] as number; i < (clock.firstLoad[stop + 1] as number); i++) {
    const load = task.loads[loads[i] as number] as TaskLoad;
    if (load.survival < 0) continue;
    kg += load.inoculantKg;
    const lost = heat.lossBySet[load.survival] as number;
    if (!(loss >= lost)) loss = lost;
    heat.valueLost += load.worth * (reachAt(load.reach, slot.day, 0) - reachAt(load.reach, slot.day, lost));
    if (load.storageLimit < 0) continue;
    const above = heat.hoursByLimit[load.storageLimit] as number;
    if (!(hours >= above)) hours = above;
    heat.valueLost += load.worth * Math.min(1, above * task.labelHourShare);
    if (!withinStorageHours(above, task.mostStorageHours)) clock.fault = 'storage-hours';
  }
  const served = kg > 0;
  heat.packC[stop] = served ? heat.box.celsius : Number.NaN;
  heat.packMaxC[stop] = served ? heat.packMax : Number.NaN;
  heat.hotBandMaxC[stop] = served ? heat.hotMax : Number.NaN;
  heat.log10Loss[stop] = loss;
  heat.hoursAboveStorage[stop] = hours;
  takeFromBox(heat.box, kg);
  takeFromBox(heat.hotBox, kg);
  return kg;
}
