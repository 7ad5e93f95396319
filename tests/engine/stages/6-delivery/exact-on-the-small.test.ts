import { describe, expect, test } from 'vitest';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { costOfPlan, leastCost } from './enumerate-plans.ts';
import { type ConsignmentSpec, deliver, type NetworkSpec } from './small-network.ts';

/**
 * Two vehicles, two days, up to four loads, ice for one box a day, hours, heat, leaving hours: the search against all plans there are. On
 * some, mornings are hotter than afternoons, so that leaving later pays, and crews rest after two and a half hours of driving.
 */
function tinyNetwork(seed: number): NetworkSpec {
  const random = new RandomStream(seed);
  const places = Array.from({ length: 3 }, () => ({
    x: Math.round((random.next() - 0.5) * 80),
    y: Math.round((random.next() - 0.5) * 80),
    ...(random.next() < 0.3 ? { opens: 540 } : {}),
    ...(random.next() < 0.3 ? { closes: 780 } : {}),
  }));
  const reachByDay = () => (random.next() < 0.5 ? [1, 0.6 + 0.4 * random.next()] : [0.6 + 0.4 * random.next(), 1]);
  const seedFor = (place: number): ConsignmentSpec => ({
    place,
    group: 'dry',
    seedPacks: 4 + random.below(20),
    worth: 100 + random.below(400),
    reachByDay: reachByDay(),
  });
  const packsFor = (place: number): ConsignmentSpec => ({
    place,
    group: 'inoculant',
    sachets: 20 + random.below(150),
    worth: 100 + random.below(400),
    reachByDay: reachByDay(),
    earliest: random.next() < 0.3 ? 1 : 0,
  });
  const heatFrom = random.next() < 0.4 ? 100 : 400;
  const restMinutes = random.next() < 0.5 ? 45 : 0;
  return {
    days: 2,
    policy: { restAfterHours: 2.5, restMinutes },
    depots: [{ x: 0, y: 0, ice: 2 }],
    places,
    vehicles: [
      { iceKg: 2, coolUaWPerK: 1.2 },
      { iceKg: 2, coolUaWPerK: 1.2, costPerDay: 35, payloadKg: 600 },
    ],
    consignments: [seedFor(0), packsFor(0), seedFor(1), packsFor(2)],
    airC: (minute) => 24 + 14 * Math.max(0, Math.sin((Math.PI * (minute - heatFrom)) / 760)),
    sun: (minute) => Math.max(0, 0.9 * Math.sin((Math.PI * (minute - 360)) / 720)),
  };
}

/** Air constant within quarter hours here, straight lines there: plans nearer to each other than this may swap places. */
const NEAR = 1e-4;

const STEPS = 3000;

/** Twelve in every run, 200 in the long one. */
const SEEDS = Array.from({ length: Number(process.env['NODULARY_SMALL_NETWORKS'] ?? 12) }, (_, i) => i + 1);

describe('exact on the small', () => {
  test.each(SEEDS)('network %i: the plan costs what the best of all plans costs', (seed) => {
    const spec = tinyNetwork(seed);
    const cost = costOfPlan(spec, deliver(spec, STEPS));
    expect(cost).not.toBeNull();
    const least = leastCost(spec);
    expect(cost as number).toBeGreaterThanOrEqual(least - 1e-6);
    expect(cost as number).toBeLessThanOrEqual(least * (1 + NEAR));
  });
});
