import type { Crop } from '../../../../src/engine/index.ts';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { type DistrictSpec, lot, sachet, seedPack } from './small-district.ts';

const CROPS: readonly Crop[] = ['soybean', 'groundnut', 'cowpea'];

/** Invented: so many places, three seed products and two inoculants in 12 lots at three depots, about two thirds of what is asked. */
export function largeDistrict(places: number): DistrictSpec {
  const random = new RandomStream(5);
  const communities = Array.from({ length: places }, (_, c) => ({
    ha: Object.fromEntries(CROPS.map((crop) => [crop, Math.round(20 + random.next() * 200) / 10])),
    minutes: [0, 1, 2].map((d) => (d === c % 3 || random.next() < 0.4 ? 20 + random.next() * 200 : null)),
  }));
  const products = [...CROPS.map((crop) => seedPack(crop, 5)), sachet(['soybean', 'groundnut']), sachet(['cowpea'])];
  const lots = products.flatMap((product, p) =>
    Array.from({ length: p < 2 ? 3 : 2 }, (_, k) =>
      lot(product, Math.round((places * 12 * 10 * 0.65) / (product.kind === 'seed' ? 5 : 10) / (p < 2 ? 3 : 2)), {
        depotId: `DEPOT-${k}`,
      }),
    ),
  );
  return { crops: CROPS, communities, products, lots, depots: [{}, {}, {}] };
}
