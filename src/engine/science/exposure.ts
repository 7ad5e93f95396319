import { exp, log, tenTo } from '../numerics/elementary.ts';

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
