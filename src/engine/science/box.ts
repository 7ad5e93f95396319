import { exp, log } from '../numerics/elementary.ts';
import {
  AIR_OFFSETS,
  BOX_UA_W_PER_K,
  CARRIER_LITRES,
  CARRIER_UA_W_PER_K,
  CARTON_TAU_HOURS,
  ICE_MELT_J_PER_KG,
  LINER_J_PER_K,
  PACKS_J_PER_KG_K,
  type Ride,
  WATER_J_PER_KG_K,
} from '../reference/boxes.ts';
import type { Carriage } from '../vocabulary/fleet.ts';

/**
 * Packs on the road as one lump of heat: C dT/dt = UA (Ta - T). While ice is left the inside stays at 0 °C and the heat that
 * comes in melts ice; afterwards C = melt water + packs + liner. Where the air around is constant over a step both parts are
 * exact. Cartons without a box have a time constant of their own, whatever their mass.
 *
 * Mutable and reused, because a search runs millions of steps. After each step the last six fields say what the step was made
 * of: first `plateauMinutes` at 0 °C, then `curveMinutes` along an exponential from `fromC` by `midC` (half its time) to `toC`.
 */
export interface Box {
  celsius: number;
  iceKg: number;
  meltWaterKg: number;
  packsKg: number;
  /** W/K; NaN for cartons. */
  uaWPerK: number;
  plateauMinutes: number;
  curveMinutes: number;
  fromC: number;
  midC: number;
  toC: number;
  /** Effective air of the last step. */
  airC: number;
}

const MELT_J_PER_KG = ICE_MELT_J_PER_KG.value;
const WATER = WATER_J_PER_KG_K.value;
const PACKS = PACKS_J_PER_KG_K.value;
const LINER = LINER_J_PER_K.value;
const CARTON_TAU_MINUTES = CARTON_TAU_HOURS.value * 60;

export function newBox(): Box {
  return {
    celsius: 0,
    iceKg: 0,
    meltWaterKg: 0,
    packsKg: 0,
    uaWPerK: Number.NaN,
    plateauMinutes: 0,
    curveMinutes: 0,
    fromC: 0,
    midC: 0,
    toC: 0,
    airC: 0,
  };
}

/**
 * Fills a box: packs and liner at `celsius`, ice at 0 °C. The heat of the packs melts ice at once, until they stand at 0 °C
 * or the ice is gone. Cool water packs, loaded above 0 °C, only share their cold.
 *
 * @param uaWPerK NaN for cartons, which take no ice
 * @param coolantC temperature of the ice packs; above 0 they hold water
 */
export function fillBox(
  box: Box,
  packsKg: number,
  celsius: number,
  iceKg: number,
  uaWPerK: number,
  coolantC = 0,
): void {
  box.packsKg = packsKg;
  box.uaWPerK = uaWPerK;
  box.celsius = celsius;
  box.meltWaterKg = 0;
  box.iceKg = Number.isNaN(uaWPerK) ? 0 : iceKg;
  if (coolantC > 0) {
    box.meltWaterKg = box.iceKg;
    box.iceKg = 0;
    const cold = box.meltWaterKg * WATER;
    box.celsius += ((coolantC - celsius) * cold) / (cold + packsKg * PACKS + LINER);
    return;
  }
  if (box.iceKg <= 0 || celsius <= 0) return;
  const meltedKg = ((packsKg * PACKS + LINER) * celsius) / MELT_J_PER_KG;
  if (meltedKg < box.iceKg) {
    box.celsius = 0;
    box.iceKg -= meltedKg;
    box.meltWaterKg = meltedKg;
    return;
  }
  const leftJ = (packsKg * PACKS + LINER) * celsius - box.iceKg * MELT_J_PER_KG;
  box.meltWaterKg = box.iceKg;
  box.iceKg = 0;
  box.celsius = leftJ / heatCapacity(box);
}

/** J/K, ice not counted. */
export function heatCapacity(box: Box): number {
  return box.meltWaterKg * WATER + box.packsKg * PACKS + LINER;
}

/** Packs leave the box with the heat they hold; the rest stays as warm as it was. */
export function takeFromBox(box: Box, kg: number): void {
  box.packsKg = Math.max(0, box.packsKg - kg);
}

/** Runs the box for so many minutes in effective air of `airC`, exactly. Air below 0 °C does not freeze melt water again. */
export function stepBox(box: Box, airC: number, minutes: number): void {
  box.airC = airC;
  box.plateauMinutes = 0;
  if (box.iceKg > 0 && box.celsius <= 0) {
    const wattsIn = box.uaWPerK * Math.max(0, airC);
    const minutesToMelt = (box.iceKg * MELT_J_PER_KG) / (wattsIn * 60);
    if (minutesToMelt > minutes) {
      const meltedKg = (wattsIn * minutes * 60) / MELT_J_PER_KG;
      box.iceKg -= meltedKg;
      box.meltWaterKg += meltedKg;
      box.plateauMinutes = minutes;
      box.curveMinutes = 0;
      box.fromC = box.midC = box.toC = box.celsius;
      return;
    }
    box.plateauMinutes = minutesToMelt;
    box.meltWaterKg += box.iceKg;
    box.iceKg = 0;
  }
  box.curveMinutes = minutes - box.plateauMinutes;
  const half = exp(-box.curveMinutes / (2 * tauMinutes(box)));
  box.fromC = box.celsius;
  box.midC = airC - (airC - box.fromC) * half;
  box.toC = airC - (airC - box.fromC) * half * half;
  box.celsius = box.toC;
}

/** Time constant without ice, minutes. */
function tauMinutes(box: Box): number {
  return Number.isNaN(box.uaWPerK) ? CARTON_TAU_MINUTES : heatCapacity(box) / box.uaWPerK / 60;
}

/** Minutes of the last step above a limit, by the exact time of crossing. */
export function minutesAbove(box: Box, limitC: number): number {
  const plateau = limitC < 0 ? box.plateauMinutes : 0;
  const { fromC, toC, airC } = box;
  if (fromC > limitC === toC > limitC) return plateau + (toC > limitC ? box.curveMinutes : 0);
  const crossing = tauMinutes(box) * log((airC - fromC) / (airC - limitC));
  return plateau + (toC > limitC ? box.curveMinutes - crossing : crossing);
}

/** Widest stretch of temperature that one panel of Simpson's rule spans: rates grow tenfold over 14 to 18 K. */
const PANEL_KELVIN = 5;

/** Integral over the last step of a rate that depends on temperature, in rate times minutes: Simpson's rule on the curve. */
export function integrateStep(box: Box, rateAt: (celsius: number) => number): number {
  const plateau = box.plateauMinutes > 0 ? box.plateauMinutes * rateAt(0) : 0;
  if (box.curveMinutes === 0) return plateau;
  const { fromC, midC, toC, airC, curveMinutes } = box;
  const panels = Math.ceil(Math.abs(toC - fromC) / PANEL_KELVIN);
  if (panels <= 1) return plateau + (curveMinutes / 6) * (rateAt(fromC) + 4 * rateAt(midC) + rateAt(toC));
  const halfPanel = exp(-curveMinutes / (2 * panels * tauMinutes(box)));
  let excess = fromC - airC;
  let sum = rateAt(fromC);
  for (let panel = 1; panel <= panels; panel++) {
    sum += 4 * rateAt(airC + excess * halfPanel);
    excess *= halfPanel * halfPanel;
    sum += (panel < panels ? 2 : 1) * rateAt(airC + excess);
  }
  return plateau + (curveMinutes / (6 * panels)) * sum;
}

/**
 * Air as the box feels it, °C: shade air and the sun on the box, by how it rides.
 *
 * @param sunLoad 0 to 1, 1 = 1000 W/m2
 */
export function effectiveAirC(airC: number, sunLoad: number, carriage: Carriage, ride: Ride): number {
  const { fixed, perSun, sky } = AIR_OFFSETS[carriage][ride].value;
  return airC + fixed + Math.max(0, perSun * sunLoad - sky);
}

/** W/K of a vehicle's box: as given, else by its size. NaN where there is no box. */
export function boxUaWPerK(coolLitres: number, givenUaWPerK: number | null): number {
  if (coolLitres <= 0) return Number.NaN;
  return givenUaWPerK ?? (coolLitres <= CARRIER_LITRES.value ? CARRIER_UA_W_PER_K.value : BOX_UA_W_PER_K.value);
}

/** W/K from a rated cold life: the ice melts in so many hours at so many kelvin above the inside (ice-melt method). */
export function uaFromColdLife(iceKg: number, hours: number, kelvin: number): number {
  return (iceKg * MELT_J_PER_KG) / (kelvin * hours * 3600);
}
