import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exactSum } from '../../../../src/engine/numerics/exact-sum.ts';
import { shareOut } from '../../../../src/engine/stages/4-needs/share-out.ts';

test('12.7 ha in three equal parts add up to it, which three plain products do not', () => {
  const shares = new Array<number>(3).fill(1 / 3);
  expect(exactSum(shares.map((share) => 12.7 * share))).not.toBe(12.7);
  expect(exactSum(shareOut(12.7, shares))).toBe(12.7);
});

test('parts add up without any rounding, in every order, and lie within the grid of the whole of their share', () => {
  const whole = fc.double({ min: 1e-6, max: 1e9, noNaN: true });
  const weights = fc.array(fc.double({ min: 1e-9, max: 1, noNaN: true }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(whole, weights, (total, draws) => {
      const sum = exactSum(draws);
      const shares = draws.map((one) => one / sum);
      const parts = shareOut(total, shares);
      expect(exactSum(parts)).toBe(total);
      expect(parts.reduce((left, part) => left - part, total)).toBe(0);
      expect(parts.toReversed().reduce((left, part) => left - part, total)).toBe(0);
      for (const [i, part] of parts.entries()) {
        expect(part).toBeGreaterThanOrEqual(0);
        expect(Math.abs(part - total * (shares[i] as number))).toBeLessThanOrEqual(1e-14 * total);
      }
    }),
  );
});

test('a community in one zone keeps its figure; nothing shared out is nothing', () => {
  expect(shareOut(12.7, [1])).toEqual([12.7]);
  expect(shareOut(0, [0.5, 0.5])).toEqual([0, 0]);
});
