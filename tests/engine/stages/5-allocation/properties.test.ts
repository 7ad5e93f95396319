import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import type { Allocation, FairShareProof, LinearSolver, Scenario } from '../../../../src/engine/index.ts';
import { exactSum } from '../../../../src/engine/numerics/exact-sum.ts';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { randomDistrict } from './random-districts.ts';
import { type DistrictSpec, decisions, smallDistrict } from './small-district.ts';

const SEEDS = Array.from({ length: 40 }, (_, i) => i + 1);

let solver: LinearSolver;
let districts: ReturnType<typeof allocate>[] = [];
beforeAll(async () => {
  solver = await loadHighsSolver();
  districts = SEEDS.map((seed) => allocate(randomDistrict(seed)));
});

function allocate(spec: DistrictSpec) {
  const { scenario, places, season, needs } = smallDistrict(spec);
  const allocation = allocateStock(scenario, decisions(), places, season, needs, solver, null).result;
  return { spec, scenario, allocation };
}

const productOf = (scenario: Scenario, lot: number) => {
  const product = scenario.products.find(({ id }) => id === scenario.lots[lot]?.productId);
  if (!product) throw new Error(`no product for lot ${lot}`);
  return product;
};

const kgPerPack = (scenario: Scenario, lot: number) => {
  const { kind, packG, doseGPerKg } = productOf(scenario, lot);
  return kind === 'seed' ? packG / 1000 : packG / (doseGPerKg ?? Number.NaN);
};

/** Whether a lot may go to a row of the shares, told from the district's own words. */
function mayGo({ spec, scenario, allocation }: ReturnType<typeof allocate>, lot: number, row: number): boolean {
  const { shares } = allocation;
  const depot = Number(scenario.lots[lot]?.depotId.slice(-1));
  const minutes = spec.communities[shares.community[row] as number]?.minutes?.[depot];
  return (
    productOf(scenario, lot).crops.some((crop) => crop === scenario.crops[shares.crop[row] as number]) &&
    minutes !== null &&
    minutes !== undefined
  );
}

function needOf({ shares }: Allocation, commodity: FairShareProof['commodity'], row: number): number {
  const seedNeed = (shares.seedNeedKg[row] as number) - (shares.ownSeedKg[row] as number);
  return commodity === 'seed' ? Math.max(0, seedNeed) : (shares.inoculantNeedSeedKg[row] as number);
}

const givenOf = ({ shares }: Allocation, commodity: FairShareProof['commodity'], row: number) =>
  (commodity === 'seed' ? shares.seedGivenKg[row] : shares.inoculantGivenSeedKg[row]) as number;

describe('any allocation of 40 random districts', () => {
  it('gives no lot beyond its packs, and only where a depot reaches and the label fits', () => {
    for (const district of districts) {
      const { grants, shares } = district.allocation;
      const given = new Map<number, number>();
      grants.lot.forEach((lot, g) => {
        given.set(lot, (given.get(lot) ?? 0) + (grants.packs[g] as number));
        const row = shares.community.findIndex(
          (community, r) => community === grants.community[g] && shares.crop[r] === grants.crop[g],
        );
        expect(mayGo(district, lot, row)).toBe(true);
        expect(grants.packs[g]).toBeGreaterThan(0);
      });
      for (const [lot, packs] of given) expect(packs).toBeLessThanOrEqual(district.scenario.lots[lot]?.packs ?? 0);
    }
  });

  it('balances by exact sums: what grants serve is what shares show', () => {
    for (const { scenario, allocation } of districts) {
      const { grants, shares } = allocation;
      const served = (kind: string, row: number) =>
        exactSum(
          Array.from(grants.servesSeedKg).filter(
            (_, g) =>
              productOf(scenario, grants.lot[g] as number).kind === kind &&
              grants.community[g] === shares.community[row] &&
              grants.crop[g] === shares.crop[row],
          ),
        );
      shares.community.forEach((_, row) => {
        expect(served('seed', row)).toBe(shares.seedGivenKg[row]);
        expect(served('inoculant', row)).toBe(shares.inoculantGivenSeedKg[row]);
        expect(needOf(allocation, 'seed', row)).toBeGreaterThanOrEqual((shares.seedGivenKg[row] as number) - 1e-9);
      });
    }
  });

  it('explains every kilogram that is short', () => {
    for (const { allocation } of districts) {
      const { shares, shortfalls } = allocation;
      shares.community.forEach((_, row) => {
        const told = (commodity: string) =>
          exactSum(shortfalls.filter((s) => s.shareRow === row && s.commodity === commodity).map((s) => s.shortKg));
        const seedShort = needOf(allocation, 'seed', row) - (shares.seedGivenKg[row] as number);
        const coatShort = (shares.seedNeedKg[row] as number) - (shares.inoculantGivenSeedKg[row] as number);
        expect(told('seed')).toBeCloseTo(seedShort, 5);
        expect(told('inoculant')).toBeCloseTo(coatShort, 5);
      });
    }
  });

  it('leaves no pack lying that would fit someone short, and gives nobody as much as a whole smallest pack above the need', () => {
    for (const district of districts) {
      const { scenario, allocation } = district;
      const left = scenario.lots.map(({ packs }) => packs);
      allocation.grants.lot.forEach((lot, g) => {
        left[lot] = (left[lot] as number) - (allocation.grants.packs[g] as number);
      });
      for (const commodity of ['seed', 'inoculant'] as const) {
        allocation.shares.community.forEach((community, row) => {
          const lots = scenario.lots.flatMap((_, l) =>
            productOf(scenario, l).kind === commodity && mayGo(district, l, row) ? [l] : [],
          );
          const offered = lots.filter((l) => (scenario.lots[l]?.packs ?? 0) > 0);
          const smallest = Math.min(...offered.map((l) => kgPerPack(scenario, l)));
          const most = needOf(allocation, commodity, row) + smallest - 1e-6;
          let givenKg = 0;
          allocation.grants.lot.forEach((l, g) => {
            const isOwn =
              allocation.grants.community[g] === community && allocation.grants.crop[g] === allocation.shares.crop[row];
            if (isOwn && lots.includes(l)) givenKg += kgPerPack(scenario, l) * (allocation.grants.packs[g] as number);
          });
          if (offered.length > 0) expect(givenKg).toBeLessThanOrEqual(most + 1e-6);
          if (needOf(allocation, commodity, row) - givenOf(allocation, commodity, row) <= 1e-6) return;
          for (const l of lots) {
            if ((left[l] as number) > 0) expect(givenKg + kgPerPack(scenario, l)).toBeGreaterThan(most);
          }
        });
      }
    }
  });
});

describe('the proof of the fair share', () => {
  it('holds: prices fit needs and ways, the bound is what they give, and meets the share (weak and strong duality)', () => {
    let proofs = 0;
    for (const seed of SEEDS) {
      for (const equalOver of ['community', 'zone', 'grower'] as const) {
        const district = allocate(randomDistrict(seed, { policy: { equalOver } }));
        for (const proof of district.allocation.proofs) {
          const priced = exactSum(proof.needKg.map((need, i) => need * (proof.communityPrices[i] as number)));
          expect(priced + proof.capPrice).toBeGreaterThanOrEqual(1 - 1e-12);
          proof.shareRows.forEach((row, i) => {
            proof.lots.forEach((lot, l) => {
              if (!mayGo(district, lot, row)) return;
              expect(proof.communityPrices[i]).toBeLessThanOrEqual(proof.lotPrices[l] as number);
            });
          });
          const bound = exactSum([
            ...proof.lotPrices.map((price, l) => price * (proof.offeredKg[l] as number)),
            proof.capPrice,
          ]);
          expect(proof.bound).toBeCloseTo(bound, 12);
          // Held rows may take a billionth less than theirs (SHARE_SLACK).
          expect(proof.leastShare).toBeLessThanOrEqual(proof.bound + 2e-9);
          // Where growers count, rows that are full before the others loosen the bound.
          if (equalOver !== 'grower') expect(proof.bound - proof.leastShare).toBeLessThan(1e-7);
          proofs++;
        }
      }
    }
    expect(proofs).toBeGreaterThan(200);
  });

  it('covers each row that some stock reaches, once', () => {
    for (const district of districts) {
      const { proofs, shares } = district.allocation;
      for (const commodity of ['seed', 'inoculant'] as const) {
        const rows = proofs.filter((proof) => proof.commodity === commodity).flatMap(({ shareRows }) => shareRows);
        const reached = Array.from(shares.community, (_, row) => row).filter(
          (row) =>
            needOf(district.allocation, commodity, row) > 1e-6 &&
            district.scenario.lots.some(
              ({ packs }, l) =>
                packs > 0 && productOf(district.scenario, l).kind === commodity && mayGo(district, l, row),
            ),
        );
        expect([...rows].sort((a, b) => a - b)).toEqual(reached);
      }
    }
  });

  it('whole packs leave nobody below the share by more than roundingKg', () => {
    for (const { allocation } of districts) {
      for (const proof of allocation.proofs) {
        proof.shareRows.forEach((row, i) => {
          const due = proof.leastShare * (proof.needKg[i] as number) - proof.roundingKg;
          expect(givenOf(allocation, proof.commodity, row)).toBeGreaterThanOrEqual(due - 1e-5);
        });
      }
    }
  });

  it('no random sharing out of the same packs does better than the bound', () => {
    for (const [seed, district] of districts.slice(0, 20).entries()) {
      const random = new RandomStream(seed + 1000);
      for (const proof of district.allocation.proofs) {
        for (let trial = 0; trial < 20; trial++) {
          const given = proof.needKg.map(() => 0);
          proof.lots.forEach((lot, l) => {
            const open = proof.shareRows.flatMap((row, i) => (mayGo(district, lot, row) ? [i] : []));
            const parts = open.map(() => random.next());
            const total = exactSum(parts);
            open.forEach((i, k) => {
              given[i] = (given[i] as number) + ((proof.offeredKg[l] as number) * (parts[k] as number)) / total;
            });
          });
          const least = Math.min(1, ...given.map((kg, i) => kg / (proof.needKg[i] as number)));
          expect(least).toBeLessThanOrEqual(proof.bound + 1e-9);
        }
      }
    }
  });
});

describe('order and names', () => {
  const given = ({ allocation }: ReturnType<typeof allocate>) =>
    Array.from(allocation.shares.community, (community, row) => [
      community,
      allocation.shares.crop[row],
      allocation.shares.seedGivenKg[row],
      allocation.shares.inoculantGivenSeedKg[row],
    ]);

  it('other names, the same allocation', () => {
    for (const seed of SEEDS.slice(0, 8)) {
      const spec = randomDistrict(seed);
      const renamed: DistrictSpec = {
        ...spec,
        idPrefix: 'X',
        products: spec.products.map((product) => ({ ...product, id: `${product.id.length} ${product.id}` })),
        lots: spec.lots.map((lot, l) => ({
          ...lot,
          id: `${1000 - l}`,
          productId: `${lot.productId.length} ${lot.productId}`,
        })),
      };
      expect(allocate(renamed).allocation).toEqual(allocate(spec).allocation);
    }
  });

  it('lots in another order, the same for every community', () => {
    for (const seed of SEEDS.slice(0, 8)) {
      const spec = randomDistrict(seed);
      expect(given(allocate({ ...spec, lots: [...spec.lots].reverse() }))).toEqual(given(allocate(spec)));
    }
  });

  it('asked twice, the same to the last bit', () => {
    const spec = randomDistrict(7);
    expect(allocate(spec).allocation).toEqual(allocate(spec).allocation);
  });
});
