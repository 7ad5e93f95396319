import { describe, expect, it } from 'vitest';
import { type InstanceVehicles, type RoutingInstance, solveInstance } from '../../../../src/engine/index.ts';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { enumerateInstance } from './enumerate-instance.ts';

/** A small instance of a drawn kind: hours, releases, reloading, a mixed or limited fleet, clients a vehicle may not visit. */
function drawInstance(seed: number): RoutingInstance {
  const random = new RandomStream(seed);
  const places = 5 + random.below(3);
  const between = (low: number, high: number) => low + random.below(high - low + 1);
  const each = (value: (i: number) => number) => Float64Array.from({ length: places }, (_, i) => value(i));
  const [x, y] = [each(() => between(0, 60)), each(() => between(0, 60))];
  const lengths = new Float64Array(places * places);
  for (let a = 0; a < places; a++)
    for (let b = 0; b < places; b++) {
      lengths[a * places + b] = Math.round(
        Math.hypot((x[a] as number) - (x[b] as number), (y[a] as number) - (y[b] as number)),
      );
    }
  const kind = seed % 4;
  const opens = each((i) => (kind > 0 && i > 0 ? between(0, 150) : 0));
  const vehicles = kind === 3 ? 2 : 3;
  const vehicleTypes = Array.from({ length: kind === 2 ? 2 : 1 }, (_, t): InstanceVehicles => {
    const mayVisit = Uint8Array.from({ length: places }, (_, i) => (t === 0 && i === 1 ? 0 : 1));
    return {
      numbers: Array.from({ length: vehicles }, (_, i) => t * vehicles + i + 1),
      capacity: t === 0 ? 30 : 50,
      fixedCost: kind === 2 ? 20 + 30 * t : 0,
      costPerLength: 1 + t / 2,
      mostMinutes: kind === 1 ? 200 : Number.POSITIVE_INFINITY,
      mayVisit: kind === 2 ? mayVisit : null,
    };
  });
  return {
    name: `drawn ${seed}`,
    places,
    lengths,
    minutes: lengths,
    demand: each((i) => (i === 0 ? 0 : between(3, 15))),
    opens,
    closes: each((i) =>
      kind === 0 ? Number.POSITIVE_INFINITY : i === 0 ? 400 : (opens[i] as number) + between(20, 150),
    ),
    service: each((i) => (kind > 0 && i > 0 ? 10 : 0)),
    release: each((i) => (kind === 3 && i > 0 ? between(0, 60) : 0)),
    vehicleTypes,
    mayReload: kind === 3,
    timed: kind !== 0,
    costUnits: 1,
  };
}

const quiet = { stop: null, progress: null };

describe('the search on small instances', () => {
  it('ends at the optimum found by enumeration on 60 drawn instances, or leaves somebody out where nothing is possible', () => {
    let possible = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const instance = drawInstance(seed);
      const least = enumerateInstance(instance);
      const answer = solveInstance(instance, { ...quiet, seed: 1, iterations: 3000 });
      if (least === Number.POSITIVE_INFINITY) expect(answer.leftOut.length, `${seed}`).toBeGreaterThan(0);
      else {
        possible++;
        expect(answer.leftOut, `seed ${seed}`).toEqual([]);
        expect(answer.cost, `seed ${seed}`).toBeCloseTo(least, 6);
      }
    }
    expect(possible).toBeGreaterThan(30);
  });

  it('gives the same routes for the same seed and iterations, whatever the clock says', () => {
    const instance = drawInstance(7);
    const settings = { ...quiet, seed: 5, iterations: 500 };
    expect(solveInstance(instance, settings)).toEqual(solveInstance(instance, settings));
  });

  describe('answers with a reason', () => {
    const instance = drawInstance(4);
    const hours = drawInstance(5);
    const { places } = instance;
    const solve = (broken: RoutingInstance) => solveInstance(broken, { ...quiet, seed: 1, iterations: 200 });
    /** Lengths and minutes with another value from, to or on both sides of a place. */
    const cutOff = (place: number, value: number, side: 'from' | 'to' | 'both') => {
      const lengths = instance.lengths.map((km, i) => {
        const leaves = Math.floor(i / places) === place && side !== 'to';
        const comes = i % places === place && side !== 'from';
        return leaves || comes ? value : km;
      });
      return { ...instance, lengths, minutes: lengths };
    };

    it.each([
      ['not a number both ways', cutOff(2, Number.NaN, 'both')],
      ['not a number on the way there', cutOff(2, Number.NaN, 'to')],
      ['endless both ways', cutOff(2, Number.POSITIVE_INFINITY, 'both')],
      ['endless on the way back', cutOff(2, Number.POSITIVE_INFINITY, 'from')],
    ])('where lengths are %s, and the others are routed as if that place were not there', (_, broken) => {
      const answer = solve(broken);
      expect(answer.leftOut).toEqual([2]);
      expect(answer.leftOutFor).toEqual(['not-reachable']);
      const small = without(instance, 2);
      expect(answer.cost).toBeCloseTo(enumerateInstance(small), 6);
    });

    it('where one leg is endless or no number: the others are driven', () => {
      for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
        const lengths = instance.lengths.map((km, i) => (i === 1 * places + 3 || i === 3 * places + 1 ? value : km));
        const answer = solve({ ...instance, lengths, minutes: lengths });
        expect(answer.leftOut).toEqual([]);
        expect(answer.cost).toBeCloseTo(
          enumerateInstance({ ...instance, lengths: lengths.map((km) => (Number.isNaN(km) ? 1e6 : km)) }),
          6,
        );
      }
    });

    it('where a load is heavier than any vehicle', () => {
      const answer = solve({ ...instance, demand: instance.demand.map((kg, i) => (i === 3 ? 1000 : kg)) });
      expect(answer.leftOut).toEqual([3]);
      expect(answer.leftOutFor).toEqual(['heavier-than-any-vehicle']);
    });

    it('where there is no vehicle, or none may go there', () => {
      const none = solve({ ...instance, vehicleTypes: [] });
      expect(none.leftOut.length).toBe(places - 1);
      expect(new Set(none.leftOutFor)).toEqual(new Set(['no-vehicle-day-left']));
      const mayVisit = Uint8Array.from({ length: places }, (_, i) => (i === 1 ? 0 : 1));
      const barred = solve({
        ...instance,
        vehicleTypes: instance.vehicleTypes.map((type) => ({ ...type, mayVisit })),
      });
      expect([barred.leftOut, barred.leftOutFor]).toEqual([[1], ['not-reachable']]);
    });

    it('where no daylight is left, at the depot or at one place', () => {
      const dark = solve({ ...hours, closes: hours.closes.map((minute, i) => (i === 0 ? 0 : minute)) });
      expect(dark.leftOut.length).toBe(hours.places - 1);
      expect(new Set(dark.leftOutFor)).toEqual(new Set(['no-time-in-shift']));
      const shut = solve({ ...hours, closes: hours.closes.map((minute, i) => (i === 2 ? -1 : minute)) });
      expect(shut.leftOutFor[shut.leftOut.indexOf(2)]).toBe('no-time-in-shift');
    });

    it('where there are fewer vehicles than the loads fill', () => {
      const [type] = instance.vehicleTypes as [InstanceVehicles];
      const answer = solve({ ...instance, vehicleTypes: [{ ...type, numbers: [1], capacity: 16 }] });
      expect(answer.leftOut.length).toBeGreaterThan(0);
      expect(new Set(answer.leftOutFor)).toEqual(new Set(['no-vehicle-day-left']));
    });

    it('where there are no customers', () => {
      const answer = solve({ ...instance, places: 1, lengths: new Float64Array(1), minutes: new Float64Array(1) });
      expect([answer.cost, answer.routes, answer.leftOut]).toEqual([0, [], []]);
    });
  });
});

/** An instance as if a customer were not there; the others keep their order. */
function without(instance: RoutingInstance, customer: number): RoutingInstance {
  const kept = Array.from({ length: instance.places }, (_, i) => i).filter((i) => i !== customer);
  const pick = (values: Float64Array) => Float64Array.from(kept, (i) => values[i] as number);
  const lengths = Float64Array.from(
    kept.flatMap((a) => kept.map((b) => instance.lengths[a * instance.places + b] as number)),
  );
  return {
    ...instance,
    places: kept.length,
    lengths,
    minutes: lengths,
    demand: pick(instance.demand),
    opens: pick(instance.opens),
    closes: pick(instance.closes),
    service: pick(instance.service),
    release: pick(instance.release),
  };
}
