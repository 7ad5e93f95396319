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

  it('answers where a length is no number, no vehicle is large enough, or a place cannot be reached', () => {
    const instance = drawInstance(4);
    const lengths = instance.lengths.slice();
    for (let i = 0; i < instance.places; i++) lengths[i * instance.places + 2] = Number.NaN;
    const broken = { ...instance, lengths, minutes: lengths };
    expect(solveInstance(broken, { ...quiet, seed: 1, iterations: 200 }).leftOut).toContain(2);
    const heavy = { ...instance, demand: instance.demand.map((kg, i) => (i === 3 ? 1000 : kg)) };
    expect(solveInstance(heavy, { ...quiet, seed: 1, iterations: 200 }).leftOut).toEqual([3]);
    const cutOff = { ...instance, lengths: instance.lengths.map((km, i) => (i === 1 ? Number.POSITIVE_INFINITY : km)) };
    expect(solveInstance(cutOff, { ...quiet, seed: 1, iterations: 200 }).cost).toBeLessThan(Number.POSITIVE_INFINITY);
    const none = { ...instance, vehicleTypes: [] };
    expect(solveInstance(none, { ...quiet, seed: 1, iterations: 200 }).leftOut.length).toBe(instance.places - 1);
  });
});
