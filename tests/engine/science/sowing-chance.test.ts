import fc from 'fast-check';
import { expect, it } from 'vitest';
import { chanceLaterThan, sowingChance } from '../../../src/engine/science/sowing-chance.ts';

const days = fc.array(fc.oneof(fc.integer({ min: 0, max: 40 }), fc.constant(Number.NaN)), {
  minLength: 1,
  maxLength: 40,
});

it('four seasons that begin on days 3, 5, 5 and never', () => {
  expect([...sowingChance([3, 5, 5, Number.NaN], 2, 5)]).toEqual([0, 0.25, 0.25, 0.75, 0.75]);
});

it('never falls, never passes the share of seasons that begin, and completes the chance of a later day', () => {
  fc.assert(
    fc.property(days, (firstDays) => {
      const chance = sowingChance(firstDays, 0, 50);
      const begin = firstDays.filter((day) => !Number.isNaN(day)).length / firstDays.length;
      expect(chance.every((value, i) => i === 0 || value >= (chance[i - 1] as number))).toBe(true);
      expect(chance[49]).toBe(begin);
      chance.forEach((value, i) => {
        expect(value + chanceLaterThan(firstDays, i)).toBeCloseTo(1, 12);
      });
    }),
  );
});

it('is nought without seasons', () => expect([...sowingChance([], 0, 3)]).toEqual([0, 0, 0]));
