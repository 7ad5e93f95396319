import { describe, expect, it } from 'vitest';
import { problem } from '../../../src/engine/index.ts';
import { orderProblems } from '../../../src/engine/record/order-problems.ts';
import { round, roundOrNull } from '../../../src/engine/record/rounding.ts';
import { recordSmallPlan } from './record-small-plan.ts';

describe('the plan document', () => {
  const plan = recordSmallPlan();

  it('comes back from its own text', () => {
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
  });

  it('has columns of equal length in every table', () => {
    const tables = [
      plan.needs,
      plan.allocation.grants,
      plan.allocation.shares,
      plan.allocation.shortfalls,
      plan.allocation.packShares,
      plan.allocation.consignments,
      plan.delivery.loads,
      plan.delivery.trips,
      plan.delivery.stops,
      plan.delivery.unserved,
      plan.outcomes.crops,
      plan.outcomes.zones,
      plan.places.shares,
      plan.season.onset,
      plan.season.windows,
    ];
    for (const table of tables) {
      const lengths = new Set(Object.values(table).map((column) => (column as readonly unknown[]).length));
      expect(lengths.size).toBe(1);
    }
  });

  it('writes days as dates and unknown ones as null', () => {
    expect(plan.delivery.trips.date).toEqual(['2026-11-05']);
    expect(plan.season.windows.firstP50[0]).toBe('2026-11-07');
    expect(plan.season.memberOnset).toEqual(['2026-11-07', null]);
    // Half way between two days counts as the later one.
    expect(plan.season.onset.p50[0]).toBe('2026-11-08');
    expect(plan.season.onset.p80[0]).toBeNull();
  });

  it('holds the path of every leg driven, once', () => {
    expect(plan.delivery.stops.leg).toEqual([0]);
    expect(plan.delivery.trips.returnLeg).toEqual([1]);
    expect(plan.delivery.legs.map(({ fromSite, toSite, pieces }) => ({ fromSite, toSite, pieces }))).toEqual([
      { fromSite: 0, toSite: 1, pieces: [[0, 0, 2]] },
      { fromSite: 1, toSite: 0, pieces: [[0, 2, 0]] },
    ]);
  });

  it('names a derived hand-over place by its community', () => {
    expect(plan.ids.places).toEqual(['C1']);
    expect(plan.places.placeGiven).toEqual([0]);
  });

  it('refuses a figure that is not a number', () => {
    expect(() => recordSmallPlan({ cost: Number.NaN })).toThrow(RangeError);
  });

  it('refuses a leg without a path', () => {
    expect(() => recordSmallPlan({ legs: [] })).toThrow(/no path/);
  });
});

describe('rounding', () => {
  it('keeps the decimals of the kind of figure', () => {
    expect(round(1.23456789, 'hectares')).toBe(1.234568);
    expect(round(12.34567, 'minutes')).toBe(12.346);
    expect(roundOrNull(Number.NaN, 'celsius')).toBeNull();
  });

  it('knows no negative nought', () => {
    expect(Object.is(round(-1e-12, 'kilograms'), 0)).toBe(true);
  });
});

describe('order of problems', () => {
  const met = [
    problem('E7001', { file: 'b.csv', row: 1, value: 'x' }),
    problem('E7002', { file: 'a.csv', row: 7, value: 'y' }),
    problem('E7002', { file: 'a.csv', row: 3, value: 'z' }),
    problem('E7002', { file: 'a.csv', row: 9, value: 'a' }),
  ];

  it('does not hang on the order in which they were met, nor first on rows', () => {
    const ordered = orderProblems(met);
    expect(ordered.map(({ value }) => value)).toEqual(['x', 'a', 'y', 'z']);
    expect(orderProblems([...met].reverse())).toEqual(ordered);
  });

  it('tells a problem once', () => {
    expect(orderProblems([...met, ...met])).toHaveLength(met.length);
  });
});
