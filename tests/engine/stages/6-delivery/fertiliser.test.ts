import { describe, expect, it } from 'vitest';
import type { Delivery } from '../../../../src/engine/index.ts';
import { buildNetwork, deliver, type NetworkSpec, planNetwork } from './small-network.ts';

/** One place at 10 km, one vehicle, one day; a bag weighs 50 kg. */
const network = (over: Partial<NetworkSpec>): NetworkSpec => ({
  days: 1,
  places: [{ x: 10, y: 0 }],
  vehicles: [{ payloadKg: 1000 }],
  consignments: [],
  ...over,
});

const seed = { place: 0, group: 'dry', seedPacks: 32, packKg: 25 } as const;
const bags = (packs: number) => ({ place: 0, group: 'fertiliser', seedPacks: packs, packKg: 50 }) as const;

/** Kilograms served, and left by reason, of the consignments in their order. */
const servedKg = ({ loads, unserved }: Delivery, consignment: number): number => {
  const left = new Set(unserved.map(({ load }) => load));
  return loads.reduce((sum, load, i) => sum + (load.consignment === consignment && !left.has(i) ? load.kg : 0), 0);
};

describe('fertiliser', () => {
  it('is cut into loads of at most 250 kg, five bags of 50 kg', () => {
    const { loads } = deliver(network({ consignments: [seed, bags(12)] }));
    expect(loads.filter(({ consignment }) => consignment === 1).map(({ kg }) => kg)).toEqual([250, 250, 100]);
  });

  it('takes the room that is left and never that of seed, however dear it is', () => {
    // Long hours at one place: a single trip of the day. 800 kg of seed leave 200 kg.
    const spec = network({
      places: [{ x: 110, y: 0 }],
      consignments: [
        { ...seed, worth: 1 },
        { ...bags(20), worth: 1_000_000 },
      ],
    });
    const delivery = deliver(spec);
    expect(servedKg(delivery, 0)).toBe(800);
    expect(servedKg(delivery, 1)).toBeLessThanOrEqual(200);
    expect(new Set(delivery.unserved.map(({ reason }) => reason))).toEqual(new Set(['no-vehicle-day-left']));
  });

  it('gives each community a load in turn where room is short', () => {
    const spec = network({
      places: [
        { x: 90, y: 0 },
        { x: 90, y: 1 },
      ],
      consignments: [
        { ...seed, seedPacks: 8 },
        { ...seed, seedPacks: 8, place: 1 },
        bags(20),
        { ...bags(20), place: 1 },
      ],
    });
    const delivery = deliver(spec);
    expect([servedKg(delivery, 2), servedKg(delivery, 3)]).toEqual([250, 250]);
  });

  it('does not go where its seed does not', () => {
    const delivery = deliver(network({ consignments: [{ ...seed, latest: -1 }, bags(2)] }));
    expect(delivery.unserved.map(({ reason }) => reason)).toContain('seed-not-delivered');
    expect(servedKg(delivery, 1)).toBe(0);
  });

  it('goes where growers hold seed of their own', () => {
    const spec = network({
      places: [{ x: 10, y: 0, ownSeedKg: 60 }],
      consignments: [{ ...seed, latest: -1 }, bags(2)],
    });
    expect(servedKg(deliver(spec), 1)).toBe(100);
  });

  it('is neither locked nor promised, and held to no earlier round', () => {
    const spec = network({
      days: 3,
      consignments: [seed, bags(4)],
      decisions: [{ kind: 'lock', communityId: 'C0', commodity: 'seed', vehicleId: 'V0', date: '2025-11-04' }],
    });
    const built = buildNetwork(spec);
    const first = planNetwork(built);
    expect(first.result.unserved).toEqual([]);
    const again = planNetwork(built, 300, { allocation: built.allocation, delivery: first.result });
    expect(again.result.unserved).toEqual([]);
    expect(again.problems.map(({ code }) => code)).not.toContain('E6004');
  });
});
