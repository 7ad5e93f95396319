import { HOT_BAND_KELVIN } from '../reference/boxes.ts';
import type { SurvivalSet } from '../reference/survival-sets.ts';
import { type Box, fillBox, integrateStep, newBox, stepBox } from './box.ts';
import type { EffectiveAir } from './effective-air.ts';
import { packLog10PerDay } from './survival.ts';

const QUARTER_MINUTES = 15;
const QUARTERS = 96;
const MINUTES_PER_DAY = 1440;
const HOT = HOT_BAND_KELVIN.value;

/** One drive to one place and the hand-over there. */
export interface SingleTrip {
  readonly leaveMinute: number;
  readonly driveMinutes: number;
  /** Parked at the place until the packs are signed for. */
  readonly serviceMinutes: number;
  readonly packsKg: number;
  /** Temperature of the packs as they leave. */
  readonly startC: number;
  readonly hotStartC: number;
  readonly iceKg: number;
  readonly coolantC: number;
  /** NaN: cartons. */
  readonly uaWPerK: number;
}

/** What it does to the packs. Overwritten by every trip. */
export interface SingleTripHeat {
  readonly box: Box;
  readonly hotBox: Box;
  packMaxC: number;
  hotBandMaxC: number;
  /** log10 lost, one entry a set. */
  readonly log10Loss: Float64Array;
}

export function newSingleTripHeat(sets: number): SingleTripHeat {
  return { box: newBox(), hotBox: newBox(), packMaxC: 0, hotBandMaxC: 0, log10Loss: new Float64Array(sets) };
}

/**
 * Runs the packs of one drive and hand-over, and a twin in air 2 K hotter, quarter hour by quarter hour, as the delivery
 * does for whole trips.
 *
 * @param row start of the day in `air`: (weatherPlace * planningDays + day) * 96
 */
export function runSingleTrip(
  trip: SingleTrip,
  air: EffectiveAir,
  row: number,
  sets: readonly SurvivalSet[],
  heat: SingleTripHeat,
): void {
  fillBox(heat.box, trip.packsKg, trip.startC, trip.iceKg, trip.uaWPerK, trip.coolantC);
  fillBox(heat.hotBox, trip.packsKg, trip.hotStartC, trip.iceKg, trip.uaWPerK, trip.coolantC);
  heat.packMaxC = trip.startC;
  heat.hotBandMaxC = trip.hotStartC;
  heat.log10Loss.fill(0);
  const arrive = trip.leaveMinute + trip.driveMinutes;
  ride(air.moving, row, trip.leaveMinute, arrive, sets, heat);
  ride(air.parked, row, arrive, arrive + trip.serviceMinutes, sets, heat);
}

function ride(
  air: Float32Array,
  row: number,
  from: number,
  to: number,
  sets: readonly SurvivalSet[],
  heat: SingleTripHeat,
): void {
  const { box, hotBox, log10Loss } = heat;
  let minute = from;
  while (minute < to) {
    const quarter = Math.floor(minute / QUARTER_MINUTES);
    const next = Math.min(to, (quarter + 1) * QUARTER_MINUTES);
    const airC = air[row + Math.min(QUARTERS - 1, quarter)] as number;
    stepBox(hotBox, airC + HOT, next - minute);
    stepBox(box, airC, next - minute);
    heat.hotBandMaxC = Math.max(heat.hotBandMaxC, hotBox.celsius);
    heat.packMaxC = Math.max(heat.packMaxC, box.celsius);
    for (let s = 0; s < sets.length; s++) {
      const set = sets[s] as SurvivalSet;
      const lost = integrateStep(box, (celsius) => packLog10PerDay(celsius, set)) / MINUTES_PER_DAY;
      log10Loss[s] = (log10Loss[s] as number) + lost;
    }
    minute = next;
  }
}
