import { amountAt, InstanceFault } from './instance-fault.ts';
import type { Row } from './vrplib-text.ts';

/** Lengths given one by one, in the orders of TSPLIB (Reinelt 1991, ORSA J. Comput. 3:376). */
export function readEdgeWeights(rows: readonly Row[], format: string, places: number): Float64Array {
  const cells = cellsOf(format, places);
  const numbers = rows.flatMap(({ words, line }) => words.map((word) => amountAt(word, line, 'a length')));
  if (numbers.length !== cells.length) {
    throw new InstanceFault(`EDGE_WEIGHT_SECTION has ${numbers.length} lengths, not ${cells.length}.`);
  }
  const lengths = new Float64Array(places * places);
  cells.forEach(([from, to], i) => {
    lengths[from * places + to] = numbers[i] as number;
    if (format !== 'FULL_MATRIX') lengths[to * places + from] = numbers[i] as number;
  });
  return lengths;
}

function cellsOf(format: string, places: number): [number, number][] {
  const cells: [number, number][] = [];
  for (let a = 0; a < places; a++) {
    for (let b = 0; b < places; b++) {
      if (format === 'FULL_MATRIX') cells.push([a, b]);
      else if (format === 'LOWER_ROW' && b < a) cells.push([a, b]);
      else if (format === 'LOWER_DIAG_ROW' && b <= a) cells.push([a, b]);
      else if (format === 'UPPER_ROW' && b > a) cells.push([a, b]);
      else if (format === 'UPPER_DIAG_ROW' && b >= a) cells.push([a, b]);
    }
  }
  if (cells.length === 0) throw new InstanceFault(`EDGE_WEIGHT_FORMAT ${format} is not read.`);
  return cells;
}
