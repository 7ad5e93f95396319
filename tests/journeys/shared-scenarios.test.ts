import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../src/engine/index.ts';
import { exactSum } from '../../src/engine/numerics/exact-sum.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';
import { SHARED_ABSENT, sharedFolder } from '../shared-folder.ts';

/** Check values as each scenario's README states them (open layers; plans invented there). */
const SCENARIOS = [
  {
    name: 'rwanda-sectors',
    hectares: { common_bean: 7465.1, soybean: 3080.9, groundnut: 673.6 },
    overOneTonne: [306, 416],
    farmers: 1_396_845,
    keptBack: ['expired', 'count-below-minimum', 'germination-below-minimum', 'treated-seed-not-for-inoculant'],
  },
  {
    name: 'sahel-east',
    hectares: { cowpea: 7886.4, groundnut: 1833.4, bambara: 980.1 },
    overOneTonne: [75, 83],
    farmers: 376_533,
    keptBack: ['expired', 'count-below-minimum', 'germination-below-minimum', 'treated-seed-not-for-inoculant'],
  },
  {
    name: 'south-malawi-roads',
    hectares: { pigeonpea: 1339.1, soybean: 568.2, groundnut: 842.3, cowpea: 269.9 },
    overOneTonne: [47, 120],
    farmers: 11_174,
    keptBack: ['expired', 'count-below-minimum', 'germination-below-minimum', 'treated-seed-not-for-inoculant'],
  },
] as const;

describe.skipIf(sharedFolder === null)(
  `scenarios on open layers${sharedFolder === null ? ` (${SHARED_ABSENT})` : ''}`,
  () => {
    describe.each(SCENARIOS)('$name', ({ name, hectares, overOneTonne, farmers, keptBack }) => {
      const planned =
        sharedFolder === null ? null : planFiles(readFolderFiles(`${sharedFolder}/scenarios/${name}`), 150);
      const { scenario, decisions, plan } = planned as NonNullable<typeof planned>;
      const { needs, allocation, delivery } = plan;
      const where = (column: readonly number[], value: number, figures: readonly number[]) =>
        exactSum(figures.filter((_, i) => column[i] === value));

      it('makes a plan that the independent checker accepts', () => {
        expect(checkPlan(scenario, decisions, plan)).toEqual([]);
      });

      it('plans the stated hectares and farmers, by exact sums', () => {
        for (const [crop, expected] of Object.entries(hectares)) {
          const index = scenario.crops.indexOf(crop as never);
          expect(Number(where(needs.crop, index, needs.plannedHa).toFixed(4))).toBe(expected);
        }
        expect(exactSum(plan.outcomes.zones.farmers)).toBe(farmers);
      });

      it('finds the communities that need more than a tonne of seed, cuts them into loads that a vehicle carries, and serves them or says why', () => {
        const seedKg = scenario.communities.map((_, c) => where(needs.community, c, needs.seedKg));
        expect([seedKg.filter((kg) => kg > 1000).length, seedKg.length]).toEqual([...overOneTonne]);
        const largest = Math.max(...scenario.vehicles.map(({ payloadKg }) => payloadKg));
        expect(Math.max(...delivery.loads.kg)).toBeLessThanOrEqual(largest);
        const served = new Set(delivery.stops.loads.flat());
        const unserved = new Set(delivery.unserved.load);
        const lost = delivery.loads.kg.map((_, load) => load).filter((load) => served.has(load) === unserved.has(load));
        expect(lost).toEqual([]);
      });

      it('keeps back the lots set as traps', () => {
        const reasons = new Set(allocation.lots.reasons.flat());
        for (const reason of keptBack) expect(reasons.has(reason), reason).toBe(true);
      });

      it('balances: land, seed, packs and kilograms delivered', () => {
        const planned = scenario.communities.flatMap(({ crops }) => crops.map(({ plannedHa }) => plannedHa));
        expect(exactSum(needs.plannedHa)).toBeCloseTo(exactSum(planned), 6);
        const { grants, consignments } = allocation;
        grants.packs.forEach((packs, grant) => {
          const inLoads = delivery.loads.grants.flatMap((list, load) =>
            list.flatMap((g, i) => (g === grant ? [delivery.loads.packs[load]?.[i] as number] : [])),
          );
          expect(exactSum(inLoads)).toBe(packs);
        });
        scenario.lots.forEach(({ packs }, lot) => {
          expect(
            where(grants.lot, lot, grants.packs) + (allocation.lots.packsReserved[lot] as number),
          ).toBeLessThanOrEqual(packs);
        });
        expect(exactSum(delivery.loads.kg)).toBeCloseTo(exactSum(consignments.kg), 2);
        expect(exactSum(consignments.kg)).toBeCloseTo(exactSum(grants.kg), 2);
        const stopped = delivery.stops.loads.flat().map((load) => delivery.loads.kg[load] as number);
        expect(exactSum(stopped)).toBeCloseTo(exactSum(delivery.trips.loadKg), 1);
      });
    });

    it('cuts what is heavier than the largest lorry: 21 communities of rwanda-sectors, sahel-east and south-malawi-roads together', () => {
      const heavier = SCENARIOS.map(({ name }) => {
        const { scenario, plan } = planFiles(readFolderFiles(`${sharedFolder}/scenarios/${name}`), 0);
        const largest = Math.max(...scenario.vehicles.map(({ payloadKg }) => payloadKg));
        return scenario.communities.filter(
          (_, c) => exactSum(plan.needs.seedKg.filter((_, i) => plan.needs.community[i] === c)) > largest,
        ).length;
      });
      expect(exactSum(heavier)).toBe(21);
    });
  },
);
