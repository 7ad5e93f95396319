import { describe, expect, it } from 'vitest';
import {
  acos,
  asin,
  atan,
  atan2,
  cos,
  exp,
  log,
  log10,
  pow,
  sin,
  tan,
  tenTo,
} from '../../../src/engine/numerics/elementary.ts';
import { RandomStream } from '../../../src/engine/numerics/random-stream.ts';
import {
  add,
  atan2Pair,
  divide,
  expPair,
  HALF_PI,
  LN2,
  logPair,
  multiply,
  negate,
  type Pair,
  sinCosPair,
  squareRoot,
  ulpsApart,
} from './double-double.ts';

const ARGUMENTS = 1_000_000;
const between = (random: RandomStream, low: number, high: number) => low + (high - low) * random.next();
/** Positive numbers over the whole range, and one in two close to 1 where logarithms are delicate. */
const positive = (random: RandomStream) =>
  random.next() < 0.5 ? between(random, 0.5, 2) : 2 ** between(random, -1060, 1020);
const one: Pair = [1, 0];
const TEN = logPair(10);

interface Case {
  readonly name: string;
  readonly argument: (random: RandomStream) => readonly [number, number];
  readonly ours: (x: number, y: number) => number;
  readonly truth: (x: number, y: number) => { value: Pair; power?: number };
  readonly ulps: number;
}

const CASES: readonly Case[] = [
  { name: 'exp', argument: (r) => [between(r, -744, 709.7), 0], ours: exp, truth: (x) => expPair([x, 0]), ulps: 1 },
  { name: 'log', argument: (r) => [positive(r), 0], ours: log, truth: (x) => ({ value: logPair(x) }), ulps: 1 },
  {
    name: 'log10',
    argument: (r) => [positive(r), 0],
    ours: log10,
    truth: (x) => ({ value: divide(logPair(x), TEN) }),
    ulps: 1,
  },
  {
    name: 'pow',
    argument: (r) => {
      const x = 2 ** between(r, -60, 60);
      return [x, between(r, -700, 700) / Math.max(1, Math.abs(Math.log(x)))];
    },
    ours: pow,
    truth: (x, y) => expPair(multiply([y, 0], logPair(x))),
    ulps: 1,
  },
  {
    name: '10^x',
    argument: (r) => [between(r, -300, 308), 0],
    ours: tenTo,
    truth: (x) => expPair(multiply([x, 0], TEN)),
    ulps: 1,
  },
  {
    name: 'sin',
    argument: (r) => [between(r, -1e4, 1e4), 0],
    ours: sin,
    truth: (x) => ({ value: sinCosPair([x, 0]).sin }),
    ulps: 1,
  },
  {
    name: 'cos',
    argument: (r) => [between(r, -1e4, 1e4), 0],
    ours: cos,
    truth: (x) => ({ value: sinCosPair([x, 0]).cos }),
    ulps: 1,
  },
  {
    name: 'tan',
    argument: (r) => [between(r, -1.57, 1.57), 0],
    ours: tan,
    truth: (x) => {
      const { sin: s, cos: c } = sinCosPair([x, 0]);
      return { value: divide(s, c) };
    },
    ulps: 2.5,
  },
  {
    name: 'atan',
    argument: (r) => [Math.tan(between(r, -1.57, 1.57)), 0],
    ours: atan,
    truth: (x) => ({ value: atan2Pair([x, 0], one) }),
    ulps: 1,
  },
  {
    name: 'atan2',
    argument: (r) => [between(r, -5, 5), between(r, -5, 5)],
    ours: atan2,
    truth: (y, x) => ({ value: atan2Pair([y, 0], [x, 0]) }),
    ulps: 1,
  },
  {
    name: 'acos',
    argument: (r) => [between(r, -1, 1), 0],
    ours: acos,
    truth: (x) => {
      const half = atan2Pair(squareRoot(add(one, [-x, 0])), squareRoot(add(one, [x, 0])));
      return { value: add(half, half) };
    },
    ulps: 1,
  },
  {
    name: 'asin',
    argument: (r) => [between(r, -1, 1), 0],
    ours: asin,
    truth: (x) => ({ value: atan2Pair([x, 0], squareRoot(multiply(add(one, [-x, 0]), add(one, [x, 0])))) }),
    ulps: 1,
  },
];

describe('elementary functions stay within 1 ulp of the truth', () => {
  it.each(CASES)('$name on a million arguments', ({ argument, ours, truth, ulps }) => {
    const random = new RandomStream(20);
    let worst = 0;
    let where: readonly number[] = [];
    for (let i = 0; i < ARGUMENTS; i++) {
      const [x, y] = argument(random);
      const { value, power } = truth(x, y);
      const apart = ulpsApart(ours(x, y), value, power);
      if (!(apart <= worst)) [worst, where] = [apart, [x, y]];
    }
    expect(worst, `at ${where}`).toBeLessThanOrEqual(ulps);
  });
});

describe('edges', () => {
  it('behaves at nought, one and beyond', () => {
    expect([exp(0), exp(-800), exp(800), log(1), log(0), pow(0, 2), pow(5, 0), pow(-2, 3), tenTo(2)]).toEqual([
      1,
      0,
      Number.POSITIVE_INFINITY,
      0,
      Number.NEGATIVE_INFINITY,
      0,
      1,
      -8,
      100,
    ]);
    expect([log(-1), pow(-2, 0.5), acos(1.1), asin(Number.NaN)].every(Number.isNaN)).toBe(true);
    expect([acos(1), acos(-1), asin(1), atan2(0, -1), atan2(1, 0), sin(0), cos(0)]).toEqual([
      0,
      Math.PI,
      Math.PI / 2,
      Math.PI,
      Math.PI / 2,
      0,
      1,
    ]);
  });
});

describe('the oracle itself', () => {
  const SCALE = 400n;
  const fixed = (parts: readonly number[]): bigint => parts.reduce((sum, part) => sum + exactFixed(part), 0n);

  /** A double as a whole number of 2^-400. */
  function exactFixed(x: number): bigint {
    if (x === 0) return 0n;
    const exponent = Math.floor(Math.log2(Math.abs(x)));
    const mantissa = BigInt(Math.round(x * 2 ** (52 - exponent)));
    return mantissa << (SCALE - 52n + BigInt(exponent));
  }

  it('holds ln 2 and pi / 2 to 150 bits (series in whole numbers: ln 2 = sum 1 / (k 2^k); Machin 1706)', () => {
    const unit = 1n << SCALE;
    let ln2 = 0n;
    for (let k = 1n; k < SCALE; k++) ln2 += unit / (k << k);
    const arctanInverse = (n: bigint) => {
      let sum = 0n;
      let power = unit / n;
      for (let k = 1n; power !== 0n; k += 2n, power /= n * n) sum += (k % 4n === 1n ? power : -power) / k;
      return sum;
    };
    const halfPi = 2n * (4n * arctanInverse(5n) - arctanInverse(239n));
    const within = unit >> 150n;
    for (const [parts, truth] of [
      [LN2, ln2],
      [HALF_PI, halfPi],
    ] as const) {
      const apart = fixed(parts) - truth;
      expect(apart < within && apart > -within).toBe(true);
    }
  });

  it('keeps the identities exp(ln x) = x and sin^2 + cos^2 = 1 to 96 bits', () => {
    const random = new RandomStream(3);
    for (let i = 0; i < 1000; i++) {
      const x = between(random, 0.01, 50);
      const { value, power } = expPair(logPair(x));
      const back = multiply(value, [2 ** power, 0]);
      expect(Math.abs(add(back, [-x, 0])[0])).toBeLessThan(x * 2 ** -96);
      const { sin: s, cos: c } = sinCosPair([x, 0]);
      expect(Math.abs(add(add(multiply(s, s), multiply(c, c)), negate(one))[0])).toBeLessThan(2 ** -96);
    }
  });
});
