import { exp, log, tenTo } from '../numerics/elementary.ts';
import type { Exposure } from '../vocabulary/readings.ts';

/** Measures of what a temperature record did to what it held: mean kinetic temperature, degree hours, hours above, log loss. */

/** Activation energy over the gas constant that pharmacopoeias use, K (83.144 kJ/mol / 8.3144 J/molK; USP <1160>, read). */
export const PHARMACOPOEIA_KELVIN = 10_000;
const ZERO_CELSIUS_K = 273.15;
/** J/mol K. */
const GAS_CONSTANT = 8.3144;

/**
 * Mean kinetic temperature, °C: the constant temperature that would have done as much (USP <1160>, read).
 *
 * @param weights time of each value, any unit; equal where left out
 */
export function meanKineticCelsius(
  celsius: ArrayLike<number>,
  weights: ArrayLike<number> | null = null,
  energyKelvin: number = PHARMACOPOEIA_KELVIN,
): number {
  let weighted = 0;
  let total = 0;
  for (let i = 0; i < celsius.length; i++) {
    const weight = weights ? (weights[i] as number) : 1;
    weighted += weight * exp(-energyKelvin / ((celsius[i] as number) + ZERO_CELSIUS_K));
    total += weight;
  }
  return energyKelvin / -log(weighted / total) - ZERO_CELSIUS_K;
}

/** Kelvin hours above a threshold of evenly spaced samples joined by straight lines. */
export function degreeHours(celsius: ArrayLike<number>, stepHours: number, thresholdC: number): number {
  let sum = 0;
  for (let i = 1; i < celsius.length; i++) {
    const from = (celsius[i - 1] as number) - thresholdC;
    const to = (celsius[i] as number) - thresholdC;
    sum += (stepHours * shareAbove(from, to) * (Math.max(0, from) + Math.max(0, to))) / 2;
  }
  return sum;
}

/** Hours above a threshold of evenly spaced samples joined by straight lines. */
export function hoursAbove(celsius: ArrayLike<number>, stepHours: number, thresholdC: number): number {
  let sum = 0;
  for (let i = 1; i < celsius.length; i++) {
    sum += stepHours * shareAbove((celsius[i - 1] as number) - thresholdC, (celsius[i] as number) - thresholdC);
  }
  return sum;
}

/** Part of a straight line from one height to another that lies above nought. */
function shareAbove(from: number, to: number): number {
  if (from <= 0 && to <= 0) return 0;
  if (from >= 0 && to >= 0) return 1;
  return Math.max(from, to) / Math.abs(to - from);
}

/** Time for one log10 at a temperature: D(T) = D(ref) 10^((ref - T) / z). The unit is that of `timeAtReference`. */
export function timePerLog10(timeAtReference: number, referenceC: number, zCelsius: number, celsius: number): number {
  return timeAtReference * tenTo((referenceC - celsius) / zCelsius);
}

/** Rate at one temperature over the rate at another (Arrhenius). */
export function rateRatio(energyKelvin: number, celsius: number, overCelsius: number): number {
  return exp(energyKelvin * (1 / (overCelsius + ZERO_CELSIUS_K) - 1 / (celsius + ZERO_CELSIUS_K)));
}

/** Activation energy, kJ/mol, from a rate ratio between two temperatures (Arrhenius). */
export function activationEnergyKJ(ratio: number, celsius: number, overCelsius: number): number {
  const inverseKelvin = 1 / (overCelsius + ZERO_CELSIUS_K) - 1 / (celsius + ZERO_CELSIUS_K);
  return (GAS_CONSTANT * log(ratio)) / inverseKelvin / 1000;
}

/** z, the kelvins for a tenfold rate, near a temperature: ln 10 R T2 / Ea. */
export function zFromActivationEnergy(energyKJ: number, celsius: number): number {
  const kelvin = celsius + ZERO_CELSIUS_K;
  return (log(10) * GAS_CONSTANT * kelvin * kelvin) / (energyKJ * 1000);
}

/** Everything that is shown of a temperature record: samples at any times, joined by straight lines. */
export function measureExposure(minutes: ArrayLike<number>, celsius: ArrayLike<number>): Exposure {
  const sums = { hours: 0, degreeHours30: 0, hoursAbove30: 0, hoursAbove35: 0, hoursAbove40: 0 };
  const values: number[] = [];
  const weights: number[] = [];
  for (let i = 1; i < celsius.length; i++) {
    const hours = ((minutes[i] as number) - (minutes[i - 1] as number)) / 60;
    const line = [celsius[i - 1] as number, celsius[i] as number];
    sums.hours += hours;
    sums.degreeHours30 += degreeHours(line, hours, 30);
    sums.hoursAbove30 += hoursAbove(line, hours, 30);
    sums.hoursAbove35 += hoursAbove(line, hours, 35);
    sums.hoursAbove40 += hoursAbove(line, hours, 40);
    addLine(line[0] as number, line[1] as number, hours, values, weights);
  }
  const sorted = Float64Array.from(celsius).sort();
  const meanKineticC = values.length > 0 ? meanKineticCelsius(values, weights) : (sorted[0] ?? Number.NaN);
  return { ...sums, minC: sorted[0] ?? Number.NaN, maxC: sorted.at(-1) ?? Number.NaN, meanKineticC };
}

/** Widest stretch of temperature that one panel of Simpson's rule spans. */
const PANEL_KELVIN = 5;

/** A straight line as weighted values by Simpson's rule: ends of each panel once, its middle four times. */
function addLine(from: number, to: number, hours: number, values: number[], weights: number[]): void {
  const panels = Math.max(1, Math.ceil(Math.abs(to - from) / PANEL_KELVIN));
  for (let panel = 0; panel < panels; panel++) {
    const at = (part: number) => from + ((panel + part) / panels) * (to - from);
    values.push(at(0), at(0.5), at(1));
    weights.push(hours / panels, (4 * hours) / panels, hours / panels);
  }
}

/**
 * Integral of a rate along a record of samples joined by straight lines, in rate times days. Exact for rates that grow by
 * a fixed factor per kelvin: between rates a and b the mean is (b - a) / ln(b / a).
 */
export function integrateRecord(
  minutes: ArrayLike<number>,
  celsius: ArrayLike<number>,
  ratePerDay: (celsius: number) => number,
): number {
  let sum = 0;
  for (let i = 1; i < celsius.length; i++) {
    const days = ((minutes[i] as number) - (minutes[i - 1] as number)) / 1440;
    const [from, to] = [ratePerDay(celsius[i - 1] as number), ratePerDay(celsius[i] as number)];
    const logRatio = log(to / from);
    // Of nearly equal rates the plain mean is as good, and divides by nothing.
    sum += days * (Math.abs(logRatio) < 1e-6 ? (from + to) / 2 : (to - from) / logRatio);
  }
  return sum;
}
