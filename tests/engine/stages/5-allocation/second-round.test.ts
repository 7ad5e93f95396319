import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import { type Allocation, type Delivery, dayNumber, type LinearSolver } from '../../../../src/engine/index.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { randomDistrict } from './random-districts.ts';
import { type DistrictSpec, decisions, FROM, lot, sachet, seedPack, smallDistrict } from './small-district.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighsSolver();
});

/** A delivery of whole consignments as loads, without those to the communities named. */
function deliverAllBut(allocation: Allocation, leftBehind: readonly number[]): Delivery {
  const loads = allocation.consignments.map((consignment, index) => ({
    consignment: index,
    grants: consignment.grants,
    packs: consignment.grants.map((grant) => allocation.grants.packs[grant] as number),
    kg: consignment.kg,
    coolLitres: consignment.coolLitres,
    inoculantKg: consignment.inoculantKg,
    hectares: consignment.hectares,
  }));
  return {
    loads,
    vehicleDays: [],
    unserved: loads.flatMap(({ consignment, hectares }, load) =>
      leftBehind.includes(allocation.consignments[consignment]?.community ?? -1)
        ? [{ load, reason: 'no-vehicle-day-left' as const, hectares }]
        : [],
    ),
    iterationsDone: 0,
    stoppedBy: 'iterations',
    cost: null,
    promisePrice: 0,
  };
}

function bothRounds(spec: DistrictSpec, leftBehind: readonly number[]) {
  const { scenario, places, season, needs } = smallDistrict(spec);
  const round = (earlier: { as: 'held'; allocation: Allocation; delivery: Delivery } | null) =>
    allocateStock(scenario, decisions(), places, season, needs, solver, earlier).result;
  const first = round(null);
  const second = round({ as: 'held', allocation: first, delivery: deliverAllBut(first, leftBehind) });
  return { scenario, first, second };
}

/** Packs by community, crop and lot. */
function packsByCell({ grants }: Allocation): Map<string, number> {
  return new Map(
    Array.from(grants.packs, (packs, g) => [`${grants.community[g]} ${grants.crop[g]} ${grants.lot[g]}`, packs]),
  );
}

describe('the second round', () => {
  const two = seedPack('soybean', 2);
  const spec: DistrictSpec = {
    crops: ['soybean'],
    communities: [{ ha: { soybean: 10 } }, { ha: { soybean: 10 } }, { ha: { soybean: 10 } }],
    products: [two],
    lots: [lot(two, 75)],
  };

  it('gives what one community could not get to the others: 150 kg of 300, 50 each; then 0, 74 and 76', () => {
    const { first, second } = bothRounds(spec, [0]);
    expect(Array.from(first.shares.seedGivenKg)).toEqual([50, 50, 50]);
    expect(second.round).toBe(2);
    // 75 packs for two, 37.5 each: one gets 38, the other 37.
    expect(Array.from(second.shares.seedGivenKg).sort()).toEqual([0, 74, 76]);
    expect(second.shortfalls[0]).toMatchObject({
      shareRow: 0,
      commodity: 'seed',
      reason: 'not-delivered',
      shortKg: 100,
    });
  });

  it('proves the share among those who can still get more: 150 kg of 200', () => {
    const { second } = bothRounds(spec, [0]);
    expect(second.proofs[0]?.shareRows).toEqual([1, 2]);
    expect(second.proofs[0]?.leastShare).toBeCloseTo(0.75, 9);
    expect(second.proofs[0]?.bound).toBeCloseTo(0.75, 9);
  });

  it('does not send inoculant for seed that was left behind', () => {
    const powder = sachet(['soybean']);
    const { first, second } = bothRounds(
      { ...spec, products: [two, powder], lots: [lot(two, 75), lot(powder, 99)] },
      [0],
    );
    expect(first.shares.inoculantGivenSeedKg[0]).toBe(50);
    expect(second.shares.inoculantGivenSeedKg[0]).toBe(0);
    expect(second.shortfalls.filter(({ shareRow }) => shareRow === 0).map(({ reason }) => reason)).toEqual([
      'not-delivered',
      'no-seed-to-inoculate',
    ]);
  });

  it('keeps every pack that was served, and gives no lot beyond its packs', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const left = [seed % 2, 3];
      const { scenario, first, second } = bothRounds(randomDistrict(seed), left);
      const after = packsByCell(second);
      for (const [cell, packs] of packsByCell(first)) {
        if (!left.includes(Number(cell.split(' ')[0]))) expect(after.get(cell)).toBeGreaterThanOrEqual(packs);
      }
      const given = scenario.lots.map(() => 0);
      second.grants.lot.forEach((l, g) => {
        given[l] = (given[l] as number) + (second.grants.packs[g] as number);
      });
      scenario.lots.forEach(({ packs }, l) => {
        expect(given[l]).toBeLessThanOrEqual(packs);
      });
      for (const proof of second.proofs) expect(proof.leastShare).toBeLessThanOrEqual(proof.bound + 1e-9);
    }
  });

  it('with nothing left behind changes nothing', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const { first, second } = bothRounds(randomDistrict(seed), []);
      expect(packsByCell(second)).toEqual(packsByCell(first));
      expect(second.consignments).toEqual(first.consignments);
    }
  });

  it('packs that arrive late travel apart from goods that were promised early: the promise does not wait for them', () => {
    const ten = seedPack('soybean', 10);
    const early = lot(ten, 6);
    const late = lot(ten, 4, { availableFrom: dayNumber(FROM + 8), expires: dayNumber(FROM + 400) });
    const { first, second } = bothRounds(
      {
        ...spec,
        communities: [{ ha: { soybean: 10 } }, { ha: { soybean: 10 } }],
        products: [ten],
        lots: [early, late],
      },
      [1],
    );
    // First round: 5 packs each; the first community's are all of the early lot, the second's one early and four late.
    expect(first.consignments.map(({ earliest, kg }) => [earliest, kg])).toEqual([
      [0, 50],
      [8, 50],
    ]);
    // The second is left behind: the first gets its freed early pack on the promised trip, the four late ones later.
    expect(Array.from(second.shares.seedGivenKg)).toEqual([100, 0]);
    expect(second.consignments.map(({ community, earliest, kg }) => [community, earliest, kg])).toEqual([
      [0, 0, 60],
      [0, 8, 40],
    ]);
  });

  it('proves a share that those served in whole packs stand at, promises counted as stock', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const { second } = bothRounds(randomDistrict(seed), [seed % 2, 3]);
      for (const proof of second.proofs) {
        expect(proof.bound - proof.leastShare).toBeLessThan(1e-7);
        proof.shareRows.forEach((row, i) => {
          const { seedGivenKg, inoculantGivenSeedKg } = second.shares;
          const given = (proof.commodity === 'seed' ? seedGivenKg : inoculantGivenSeedKg)[row] as number;
          expect(given).toBeGreaterThanOrEqual(
            proof.leastShare * (proof.needKg[i] as number) - proof.roundingKg - 1e-5,
          );
        });
      }
    }
  });
});
