import { describe, expect, test } from 'vitest';
import { deliver, type NetworkSpec } from './small-network.ts';

/**
 * The driving rule of the European type: 45 minutes of rest after four and a half hours of driving (Regulation (EC) No 561/2006,
 * article 7, from memory; te-logistics.com/en/infos/lenkzeiten-en.php). Roads are driven at 30 km/h, so 45 km take 90 minutes.
 */
const rule = { restAfterHours: 4.5, restMinutes: 45, trainingMinutes: 0 };
const long: NetworkSpec = {
  days: 1,
  policy: rule,
  places: [
    { x: 45, y: 0 },
    { x: 90, y: 0 },
  ],
  vehicles: [{ maxHours: 14 }],
  consignments: [
    { place: 0, group: 'dry', seedPacks: 4 },
    { place: 1, group: 'dry', seedPacks: 4 },
  ],
};
const stopsOf = (spec: NetworkSpec) =>
  deliver(spec, 200).vehicleDays.flatMap(({ trips }) => trips.flatMap((t) => t.stops));

describe('rest after driving', () => {
  test('three hours out and three back: the crew rests once, where it turns round, before it hands over', () => {
    const [near, far] = stopsOf(long).sort((a, b) => a.site - b.site);
    expect([near?.restMinutes, far?.restMinutes].sort()).toEqual([0, 45]);
    for (const stop of [near, far]) {
      expect((stop?.startMinute ?? 0) - (stop?.arriveMinute ?? 0)).toBeCloseTo(stop?.restMinutes ?? -1, 6);
    }
  });

  test('four and a half hours in all need none, a minute more does', () => {
    const lone = (x: number): NetworkSpec => ({
      ...long,
      places: [{ x, y: 0 }],
      consignments: [{ place: 0, group: 'dry', seedPacks: 4 }],
    });
    expect(stopsOf(lone(67.5)).map(({ restMinutes }) => restMinutes)).toEqual([0]);
    expect(stopsOf(lone(68)).map(({ restMinutes }) => restMinutes)).toEqual([45]);
  });

  test('a second trip waits at the depot for the rest that is owed', () => {
    const twice: NetworkSpec = {
      ...long,
      places: [
        { x: 30, y: 0 },
        { x: -45, y: 0 },
      ],
      vehicles: [{ maxHours: 12, payloadKg: 900 }],
      consignments: [0, 1].map((place) => ({ place, group: 'dry' as const, seedPacks: 30 })),
    };
    const trips = deliver(twice, 200).vehicleDays.flatMap((day) => day.trips);
    expect(trips).toHaveLength(2);
    const loading = 750 * 0.03;
    const stood = (trips[1]?.leaveMinute ?? 0) - (trips[0]?.returnMinute ?? 0) - loading;
    const rests = trips.flatMap(({ stops }) => stops.map(({ restMinutes }) => restMinutes));
    // Two and three hours of driving: five in all, a rest once, at the depot or at the second place.
    expect(Math.round(stood) + rests.reduce((sum, minutes) => sum + minutes, 0)).toBe(45);
  });

  test('a leg longer than crews may drive is an overnight trip; without a rule it is driven', () => {
    const far: NetworkSpec = {
      ...long,
      places: [{ x: 80, y: 0 }],
      consignments: [{ place: 0, group: 'dry', seedPacks: 4 }],
    };
    const strict = { ...far, policy: { ...rule, restAfterHours: 2.5 } };
    expect(deliver(strict, 50).unserved.map(({ reason }) => reason)).toEqual(['overnight-trip-needed']);
    expect(stopsOf({ ...far, policy: { ...rule, restAfterHours: 2.5, restMinutes: 0 } })).toHaveLength(1);
  });
});

describe('leaving hours', () => {
  const cold: NetworkSpec = {
    days: 1,
    depots: [{ x: 0, y: 0, ice: 0 }],
    places: [{ x: 20, y: 0 }],
    vehicles: [{ iceKg: 0, coolLitres: 0 }],
    consignments: [{ place: 0, group: 'inoculant', sachets: 50, worth: 5000 }],
    policy: { trainingMinutes: 0 },
  };
  const leaveOf = (airC: (minute: number) => number) =>
    deliver({ ...cold, places: [{ x: 20, y: 0, ownSeedKg: 1 }], airC }, 50).vehicleDays[0]?.trips[0]?.leaveMinute ?? 0;

  test('a cool morning: as early as allowed; a hot one: on the first quarter hour of the cool afternoon', () => {
    expect(leaveOf((minute) => (minute < 720 ? 15 : 35))).toBeLessThan(362);
    const late = leaveOf((minute) => (minute < 720 ? 36 : 15));
    expect(late).toBeGreaterThanOrEqual(720);
    expect(late % 15).toBe(0);
  });

  test('what is too hot in the morning and not later is brought later', () => {
    // Far hotter than any day, so that packs of 8 °C in a carton come to 40 °C within 40 minutes.
    expect(leaveOf((minute) => (minute < 720 ? 150 : 20))).toBeGreaterThanOrEqual(720);
    expect(leaveOf(() => 150)).toBe(0);
  });
});
