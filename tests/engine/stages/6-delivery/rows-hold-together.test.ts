import { expect, test } from 'vitest';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { findHopeful } from '../../../../src/engine/stages/6-delivery/explain-unserved.ts';
import { fillUp } from '../../../../src/engine/stages/6-delivery/fill-up.ts';
import { improve } from '../../../../src/engine/stages/6-delivery/improve.ts';
import { beginDispatch } from '../../../../src/engine/stages/6-delivery/plan-delivery.ts';
import { beginStep, layRow, swapTails } from '../../../../src/engine/stages/6-delivery/search/change-rows.ts';
import { DEPOT, type RouteState } from '../../../../src/engine/stages/6-delivery/search/route-state.ts';
import { buildNetwork, type ConsignmentSpec, type NetworkSpec } from './small-network.ts';

/** What is wrong with rows and their books; nothing where each load stands where it is said to, once, and the cost adds up. */
function faultsOf(rows: RouteState): string[] {
  const found: string[] = [];
  const { visits, slots } = rows.problem;
  const stands = new Int32Array(visits.count);
  let cost = 0;
  for (let slot = 0; slot < slots.count; slot++) {
    const count = rows.nodes[slot] as number;
    if (count === 0) continue;
    cost += rows.slotCost[slot] as number;
    for (let i = 0; i < count; i++) {
      const load = rows.load[slot * rows.stride + i] as number;
      const isEnd = i === 0 || i === count - 1;
      if (isEnd && load !== DEPOT) found.push(`row ${slot} does not begin and end at the depot`);
      if (load === DEPOT) {
        if (i > 0 && rows.load[slot * rows.stride + i - 1] === DEPOT) found.push(`row ${slot} has a trip to nobody`);
        continue;
      }
      stands[load] = (stands[load] as number) + 1;
      if (rows.slotOf[load] !== slot) found.push(`load ${load} is said to stand elsewhere than in row ${slot}`);
    }
  }
  for (let load = 0; load < visits.count; load++) {
    const served = (rows.slotOf[load] as number) >= 0;
    if (stands[load] !== (served ? 1 : 0)) found.push(`load ${load} stands in ${stands[load]} rows`);
    if (!served) cost += visits.unservedCost[load] as number;
  }
  if (Math.abs(cost - rows.cost) > 1e-6 * cost) found.push(`cost ${rows.cost} instead of ${cost}`);
  return found;
}

/** Near places and few vehicles, so that each makes many trips a day; not all that waits can be brought. */
function nearPlaces(): NetworkSpec {
  const random = new RandomStream(3);
  const places = Array.from({ length: 60 }, () => ({ x: (random.next() - 0.5) * 16, y: (random.next() - 0.5) * 16 }));
  return {
    days: 4,
    depots: [{ x: 0, y: 0, ice: 12 }],
    places,
    vehicles: [
      { payloadKg: 900, iceKg: 3 },
      { payloadKg: 900, iceKg: 3 },
      { payloadKg: 2500, iceKg: 3, costPerKm: 2, costPerDay: 50 },
    ],
    consignments: places.flatMap((_, place): ConsignmentSpec[] => [
      { place, group: 'dry', seedPacks: 5 + random.below(25), worth: 200 + random.below(300) },
      { place, group: 'inoculant', sachets: 10 + random.below(60), worth: 100 + random.below(300) },
    ]),
    policy: { trainingMinutes: 10 },
  };
}

test('rows and their books hold together at every 64th of 12,000 steps', () => {
  const { scenario, decisions, places, season, allocation } = buildNetwork(nearPlaces());
  const { state } = beginDispatch(scenario, decisions, places, season, allocation, null);
  const hopeful = findHopeful(state);
  fillUp(state, hopeful);
  let looks = 0;
  const progress = () => {
    looks++;
    expect(faultsOf(state.rows)).toEqual([]);
  };
  improve(state, hopeful, { seed: 1, iterations: 12_000, stop: null, progress }, null);
  expect(looks).toBeGreaterThan(180);
  expect(faultsOf(state.rows)).toEqual([]);
});

test('a row that takes over the end of another where a trip of its own ends makes no trip to nobody', () => {
  const { scenario, decisions, places, season, allocation } = buildNetwork(nearPlaces());
  const { rows } = beginDispatch(scenario, decisions, places, season, allocation, null).state;
  beginStep(rows);
  // Seed of six places, on two vehicles of one day.
  layRow(rows, 0, [DEPOT, 0, DEPOT]);
  layRow(rows, 1, [DEPOT, 2, DEPOT, 4, 6, DEPOT]);
  swapTails(rows, 0, 1, 1, 2);
  const rowOf = (slot: number) => [
    ...rows.load.slice(slot * rows.stride, slot * rows.stride + (rows.nodes[slot] ?? 0)),
  ];
  expect(rowOf(0)).toEqual([DEPOT, 0, 4, 6, DEPOT]);
  expect(rowOf(1)).toEqual([DEPOT, 2, DEPOT]);
  swapTails(rows, 0, 3, 1, 0);
  expect([rowOf(0), rowOf(1)]).toEqual([[DEPOT, 0, 4, 6, 2, DEPOT], []]);
});

test.each([0, 45])('a row over a road that is shut is no row, whether crews rest (%i min) or not', (restMinutes) => {
  const { scenario, decisions, places, season, allocation } = buildNetwork({
    ...nearPlaces(),
    policy: { restAfterHours: 4.5, restMinutes },
    // Sites: the depot, then the places.
    shut: (from, to) => from === 1 && to === 2,
  });
  const { rows } = beginDispatch(scenario, decisions, places, season, allocation, null).state;
  beginStep(rows);
  expect(layRow(rows, 0, [DEPOT, 2, 0, DEPOT])).toBe(true);
  expect(layRow(rows, 1, [DEPOT, 0, 2, DEPOT])).toBe(false);
});
