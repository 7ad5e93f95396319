import { describe, expect, it } from 'vitest';
import type { Pool } from '../../../../src/engine/stages/5-allocation/form-pools.ts';
import {
  makeWholePacks,
  rationPacks,
  roundingKg,
} from '../../../../src/engine/stages/5-allocation/make-whole-packs.ts';

/** One stock for all rows: kg shared to each, kg asked by each, and packs by size, largest first. */
function packs(shareKg: readonly number[], askedKg: readonly number[], stock: readonly (readonly [number, number])[]) {
  const pool: Pool = {
    rows: shareKg.map((_, r) => r),
    groups: [0],
    arcRow: Int32Array.from(shareKg, (_, r) => r),
    arcGroup: new Int32Array(shareKg.length),
    arcMinutes: new Float64Array(shareKg.length),
  };
  const sizes = [stock.map(([kg, count]) => ({ kg, packs: count, lots: [{ lot: 0, packs: count }] }))];
  const made = makeWholePacks(pool, Float64Array.from(shareKg), sizes, {
    keptKg: new Float64Array(shareKg.length),
    askedKg: Float64Array.from(askedKg),
    highKg: Float64Array.from(askedKg),
    rank: new Int32Array(shareKg.length),
  });
  return { made: made.map((own) => Array.from(own)), rounding: roundingKg(pool, Float64Array.from(shareKg), sizes) };
}

describe('whole packs, by hand', () => {
  it('largest first: 74 of 74 kg are one of 50, two of 10, two of 2', () => {
    expect(
      packs(
        [74],
        [74],
        [
          [50, 9],
          [10, 9],
          [2, 9],
        ],
      ).made,
    ).toEqual([[1, 2, 2]]);
  });

  it('with enough, the rest is made up to a smallest pack: 75 kg ask for one more of 2', () => {
    expect(
      packs(
        [75],
        [75],
        [
          [50, 9],
          [10, 9],
          [2, 9],
        ],
      ).made,
    ).toEqual([[1, 2, 3]]);
  });

  it('a size that runs out is rationed: 3 of 50 kg for wants of 4 and 2 are 2 and 1; small packs make up the rest', () => {
    expect(
      packs(
        [200, 100],
        [200, 100],
        [
          [50, 3],
          [10, 99],
        ],
      ).made,
    ).toEqual([
      [2, 10],
      [1, 5],
    ]);
  });

  it('left-over packs go to who is farthest below its share as part of its need: 1.5 of 3 kg before 1.9 of 100', () => {
    // 103 kg of need, shares of 1.5 and 49.9 kg: 24 packs of 2 kg for the second and one pack left over.
    expect(packs([1.5, 49.9], [3, 100], [[2, 25]]).made).toEqual([[1], [24]]);
  });

  it('a row whose rest is too small for the packs left lets another have them', () => {
    // Twenty needs of 30 kg and one of 1,000 share 802 kg by halves: 16 sacks of 50 and one pack of 2. Ten sacks fit the
    // large share of 500; a sack would be more than the 30 kg of a small one, so that the large one gets all sixteen.
    const small = Array.from({ length: 20 }, () => 15);
    const { made } = packs(
      [500, ...small],
      [1000, ...small.map(() => 30)],
      [
        [50, 16],
        [2, 1],
      ],
    );
    expect(made[0]).toEqual([16, 0]);
    expect(made.slice(1).reduce((sum, [sacks, packets]) => sum + 50 * (sacks ?? 0) + 2 * (packets ?? 0), 0)).toBe(2);
  });

  it('rounding leaves nobody short by more than the largest pack', () => {
    expect(
      packs(
        [75],
        [75],
        [
          [50, 9],
          [2, 9],
        ],
      ).rounding,
    ).toBe(50);
  });
});

describe("Hamilton's method of largest remainders", () => {
  it('13 of 40: 21, 13 and 6 are 6.825, 4.225 and 1.95, hence 7, 4 and 2', () => {
    expect(rationPacks([21, 13, 6], 13)).toEqual([7, 4, 2]);
  });

  it('gives all where there is enough, nothing where there is nothing, and ties to the earlier', () => {
    expect(rationPacks([3, 4], 7)).toEqual([3, 4]);
    expect(rationPacks([0, 0], 0)).toEqual([0, 0]);
    expect(rationPacks([1, 1, 1], 2)).toEqual([1, 1, 0]);
  });
});
