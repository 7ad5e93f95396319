import { HALF_STEP, latinHypercube } from './latin-hypercube.ts';
import { RandomStream } from './random-stream.ts';

/**
 * Latin hypercube whose first columns are even in pairs as well (Tang 1993, Journal of the American Statistical Association
 * 88:1392-1397): of every two of them, one row falls in each of side * side equal squares. The array behind it is that of
 * Bush 1952 (Annals of Mathematical Statistics 23:426-434) with shuffled symbols. It has side + 1 columns; those beyond are a
 * plain Latin hypercube.
 *
 * @param side a prime number, or 1
 * @returns side * side rows of `width` numbers, above 0 and below 1
 */
export function orthogonalHypercube(side: number, width: number, seed: number): Float64Array[] {
  const count = side * side;
  const rows = latinHypercube(count, width, seed);
  const stream = new RandomStream(seed + 104_729);
  for (let column = 0; column < Math.min(width, side + 1); column++) {
    const symbols = shuffled(side, stream);
    // In each symbol's equal part of the range, its rows take one finer part each.
    const finer = Array.from({ length: side }, () => shuffled(side, stream));
    const met = new Int32Array(side);
    for (let row = 0; row < count; row++) {
      const [i, j] = [Math.floor(row / side), row % side];
      const symbol = column === 0 ? j : (i + (column - 1) * j) % side;
      const within = finer[symbol]?.[met[symbol] as number] as number;
      met[symbol] = (met[symbol] as number) + 1;
      const part = (symbols[symbol] as number) * side + within;
      (rows[row] as Float64Array)[column] = (part + stream.next() + HALF_STEP) / (count + 2 * HALF_STEP);
    }
  }
  return rows;
}

function shuffled(count: number, stream: RandomStream): Int32Array {
  const order = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const j = stream.below(i + 1);
    order[i] = order[j] as number;
    order[j] = i;
  }
  return order;
}
