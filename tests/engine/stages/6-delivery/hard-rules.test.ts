import { describe, expect, test } from 'vitest';
import { dayNumber, isoDate } from '../../../../src/engine/index.ts';
import { assertSound } from './assert-sound.ts';
import { buildNetwork, deliver, FIRST_DAY, type NetworkSpec, planNetwork } from './small-network.ts';

/** One place 15 km (30 min) from the depot, one pickup, one load: each rule is made to bind by changing one thing. */
const lone: NetworkSpec = {
  days: 1,
  places: [{ x: 15, y: 0 }],
  vehicles: [{}],
  consignments: [{ place: 0, group: 'dry', seedPacks: 20 }],
};
const cold: NetworkSpec = { ...lone, consignments: [{ place: 0, group: 'inoculant', sachets: 100 }] };

const served = (spec: NetworkSpec) => deliver(spec, 50).vehicleDays.length;
const reasonsOf = (spec: NetworkSpec) => {
  const network = buildNetwork(spec);
  const { result } = planNetwork(network, 50);
  assertSound(network, result);
  return result.unserved.map(({ reason }) => reason);
};
const onlyTrip = (spec: NetworkSpec) => {
  const network = buildNetwork(spec);
  const { result } = planNetwork(network, 50);
  assertSound(network, result);
  expect(result.vehicleDays).toHaveLength(1);
  const trip = result.vehicleDays[0]?.trips[0];
  if (!trip) throw new Error('no trip');
  return trip;
};
const date = (day: number) => isoDate(dayNumber(FIRST_DAY + day));

test('nothing binds: served, in words 6:00 + 15 min loading, 30 min drive, 20 min + 5 min unloading + 30 min training, 30 min back', () => {
  const trip = onlyTrip(lone);
  expect(trip.leaveMinute).toBe(375);
  expect(trip.stops[0]?.arriveMinute).toBe(405);
  expect(trip.stops[0]?.departMinute).toBe(460);
  expect(trip.returnMinute).toBe(490);
  expect(trip.kilometres).toBe(30);
});

describe('weight and volume', () => {
  test('payload: 2,500 kg on a 1,000 kg pickup go in three loads and three trips', () => {
    const heavy: NetworkSpec = { ...lone, consignments: [{ place: 0, group: 'dry', seedPacks: 100 }] };
    const { loads, vehicleDays, unserved } = deliver(heavy, 50);
    expect(loads.map((load) => load.kg)).toEqual([1000, 1000, 500]);
    expect(vehicleDays[0]?.trips).toHaveLength(3);
    expect(unserved).toEqual([]);
  });

  test('a pack heavier than any vehicle', () => {
    expect(reasonsOf({ ...lone, vehicles: [{ payloadKg: 20 }] })).toEqual(['heavier-than-any-vehicle']);
  });

  test('cold box: 100 sachets of 0.2 L need two boxes of 12 L', () => {
    const { loads } = deliver({ ...cold, vehicles: [{ coolLitres: 12 }] }, 50);
    expect(loads.map((load) => Math.round(load.coolLitres * 10) / 10)).toEqual([12, 8]);
  });

  test('a pack larger than any box', () => {
    expect(reasonsOf({ ...cold, vehicles: [{ coolLitres: 0.1 }] })).toEqual(['no-cold-box']);
  });

  test('without any box packs go as cartons, by payload', () => {
    const { loads, unserved } = deliver({ ...cold, vehicles: [{ coolLitres: 0, iceKg: 0, payloadKg: 6 }] }, 50);
    expect(unserved).toEqual([]);
    expect(loads.map((load) => load.packs[0])).toEqual([60, 40]);
  });

  test('goods carried together are cut in proportion', () => {
    const { loads } = deliver({ ...lone, consignments: [{ place: 0, group: 'both', seedPacks: 60, sachets: 90 }] }, 50);
    expect(loads.map((load) => load.packs)).toEqual([
      [30, 45],
      [30, 45],
    ]);
  });
});

describe('hours', () => {
  const far: NetworkSpec = { ...lone, places: [{ x: 60, y: 0 }] };

  test('shift: two hours out and back with 70 min at hand do not fit in four', () => {
    expect(reasonsOf(far)).toEqual([]);
    expect(reasonsOf({ ...far, vehicles: [{ maxHours: 4.5 }] })).toEqual(['no-time-in-shift']);
  });

  test('driving alone longer than the day', () => {
    expect(reasonsOf({ ...far, places: [{ x: 140, y: 0 }] })).toEqual(['overnight-trip-needed']);
  });

  test('daylight, road hours and depot hours', () => {
    const late = { ...far, roadHours: { opens: 900, closes: 1080 } } as unknown as NetworkSpec;
    expect(reasonsOf(late)).toEqual(['overnight-trip-needed']);
    const network = buildNetwork(far);
    const dusk = { ...network, season: { ...network.season, sunsetMinute: new Float64Array([600]) } };
    expect(planNetwork(dusk, 50).result.unserved).toHaveLength(1);
    const dawn = { ...network, season: { ...network.season, sunriseMinute: new Float64Array([420]) } };
    expect(planNetwork(dawn, 50).result.vehicleDays[0]?.trips[0]?.leaveMinute).toBe(420);
  });

  test('the crew does not wait at a place that opens later, and a place that closes early is refused', () => {
    const trip = onlyTrip({ ...lone, places: [{ x: 15, y: 0, opens: 600 }] });
    expect(trip.stops[0]?.arriveMinute).toBe(600);
    expect(reasonsOf({ ...lone, places: [{ x: 15, y: 0, closes: 420 }] })).toEqual(['no-time-in-shift']);
  });

  test('a large load is cut so that loading leaves time for the road', () => {
    const truck: NetworkSpec = { ...far, vehicles: [{ payloadKg: 9000 }], days: 4 };
    const { loads, unserved } = deliver({ ...truck, consignments: [{ place: 0, group: 'dry', seedPacks: 320 }] }, 50);
    expect(loads.map((load) => load.kg)).toEqual([6250, 1750]);
    expect(unserved).toEqual([]);
  });

  test('loading stands before every trip', () => {
    const two: NetworkSpec = { ...lone, consignments: [{ place: 0, group: 'dry', seedPacks: 80 }] };
    const [first, second] = deliver(two, 50).vehicleDays[0]?.trips ?? [];
    expect((second?.leaveMinute ?? 0) - (first?.returnMinute ?? 0)).toBeCloseTo(30, 9);
  });
});

describe('days', () => {
  const week: NetworkSpec = { ...lone, days: 7 };

  test('a day that is not worked, a vehicle away by its file and by a decision', () => {
    expect(reasonsOf({ ...lone, workday: () => false })).toEqual(['no-vehicle-day-left']);
    expect(reasonsOf({ ...lone, vehicles: [{ availableFrom: dayNumber(FIRST_DAY + 1) }] })).toEqual([
      'no-vehicle-day-left',
    ]);
    const away = { kind: 'vehicle-away', vehicleId: 'V0', from: date(0), to: date(5) } as const;
    expect(deliver({ ...week, decisions: [away] }, 50).vehicleDays[0]?.day).toBe(6);
  });

  test('earliest, latest, and the window missed', () => {
    const [c] = week.consignments;
    if (!c) throw new Error('no consignment');
    expect(deliver({ ...week, consignments: [{ ...c, earliest: 4 }] }, 50).vehicleDays[0]?.day).toBeGreaterThanOrEqual(
      4,
    );
    const missed = { ...week, consignments: [{ ...c, latest: 1 }], workday: (day: number) => day > 1 };
    expect(reasonsOf(missed)).toEqual(['window-missed']);
  });

  test('closed communities', () => {
    const closed = { ...week, places: [{ x: 15, y: 0, closedFrom: 0, closedTo: 5 }] };
    expect(deliver(closed, 50).vehicleDays[0]?.day).toBe(6);
    expect(reasonsOf({ ...week, places: [{ x: 15, y: 0, closedFrom: 0 }] })).toEqual(['point-closed']);
  });

  test('market day: preferred, or the only one; Thursday is day 3', () => {
    const market = { ...week, places: [{ x: 15, y: 0, marketDay: 4 }] };
    expect(deliver(market, 50).vehicleDays[0]?.day).toBe(3);
    expect(served({ ...market, policy: { marketDays: 'prefer' }, workday: (day) => day !== 3 })).toBe(1);
    expect(reasonsOf({ ...market, policy: { marketDays: 'only' }, workday: (day) => day !== 3 })).toEqual([
      'market-day-only',
    ]);
  });

  test('one vehicle and one day for two far places: one is left, and the reason says so', () => {
    const two: NetworkSpec = {
      ...lone,
      places: [
        { x: 70, y: 0 },
        { x: -70, y: 0 },
      ],
      consignments: [0, 1].map((place) => ({ place, group: 'dry' as const, seedPacks: 20 })),
    };
    expect(reasonsOf(two)).toEqual(['no-vehicle-day-left']);
  });
});

describe('roads', () => {
  test('no road, or none in that state of the roads', () => {
    expect(reasonsOf({ ...lone, places: [{ x: 15, y: 0, cutOff: true }] })).toEqual(['not-reachable']);
    const mud = {
      ...lone,
      days: 3,
      roadState: (day: number) => (day < 2 ? 2 : 0),
      shut: (_: number, __: number, s: number) => s === 2,
    };
    expect(deliver(mud, 50).vehicleDays[0]?.day).toBe(2);
  });

  test('a way out without a way back is no way', () => {
    expect(reasonsOf({ ...lone, shut: (from) => from === 1 })).toEqual(['not-reachable']);
  });

  test('slower on a difficult day', () => {
    expect(onlyTrip({ ...lone, roadState: () => 1 }).stops[0]?.legMinutes).toBe(45);
  });
});

describe('heat', () => {
  const noIce = { iceKg: 0, coolLitres: 0 };
  const hot: NetworkSpec = { ...cold, places: [{ x: 45, y: 0 }], airC: () => 44 };

  test('ice keeps packs at 0 °C; without it they warm', () => {
    expect(onlyTrip(cold).stops[0]?.packC).toBe(0);
    expect(onlyTrip({ ...cold, vehicles: [{ iceKg: 0 }] }).stops[0]?.packC).toBeGreaterThan(8);
  });

  test('hot band: cartons may ride two hours in 44 °C air but not four; with ice they may', () => {
    expect(reasonsOf({ ...hot, vehicles: [noIce] })).toEqual([]);
    expect(reasonsOf({ ...hot, places: [{ x: 100, y: 0 }], vehicles: [noIce] })).toEqual(['too-hot']);
    expect(reasonsOf({ ...hot, places: [{ x: 100, y: 0 }] })).toEqual([]);
  });

  test('ice stock: one fill a day, two boxes: one trip goes without, or another day', () => {
    const two: NetworkSpec = {
      ...hot,
      days: 2,
      depots: [{ x: 0, y: 0, ice: 9.6 }],
      places: [
        { x: 100, y: 0 },
        { x: -100, y: 0 },
      ],
      vehicles: [{ coolUaWPerK: 3 }, { coolUaWPerK: 3 }],
      consignments: [0, 1].map((place) => ({ place, group: 'inoculant' as const, sachets: 20 })),
      airC: () => 44,
    };
    const network = buildNetwork(two);
    const { result } = planNetwork(network, 50);
    assertSound(network, result);
    expect(result.vehicleDays.map(({ day }) => day)).toEqual([0, 1]);
    expect(reasonsOf({ ...two, days: 1 })).toHaveLength(1);
  });

  test('hours above storage: shown without a limit, refused with one', () => {
    const warm: NetworkSpec = { ...hot, vehicles: [noIce], airC: () => 39 };
    const hours = onlyTrip(warm).stops[0]?.hoursAboveStorage ?? Number.NaN;
    expect(hours).toBeGreaterThan(0);
    expect(reasonsOf({ ...warm, policy: { hoursAboveStorage: hours - 0.1 } })).toEqual(['hours-above-storage']);
    expect(reasonsOf({ ...warm, policy: { hoursAboveStorage: hours + 0.1 } })).toEqual([]);
  });

  test('the fields of stops without inoculant are not numbers', () => {
    const stop = onlyTrip(lone).stops[0];
    expect([stop?.packC, stop?.packMaxC, stop?.hotBandMaxC, stop?.log10Loss, stop?.hoursAboveStorage]).toEqual(
      new Array(5).fill(Number.NaN),
    );
  });
});

describe('seed and training', () => {
  const both: NetworkSpec = {
    ...lone,
    days: 4,
    consignments: [
      { place: 0, group: 'dry', seedPacks: 20, earliest: 2 },
      { place: 0, group: 'inoculant', sachets: 40 },
    ],
  };

  test('inoculant waits for its seed', () => {
    const { vehicleDays, unserved } = deliver(both, 50);
    expect(unserved).toEqual([]);
    expect(vehicleDays.every(({ day }) => day >= 2)).toBe(true);
  });

  test('no inoculant where its seed does not come, unless growers hold their own', () => {
    const stuck: NetworkSpec = { ...both, vehicles: [{ payloadKg: 20 }] };
    expect(reasonsOf(stuck)).toEqual(['heavier-than-any-vehicle', 'seed-not-delivered']);
    expect(reasonsOf({ ...stuck, places: [{ x: 15, y: 0, ownSeedKg: 5 }] })).toEqual(['heavier-than-any-vehicle']);
  });

  test('training once: with the inoculant, not with the seed', () => {
    const network = buildNetwork(both);
    const { result } = planNetwork(network, 50);
    const minutes = result.vehicleDays.flatMap(({ trips }) =>
      trips.flatMap(({ stops }) => stops.map((stop) => stop.departMinute - stop.startMinute)),
    );
    const total = minutes.reduce((sum, m) => sum + m, 0);
    expect(total).toBeCloseTo(20 * minutes.length + 5 + 30, 9);
  });
});

describe('decisions', () => {
  const lock = (vehicleId: string, day: number) =>
    ({ kind: 'lock', communityId: 'C0', commodity: 'seed', vehicleId, date: date(day) }) as const;
  const week: NetworkSpec = { ...lone, days: 5, vehicles: [{}, { costPerDay: 90 }] };

  test('a lock holds vehicle and day', () => {
    const [day] = deliver({ ...week, decisions: [lock('V1', 3)] }, 50).vehicleDays;
    expect([day?.vehicle, day?.day]).toEqual([1, 3]);
  });

  test('a lock that cannot be kept leaves the load, with the decision as reason', () => {
    const away = { kind: 'vehicle-away', vehicleId: 'V1', from: date(3), to: date(3) } as const;
    expect(reasonsOf({ ...week, decisions: [lock('V1', 3), away] })).toEqual(['decision']);
  });

  test('a promise is kept where it costs less than breaking it, and said where it is not', () => {
    const promise = { kind: 'promise', communityId: 'C0', commodity: 'seed', date: date(2) } as const;
    const kept = planNetwork(buildNetwork({ ...week, decisions: [promise] }), 50);
    expect(kept.result.vehicleDays[0]?.day).toBe(2);
    expect(kept.problems).toEqual([]);
    const spec: NetworkSpec = { ...week, decisions: [promise], workday: (day) => day !== 2 };
    const broken = planNetwork(buildNetwork(spec), 50);
    expect(broken.result.unserved).toEqual([]);
    expect(broken.problems.map(({ code }) => code)).toEqual(['E6002']);
  });

  test('a decision that names nothing is noted', () => {
    const { problems } = planNetwork(buildNetwork({ ...week, decisions: [lock('V9', 1)] }), 50);
    expect(problems.map(({ code }) => code)).toEqual(['E6001']);
  });

  test('a depot without vehicle is noted, and its goods stay', () => {
    const spec: NetworkSpec = {
      ...lone,
      depots: [
        { x: 0, y: 0 },
        { x: 5, y: 5 },
      ],
      consignments: [{ place: 0, group: 'dry', seedPacks: 5, depot: 1 }],
    };
    const { result, problems } = planNetwork(buildNetwork(spec), 50);
    expect(problems.map(({ code }) => code)).toEqual(['E6003']);
    expect(result.unserved.map(({ reason }) => reason)).toEqual(['no-vehicle-day-left']);
  });
});
