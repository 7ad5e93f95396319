import type { Crop } from '../../../../src/engine/index.ts';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { type CommunitySpec, type DistrictSpec, lot, sachet, seedPack } from './small-district.ts';

const CROPS: readonly Crop[] = ['soybean', 'cowpea', 'bambara'];

/** An invented district of two depots, three crops of different seed rates and up to a dozen communities, some out of reach. */
export function randomDistrict(seed: number, over: Partial<DistrictSpec> = {}): DistrictSpec {
  const random = new RandomStream(seed);
  const communities = Array.from({ length: 2 + random.below(11) }, (): CommunitySpec => {
    const area = () => (random.next() < 0.25 ? 0 : Math.round(1 + random.next() * 150) / 10);
    const soybean = area();
    return {
      ha: { soybean, cowpea: area(), bambara: area() },
      ownSeedKg: random.next() < 0.3 ? { soybean: soybean * 20 * random.next() } : {},
      growers: 1 + random.below(60),
      priority: 1 + random.below(3),
      zones:
        random.next() < 0.3
          ? [
              [0, 0.4],
              [1, 0.6],
            ]
          : [[random.below(2), 1]],
      minutes: [0, 1].map(() => (random.next() < 0.15 ? null : 20 + random.next() * 200)),
    };
  });
  const products = [
    ...CROPS.flatMap((crop) => [25, 10, 2].map((kg) => seedPack(crop, kg))),
    sachet(['soybean']),
    sachet(['soybean'], { id: 'LIQUID', packG: 500, doseGPerKg: 4 }),
    sachet(['cowpea', 'bambara'], { doseGPerKg: 10 }),
  ];
  const lots = products.flatMap((product) =>
    [0, 1].map((depot) =>
      lot(product, random.below(product.kind === 'seed' ? 40 : 9), {
        depotId: `DEPOT-${depot}`,
      }),
    ),
  );
  return {
    crops: CROPS,
    communities,
    products,
    lots,
    depots: [{}, {}],
    zones: 2,
    seedRateKgPerHa: { soybean: 20, cowpea: 8, bambara: 17 },
    ...over,
  };
}
