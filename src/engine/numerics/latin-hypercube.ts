import { RandomStream } from './random-stream.ts';

/**
 * Latin hypercube sample (McKay, Beckman & Conover 1979, Technometrics 21:239-245): of every column, one value in each of
 * `count` equal parts of the range, the columns paired at random.
 *
 * @returns `count` rows of `width` numbers, above 0 and below 1
 */
export function latinHypercube(count: number, width: number, seed: number): Float64Array[] {
  const stream = new RandomStream(seed);
  const rows = Array.from({ length: count }, () => new Float64Array(width));
  const part = new Int32Array(count);
  for (let column = 0; column < width; column++) {
    for (let i = 0; i < count; i++) {
      const j = stream.below(i + 1);
      part[i] = part[j] as number;
      part[j] = i;
    }
    // Half a step of the stream keeps every value off the ends.
    for (let i = 0; i < count; i++)
      (rows[i] as Float64Array)[column] = ((part[i] as number) + stream.next() + HALF_STEP) / (count + 2 * HALF_STEP);
  }
  return rows;
}

/** Half of the least step between two numbers of the stream, widened so that it is not lost in the sum. */
export const HALF_STEP = 1e-9;
