import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { type DistrictSpec, lot, seedPack } from './small-district.ts';

/** A problem small enough to count out: up to three communities, two depots, two sizes of bag, a few bags of each. */
export function tinyProblem(seed: number): DistrictSpec {
  const random = new RandomStream(seed);
  const sizes = random.next() < 0.5 ? [5] : [10, 4];
  const products = sizes.map((kg) => seedPack('soybean', kg));
  const depots = 1 + random.below(2);
  const communities = Array.from({ length: 2 + random.below(2) }, () => {
    const near = random.below(depots);
    return {
      ha: { soybean: (5 + random.below(36)) / 10 },
      minutes: Array.from({ length: depots }, (_, d) =>
        d === near || random.next() < 0.5 ? 30 + random.below(60) : null,
      ),
    };
  });
  const lots = products.flatMap((product) =>
    Array.from({ length: depots }, (_, d) => lot(product, random.below(5), { depotId: `DEPOT-${d}` })),
  );
  return { crops: ['soybean'], communities, products, lots, depots: Array.from({ length: depots }, () => ({})) };
}

/**
 * Every way to hand out whole bags, none or more of each lot to each community that its depot reaches, so that nobody gets as much as
 * a smallest bag beyond the need. `visit` is called with the kilograms of each community.
 */
export function countOut(spec: DistrictSpec, visit: (givenKg: readonly number[]) => void): void {
  const needs = spec.communities.map(({ ha }) => (ha.soybean ?? 0) * 10);
  const kgOf = (l: number) => (spec.products.find(({ id }) => id === spec.lots[l]?.productId)?.packG ?? 0) / 1000;
  const depotOf = (l: number) => Number(spec.lots[l]?.depotId.slice(-1));
  const reaches = (l: number, c: number) => spec.communities[c]?.minutes?.[depotOf(l)] !== null;
  const smallest = needs.map((_, c) =>
    Math.min(...spec.lots.flatMap(({ packs }, l) => (packs > 0 && reaches(l, c) ? [kgOf(l)] : []))),
  );
  const given = needs.map(() => 0);
  const place = (l: number, c: number, left: number): void => {
    if (l === spec.lots.length) {
      visit(given);
      return;
    }
    if (c === needs.length) {
      place(l + 1, 0, spec.lots[l + 1]?.packs ?? 0);
      return;
    }
    const kg = kgOf(l);
    for (let packs = 0; packs <= left; packs++) {
      const total = (given[c] as number) + packs * kg;
      if (packs > 0 && (!reaches(l, c) || total >= (needs[c] as number) + (smallest[c] as number) - 1e-6)) break;
      given[c] = total;
      place(l, c + 1, left - packs);
      given[c] = total - packs * kg;
    }
  };
  place(0, 0, spec.lots[0]?.packs ?? 0);
}
