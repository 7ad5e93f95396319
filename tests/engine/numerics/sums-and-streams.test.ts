import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contentHash } from '../../../src/engine/numerics/content-hash.ts';
import { exactSum } from '../../../src/engine/numerics/exact-sum.ts';
import { quantile } from '../../../src/engine/numerics/quantile.ts';
import { RandomStream } from '../../../src/engine/numerics/random-stream.ts';
import { sha256Hex } from '../../../src/engine/numerics/sha256.ts';

describe('exactSum', () => {
  it('keeps what plain addition loses (the cases of the fsum documentation of Python)', () => {
    expect(exactSum([0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1])).toBe(1);
    expect(exactSum([1, 1e100, 1, -1e100])).toBe(2);
    expect(exactSum([])).toBe(0);
  });

  it('is right to the last bit against whole-number arithmetic, in any order', () => {
    const cents = fc.array(fc.integer({ min: -1_000_000, max: 1_000_000 }), { maxLength: 60 });
    fc.assert(
      fc.property(cents, (whole) => {
        const terms = whole.map((n) => n / 1024);
        const truth = whole.reduce((sum, n) => sum + n, 0) / 1024;
        expect(exactSum(terms) + 0).toBe(truth + 0);
        expect(exactSum([...terms].reverse()) + 0).toBe(truth + 0);
      }),
    );
  });

  it('does not depend on the order of wide-ranging terms', () => {
    const wide = fc.array(fc.double({ noNaN: true, min: -1e15, max: 1e15 }), { maxLength: 40 });
    fc.assert(fc.property(wide, (terms) => exactSum(terms) === exactSum([...terms].sort((a, b) => a - b))));
  });
});

describe('RandomStream', () => {
  /** xoshiro128** as printed by Blackman & Vigna 2021, in whole numbers of any size. */
  function* published(seed: number): Generator<number> {
    const mask = 0xffffffffn;
    const rotate = (x: bigint, by: bigint) => ((x << by) | (x >> (32n - by))) & mask;
    let state = BigInt(seed);
    const s = [0, 1, 2, 3].map(() => {
      state = (state + 0x9e3779b9n) & mask;
      let z = state;
      z = ((z ^ (z >> 16n)) * 0x85ebca6bn) & mask;
      z = ((z ^ (z >> 13n)) * 0xc2b2ae35n) & mask;
      return z ^ (z >> 16n);
    }) as [bigint, bigint, bigint, bigint];
    while (true) {
      yield Number((rotate((s[1] * 5n) & mask, 7n) * 9n) & mask);
      const t = (s[1] << 9n) & mask;
      s[2] ^= s[0];
      s[3] ^= s[1];
      s[1] ^= s[2];
      s[0] ^= s[3];
      s[2] ^= t;
      s[3] = rotate(s[3], 11n);
    }
  }

  it.each([0, 1, 20, 4294967295])('follows the published recurrence from seed %i', (seed) => {
    const ours = new RandomStream(seed);
    const theirs = published(seed);
    for (let i = 0; i < 1000; i++) expect(ours.nextUint32()).toBe(theirs.next().value);
  });

  it('spreads evenly: mean 1/2 and variance 1/12 over 100,000 draws', () => {
    const random = new RandomStream(7);
    const draws = Array.from({ length: 100_000 }, () => random.next());
    const mean = exactSum(draws) / draws.length;
    const variance = exactSum(draws.map((x) => (x - mean) * (x - mean))) / draws.length;
    expect(mean).toBeCloseTo(0.5, 2);
    expect(variance).toBeCloseTo(1 / 12, 2);
  });
});

describe('quantile', () => {
  it('is type 7 of Hyndman & Fan 1996: 1 to 10 gives 1.9, 5.5, 9.1', () => {
    const oneToTen = [10, 3, 1, 8, 5, 2, 9, 4, 7, 6];
    expect([0.1, 0.5, 0.9].map((p) => quantile(oneToTen, p))).toEqual([1.9, 5.5, 9.1]);
  });

  it('leaves out missing values', () => {
    expect(quantile([Number.NaN, 4, Number.NaN, 2], 0.5)).toBe(3);
    expect(quantile([Number.NaN], 0.5)).toBeNaN();
  });
});

describe('sha256Hex', () => {
  it('agrees with the platform on FIPS 180-4 examples and on every length near a block', () => {
    const bytes = new TextEncoder().encode('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq'.repeat(40));
    for (let length = 0; length <= 200; length++) {
      const part = bytes.subarray(0, length);
      expect(sha256Hex(part)).toBe(createHash('sha256').update(part).digest('hex'));
    }
    expect(sha256Hex(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});

describe('contentHash', () => {
  it('sees content and not the order of keys, nor whether a column is typed', () => {
    expect(contentHash({ a: 1, b: [1, 2] })).toBe(contentHash({ b: Float64Array.from([1, 2]), a: 1 }));
    expect(contentHash({ a: 1 })).not.toBe(contentHash({ a: 2 }));
    expect(contentHash(['ab', 'c'])).not.toBe(contentHash(['a', 'bc']));
    expect(contentHash([0])).not.toBe(contentHash([-0]));
    expect(contentHash('x'.repeat(200_000))).not.toBe(contentHash('x'.repeat(200_001)));
  });
});
