/**
 * How a published set turns coordinates into lengths. `scale` is by what times are multiplied beside them, and what the cost is
 * divided by when it is told.
 */
export interface Rounding {
  readonly scale: number;
  readonly length: (dx: number, dy: number) => number;
}

const straight = (dx: number, dy: number) => Math.sqrt(dx * dx + dy * dy);

/** TSPLIB EUC_2D: to the nearest whole number. */
export const NEAREST: Rounding = { scale: 1, length: (dx, dy) => Math.floor(straight(dx, dy) + 0.5) };
/** Whole tenths, cut off: the convention of the DIMACS challenge for sets with hours. */
export const TENTHS: Rounding = { scale: 10, length: (dx, dy) => Math.floor(10 * straight(dx, dy)) };
/** Thousandths, to the nearest. */
export const THOUSANDTHS: Rounding = { scale: 1000, length: (dx, dy) => Math.floor(1000 * straight(dx, dy) + 0.5) };
export const UNROUNDED: Rounding = { scale: 1, length: straight };

const TSPLIB_PI = 3_141_592 / 1e6;

/** Degrees and minutes written as DDD.MM, in radians; TSPLIB counts with six decimals of pi. */
function radians(written: number): number {
  const degrees = Math.trunc(written);
  return (TSPLIB_PI * (degrees + (5 * (written - degrees)) / 3)) / 180;
}

const EARTH_KM = 6378.388;

/** TSPLIB GEO (Reinelt 1991, ORSA J. Comput. 3:376): whole kilometres on a sphere, cut off; x is latitude, y longitude. */
export function lengthsOnEarth(x: readonly number[], y: readonly number[]): Float64Array {
  const count = x.length;
  const [lat, lon] = [x.map(radians), y.map(radians)];
  const lengths = new Float64Array(count * count);
  for (let a = 0; a < count; a++) {
    for (let b = 0; b < count; b++) {
      if (a === b) continue;
      const q1 = Math.cos((lon[a] as number) - (lon[b] as number));
      const q2 = Math.cos((lat[a] as number) - (lat[b] as number));
      const q3 = Math.cos((lat[a] as number) + (lat[b] as number));
      lengths[a * count + b] = Math.floor(EARTH_KM * Math.acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1);
    }
  }
  return lengths;
}

/** All lengths between points, row by row. */
export function lengthsBetween(x: readonly number[], y: readonly number[], { length }: Rounding): Float64Array {
  const count = x.length;
  const lengths = new Float64Array(count * count);
  for (let a = 0; a < count; a++) {
    for (let b = 0; b < count; b++) {
      if (a !== b)
        lengths[a * count + b] = length((x[a] as number) - (x[b] as number), (y[a] as number) - (y[b] as number));
    }
  }
  return lengths;
}
