import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import type { ConsignmentSpec, NetworkSpec } from './small-network.ts';

/**
 * A district of four depots and 400 communities within some 40 km of theirs, with 33 vehicles and 25 days: about 1,000 loads. Invented, seeded.
 */
export function bigNetwork(communities = 400, days = 25): NetworkSpec {
  const random = new RandomStream(7);
  const depots = [0, 1, 2, 3].map((i) => ({
    x: (i % 2) * 80,
    y: Math.floor(i / 2) * 80,
    ice: i === 0 ? 90 : 40,
    storeC: 6 + 3 * i,
  }));
  const places = Array.from({ length: communities }, (_, i) => {
    const depot = depots[i % 4] as { x: number; y: number };
    return {
      x: depot.x + (random.next() - 0.5) * 70,
      y: depot.y + (random.next() - 0.5) * 70,
      marketDay: 1 + random.below(6),
    };
  });
  const vehicles = depots.flatMap((_, depot) => [
    ...Array.from({ length: depot === 0 ? 3 : 2 }, () => ({
      depot,
      kind: 'truck',
      payloadKg: 5000,
      coolLitres: 150,
      coolUaWPerK: 1.2,
      iceKg: 24,
      carriage: 'covered_bed' as const,
      costPerKm: 900,
      costPerDay: 90000,
    })),
    ...Array.from({ length: depot === 0 ? 4 : 2 }, () => ({
      depot,
      payloadKg: 900,
      coolLitres: 50,
      iceKg: 9.6,
      costPerKm: 480,
      costPerDay: 55000,
    })),
    ...Array.from({ length: depot === 0 ? 5 : 3 }, () => ({
      depot,
      kind: 'motorcycle',
      payloadKg: 80,
      coolLitres: 8,
      coolUaWPerK: 0.25,
      iceKg: 1.6,
      carriage: 'pannier' as const,
      costPerKm: 140,
      costPerDay: 15000,
      maxHours: 8,
    })),
  ]);
  const consignments = places.flatMap((_, place): ConsignmentSpec[] => {
    const tonnes = 0.2 + 6 * random.next() * random.next();
    const first = random.below(5);
    const seedPacks = Math.ceil(tonnes * 40);
    const late = Array.from({ length: days }, (_, day) => (day < 12 + first ? 1 : 1 - (day - 11 - first) / 25));
    const common = { place, depot: place % 4, reachByDay: late };
    return [
      { ...common, group: 'dry', seedPacks, worth: seedPacks * 20000, hectares: tonnes * 12 },
      {
        ...common,
        group: 'inoculant',
        sachets: Math.ceil(tonnes * 50),
        worth: tonnes * 50 * 4350,
        earliest: 4,
        hectares: tonnes * 12,
      },
    ];
  });
  const sun = (minute: number) => Math.max(0, Math.sin((Math.PI * (minute - 360)) / 720));
  return { days, depots, places, vehicles, consignments, airC: (minute) => 18 + 12 * sun(minute - 90), sun };
}
