/**
 * A slow oracle for elementary functions: numbers as unevaluated sums of two doubles, about 104 bits (Dekker 1971, Numer.
 * Math. 18:224-242). Series and Newton steps only; shares no method or constant table with the engine's functions. Its own
 * constants are checked in the test against whole-number arithmetic.
 */
export type Pair = readonly [number, number];

const twoSum = (a: number, b: number): Pair => {
  const s = a + b;
  const v = s - a;
  return [s, a - (s - v) + (b - v)];
};

const twoProduct = (a: number, b: number): Pair => {
  const p = a * b;
  const [ah, al] = split(a);
  const [bh, bl] = split(b);
  return [p, al * bl - (p - ah * bh - al * bh - ah * bl)];
};

const split = (a: number): Pair => {
  const big = 134217729 * a;
  const high = big - (big - a);
  return [high, a - high];
};

export const add = (a: Pair, b: Pair): Pair => {
  const [s, e] = twoSum(a[0], b[0]);
  const [t, f] = twoSum(a[1], b[1]);
  const [u, g] = twoSum(s, e + t);
  return twoSum(u, g + f);
};

export const negate = (a: Pair): Pair => [-a[0], -a[1]];

export const multiply = (a: Pair, b: Pair): Pair => {
  const [p, e] = twoProduct(a[0], b[0]);
  return twoSum(p, e + (a[0] * b[1] + a[1] * b[0]));
};

export const divide = (a: Pair, b: Pair): Pair => {
  const first = a[0] / b[0];
  const rest = add(a, negate(multiply(b, [first, 0])));
  const second = rest[0] / b[0];
  const rest2 = add(rest, negate(multiply(b, [second, 0])));
  return add(twoSum(first, second), [rest2[0] / b[0], 0]);
};

export const squareRoot = (a: Pair): Pair => {
  if (a[0] === 0) return [0, 0];
  const guess = Math.sqrt(a[0]);
  const rest = add(a, negate(twoProduct(guess, guess)));
  return twoSum(guess, rest[0] / (2 * guess));
};

/** ln 2 and pi / 2 in three doubles each. */
// biome-ignore lint/suspicious/noApproximativeNumericConstant: the first of three doubles that are ln 2 together
export const LN2: readonly number[] = [0.6931471805599453, 2.3190468138462996e-17, 5.707708438416212e-34];
export const HALF_PI: readonly number[] = [1.5707963267948966, 6.123233995736766e-17, -1.4973849048591833e-33];

/** x - n * (the constant in three doubles). */
function lessMultiple(x: Pair, n: number, constant: readonly number[]): Pair {
  return constant.reduce<Pair>((rest, part) => add(rest, negate(twoProduct(n, part))), x);
}

export function expPair(x: Pair): { value: Pair; power: number } {
  const power = Math.round(x[0] / Math.LN2);
  const r = multiply(lessMultiple(x, power, LN2), [1 / 64, 0]);
  let term: Pair = [1, 0];
  let sum: Pair = [1, 0];
  for (let n = 1; n <= 14; n++) {
    term = divide(multiply(term, r), [n, 0]);
    sum = add(sum, term);
  }
  for (let i = 0; i < 6; i++) sum = multiply(sum, sum);
  return { value: sum, power };
}

export function logPair(x: number): Pair {
  const guess = Math.log(x);
  const { value, power } = expPair([-guess, 0]);
  const half = Math.floor(power / 2);
  const scaled = multiply(multiply([x, 0], [2 ** half, 0]), multiply(value, [2 ** (power - half), 0]));
  const e = add(scaled, [-1, 0]);
  const square = multiply(e, e);
  return add([guess, 0], add(e, [-square[0] / 2, -square[1] / 2]));
}

export function sinCosPair(x: Pair): { sin: Pair; cos: Pair } {
  const n = Math.round(x[0] / (Math.PI / 2));
  const r = lessMultiple(x, n, HALF_PI);
  const square = negate(multiply(r, r));
  const series = (first: Pair, from: number): Pair => {
    let term = first;
    let sum = first;
    for (let k = from; k < 34; k += 2) {
      term = divide(multiply(term, square), [k * (k + 1), 0]);
      sum = add(sum, term);
    }
    return sum;
  };
  const s = series(r, 2);
  const c = series([1, 0], 1);
  const quadrant = ((n % 4) + 4) % 4;
  if (quadrant === 0) return { sin: s, cos: c };
  if (quadrant === 1) return { sin: c, cos: negate(s) };
  return quadrant === 2 ? { sin: negate(s), cos: negate(c) } : { sin: negate(c), cos: s };
}

export function atan2Pair(y: Pair, x: Pair): Pair {
  const guess = Math.atan2(y[0], x[0]);
  const { sin, cos } = sinCosPair([guess, 0]);
  const across = add(multiply(y, cos), negate(multiply(x, sin)));
  const along = add(multiply(x, cos), multiply(y, sin));
  return add([guess, 0], divide(across, along));
}

/** Distance of a result from the true value, in units of the result's last place. */
export function ulpsApart(result: number, truth: Pair, power = 0): number {
  const size = Math.abs(truth[0]);
  if (size === 0) return result === 0 ? 0 : Number.POSITIVE_INFINITY;
  const exponent = Math.max(Math.floor(Math.log2(size)) + power, -1022) - 52;
  const scale = (value: number, by: number) => value * 2 ** Math.trunc(by / 2) * 2 ** (by - Math.trunc(by / 2));
  const difference = scale(result, -exponent) - scale(truth[0], power - exponent);
  return Math.abs(difference - scale(truth[1], power - exponent));
}
