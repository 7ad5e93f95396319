import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planDelivery } from '../../../../src/engine/stages/6-delivery/plan-delivery.ts';
import { assertSound } from './assert-sound.ts';
import { bigNetwork } from './big-network.ts';
import { costOfPlan } from './enumerate-plans.ts';
import { type OwnVehicle, ownTrip } from './own-trip.ts';
import { buildNetwork, type ConsignmentSpec, type NetworkSpec, planNetwork } from './small-network.ts';

const place = fc.record({
  x: fc.integer({ min: -40, max: 40 }),
  y: fc.integer({ min: -40, max: 40 }),
});
const goods = fc.record({ seedPacks: fc.integer({ min: 1, max: 60 }), sachets: fc.integer({ min: 0, max: 120 }) });
/** Up to eight places with seed and inoculant each. */
const networks = fc.array(fc.tuple(place, goods), { minLength: 1, maxLength: 8 }).map(
  (rows): Pick<NetworkSpec, 'places' | 'consignments'> => ({
    places: rows.map(([at]) => at),
    consignments: rows.flatMap(([, { seedPacks, sachets }], i): ConsignmentSpec[] => [
      { place: i, group: 'dry', seedPacks },
      ...(sachets > 0 ? [{ place: i, group: 'inoculant' as const, sachets }] : []),
    ]),
  }),
);

describe('generated networks', () => {
  test('ample vehicles and ice: nothing is left behind', () => {
    fc.assert(
      fc.property(networks, (generated) => {
        const vehicles = generated.places.flatMap(() => [
          {},
          { coolLitres: 8, iceKg: 1.6, payloadKg: 200, kind: 'motorcycle' },
        ]);
        const network = buildNetwork({ ...generated, days: 4, vehicles, depots: [{ x: 0, y: 0, ice: 1000 }] });
        const { result } = planNetwork(network, 30);
        assertSound(network, result);
        expect(result.unserved).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  test('few vehicles, little ice, hot afternoons, short hours: every plan keeps every rule', () => {
    fc.assert(
      fc.property(networks, fc.integer({ min: 0, max: 12 }), (generated, ice) => {
        const network = buildNetwork({
          ...generated,
          places: generated.places.map((at, i) => ({ ...at, ...(i % 3 === 1 ? { opens: 500, closes: 800 } : {}) })),
          days: 2,
          vehicles: [{}, { coolLitres: 8, iceKg: 1.6, payloadKg: 200, kind: 'motorcycle', coolUaWPerK: 2 }],
          depots: [{ x: 0, y: 0, ice }],
          airC: (minute) => 26 + 18 * Math.max(0, Math.sin((Math.PI * (minute - 420)) / 700)),
          sun: (minute) => Math.max(0, Math.sin((Math.PI * (minute - 360)) / 720)),
        });
        assertSound(network, planNetwork(network, 60).result);
      }),
      { numRuns: 40 },
    );
  });
});

/** Twelve places, two vehicles, three days: more than the search can finish in a hundred steps. */
const busy: NetworkSpec = {
  days: 3,
  places: Array.from({ length: 12 }, (_, i) => ({ x: ((i * 37) % 61) - 30, y: ((i * 53) % 67) - 33 })),
  vehicles: [{}, { payloadKg: 600, costPerDay: 12 }],
  consignments: Array.from({ length: 12 }, (_, i): ConsignmentSpec[] => [
    { place: i, group: 'dry', seedPacks: 6 + ((i * 7) % 12), reachByDay: i % 2 ? [1, 0.95, 0.9] : [0.9, 0.95, 1] },
    { place: i, group: 'inoculant', sachets: 20 + i },
  ]).flat(),
};

describe('search', () => {
  test('the same seed and steps give the same delivery, another seed is another search', () => {
    const plan = (seed: number) => JSON.stringify(planNetwork(buildNetwork(busy), 200, null, seed).result);
    expect(plan(1)).toBe(plan(1));
    expect([2, 3, 4, 5].some((seed) => plan(seed) !== plan(1))).toBe(true);
  });

  test('more steps never end worse than the construction, and here better', () => {
    const cost = (steps: number) => costOfPlan(busy, planNetwork(buildNetwork(busy), steps).result) as number;
    const construction = cost(0);
    expect(cost(100)).toBeLessThanOrEqual(construction + 1e-6);
    expect(cost(300)).toBeLessThanOrEqual(construction + 1e-6);
    expect(cost(300)).toBeLessThan(0.95 * construction);
  });

  test('a second opinion finds the same temperatures and the same loss at every stop', () => {
    const hot: NetworkSpec = {
      ...busy,
      airC: (minute) => 20 + minute / 60,
      sun: () => 0.7,
      depots: [{ x: 0, y: 0, ice: 3 }],
    };
    const network = buildNetwork({
      ...hot,
      vehicles: [
        { coolUaWPerK: 2, iceKg: 1 },
        { coolUaWPerK: 3, iceKg: 1, payloadKg: 600 },
      ],
    });
    let compared = 0;
    for (const { vehicle, trips } of planNetwork(network, 100).result.vehicleDays) {
      const v = network.scenario.vehicles[vehicle];
      let ready = 0;
      for (const trip of trips) {
        const loads = trip.stops.flatMap((stop) => stop.loads);
        const trains = new Set(loads.filter((load) => hot.consignments[load]?.group === 'inoculant'));
        const own = ownTrip(hot, v as OwnVehicle, loads, ready, trip.iceKg, trains);
        expect(own?.returnMinute).toBeCloseTo(trip.returnMinute, 6);
        for (const stop of trip.stops.filter((s) => !Number.isNaN(s.packC))) {
          const load = stop.loads.find((l) => own?.packC.has(l)) as number;
          expect(Math.abs((own?.packC.get(load) as number) - stop.packC)).toBeLessThan(0.1);
          expect(Math.abs((own?.log10Loss.get(load) as number) - stop.log10Loss)).toBeLessThan(1e-4);
          compared++;
        }
        ready = trip.returnMinute;
      }
    }
    expect(compared).toBe(12);
  });

  test('asked to stop it stops, says so, and still keeps every rule', () => {
    const network = buildNetwork(busy);
    const { scenario, decisions, places, season, allocation } = network;
    let asked = 0;
    const told: number[] = [];
    const settings = {
      seed: 1,
      iterations: 100_000,
      stop: () => ++asked > 3,
      progress: (done: number) => told.push(done),
    };
    const { result } = planDelivery(scenario, decisions, places, season, allocation, settings, null);
    expect([result.stoppedBy, result.iterationsDone]).toEqual(['time', 192]);
    expect(told).toEqual([0, 64, 128]);
    assertSound(network, result);
  });

  test('costs add up: days, kilometres, ice', () => {
    const network = buildNetwork({ ...busy, icePerKg: 2 });
    const { result } = planNetwork(network, 100);
    const total = result.vehicleDays.reduce(
      (sum, { vehicle, trips }) =>
        sum +
        (network.scenario.vehicles[vehicle]?.costPerDay ?? 0) +
        trips.reduce((of, trip) => of + trip.kilometres + 2 * trip.iceKg, 0),
      0,
    );
    expect(result.cost).toBeCloseTo(total, 6);
    const free = { ...busy, vehicles: [{ costPerDay: 0, costPerKm: 0 }] };
    expect(planNetwork(buildNetwork(free), 20).result.cost).toBeNull();
  });
});

test('a district of 400 communities, 33 vehicles and 25 days: every plan keeps every rule and leaves nothing behind', () => {
  const network = buildNetwork(bigNetwork());
  const { result } = planNetwork(network, 500);
  expect(result.loads.length).toBeGreaterThan(800);
  assertSound(network, result);
  expect(result.unserved).toEqual([]);
});

test("more than lorries and pickups can bring in six days: no pickup takes over a lorry's later trips", () => {
  const spec = bigNetwork(100, 6);
  const of = (depot: number, kind?: string) => spec.vehicles?.find((v) => v.depot === depot && v.kind === kind) ?? {};
  const vehicles = [0, 1, 2, 3].flatMap((depot) => [of(depot, 'truck'), of(depot)]);
  const network = buildNetwork({ ...spec, vehicles });
  const { result } = planNetwork(network, 3000);
  assertSound(network, result);
  expect(result.unserved.length).toBeGreaterThan(0);
});

describe('second round', () => {
  const first = buildNetwork(busy);
  const planned = planNetwork(first, 100).result;
  const stopsOf = (delivery: typeof planned, keep: (load: number) => boolean) =>
    delivery.vehicleDays.flatMap(({ vehicle, day, trips }) =>
      trips.flatMap(({ stops }) =>
        stops.flatMap((stop) => stop.loads.filter(keep).map((load) => `${load} ${vehicle} ${day}`)),
      ),
    );

  test('served loads are held to vehicle and day, new ones are added', () => {
    const more = buildNetwork({
      ...busy,
      places: [...busy.places, { x: 9, y: 9 }],
      consignments: [...busy.consignments, { place: 12, group: 'dry', seedPacks: 10 }],
    });
    const { result, problems } = planNetwork(more, 100, { allocation: first.allocation, delivery: planned });
    assertSound(more, result);
    expect(problems).toEqual([]);
    const held = stopsOf(planned, () => true).sort();
    expect(held.length).toBe(24);
    expect(stopsOf(result, (load) => load < 24).sort()).toEqual(held);
    expect(result.unserved).toEqual([]);
  });

  test('a consignment that grew keeps its first load and gets another', () => {
    const consignments = busy.consignments.map((c, i) => (i === 0 ? { ...c, seedPacks: (c.seedPacks ?? 0) + 5 } : c));
    const more = buildNetwork({ ...busy, consignments });
    const { result } = planNetwork(more, 50, { allocation: first.allocation, delivery: planned });
    assertSound(more, result);
    const own = result.loads.filter((load) => load.consignment === 0);
    expect(own.map((load) => load.packs)).toEqual([[6], [5]]);
  });

  test('where the inoculant is no longer sent, the training moves to the seed, with or without time on its old day', () => {
    for (const x of [20, 89]) {
      const far: NetworkSpec = {
        days: 3,
        places: [{ x, y: 0 }],
        vehicles: [{ coolLitres: 50, iceKg: 0, coolUaWPerK: 5 }],
        airC: () => 60,
        consignments: [
          { place: 0, group: 'dry', seedPacks: 60 },
          { place: 0, group: 'inoculant', sachets: 10 },
        ],
      };
      const before = buildNetwork(far);
      const round1 = planNetwork(before, 50).result;
      expect(round1.unserved.map(({ reason }) => reason)).toEqual(['too-hot']);
      const after = buildNetwork({ ...far, consignments: far.consignments.slice(0, 1) });
      const { result } = planNetwork(after, 50, { allocation: before.allocation, delivery: round1 });
      assertSound(after, result);
      expect(result.unserved).toEqual([]);
      const stops = result.vehicleDays.flatMap(({ trips }) => trips.flatMap((trip) => trip.stops));
      const spent = stops.reduce((sum, stop) => sum + stop.departMinute - stop.startMinute, 0);
      expect(spent).toBeCloseTo(20 * stops.length + 15 + 30, 6);
    }
  });

  test('what can no longer be held is let go and said', () => {
    const used = planned.vehicleDays[0];
    const network = buildNetwork({
      ...busy,
      decisions: [{ kind: 'vehicle-away', vehicleId: `V${used?.vehicle}`, from: '2025-11-03', to: '2025-11-05' }],
    });
    const { result, problems } = planNetwork(network, 50, { allocation: first.allocation, delivery: planned });
    assertSound(network, result);
    expect(problems.map(({ code }) => code)).toEqual(['E6004']);
  });
});
