import { log } from '../../../numerics/elementary.ts';
import type { RandomStream } from '../../../numerics/random-stream.ts';

/**
 * Chances drawn from tables: a step draws many, and the numbers that functions return would be put on the heap one by one.
 */
const FINENESS = 4096;
/** -ln of the middle of each of the equal parts of 0 to 1: quantiles of the exponential distribution. */
const EXPONENTIAL = Float64Array.from({ length: FINENESS }, (_, i) => -log((i + 0.5) / FINENESS));

/** Whether something that happens with a probability happens now. */
export function happens(random: RandomStream, probability: number): boolean {
  return random.pick(FINENESS) < probability * FINENESS;
}

/**
 * Draws what a step may cost more at a temperature. A step is kept that costs less than this: with probability exp(-more / heat)
 * (Metropolis). In an array, as the heat is, so that it is not put on the heap.
 */
export function drawAllowance(random: RandomStream, heat: Float64Array, allowance: Float64Array): void {
  allowance[0] = (heat[0] as number) * (EXPONENTIAL[random.pick(FINENESS)] as number);
}

/** How often something that happens with a probability does not, until it does. */
export function timesUntil(random: RandomStream, logOfNot: number): number {
  return Math.floor((EXPONENTIAL[random.pick(FINENESS)] as number) / -logOfNot);
}

/** Whole number from 1 to 1 + most, most need not be whole. */
export function oneTo(random: RandomStream, most: number): number {
  return Math.floor(1 + (random.pick(FINENESS) / FINENESS) * most);
}
