import { exactSum } from '../../numerics/exact-sum.ts';
import { CROP_FACTS } from '../../reference/crops.ts';
import { cellsPerSeed } from '../../science/seed-rate.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Needs } from '../../vocabulary/stage-results/needs.ts';
import type { CropPractice } from './settle-practice.ts';

/** What the planner should know of needs that could be met only in part, or not believed. */
export function noteNeeds(scenario: Scenario, practices: readonly CropPractice[], needs: Needs): readonly Problem[] {
  return [
    ...practices.flatMap((practice, c) => {
      const plannedHa = exactSum(needs.plannedHa.filter((_, row) => needs.crop[row] === c));
      return plannedHa === 0
        ? []
        : [...noteNoInoculant(scenario, practice, plannedHa), ...noteThin(scenario, practice)];
    }),
    ...noteOwnSeed(scenario, practices),
  ];
}

/** A crop that no inoculant names; one for the same group of rhizobia is shown, never used: the label decides. */
function noteNoInoculant(scenario: Scenario, practice: CropPractice, plannedHa: number): readonly Problem[] {
  if (practice.product >= 0) return [];
  const { compatibility } = CROP_FACTS[practice.crop];
  const similar = scenario.products.find(
    ({ kind, crops }) => kind === 'inoculant' && crops.some((crop) => CROP_FACTS[crop].compatibility === compatibility),
  );
  return [problem('E4001', { facts: { crop: practice.crop, hectares: plannedHa, similar: similar?.id ?? '' } })];
}

/** A fresh pack that by its own count and dose puts too few rhizobia on each seed. */
function noteThin(scenario: Scenario, practice: CropPractice): readonly Problem[] {
  const product = scenario.products[practice.product];
  if (!product || product.countPerG === null) return [];
  const cells = cellsPerSeed(product.countPerG, practice.doseGPerKg, practice.thousandSeedG.value, 1);
  const floor = scenario.policy.cellsPerSeedFloor;
  if (cells >= floor) return [];
  return [
    problem('E4003', {
      about: { part: 'products', id: product.id },
      facts: { product: product.id, crop: practice.crop, cells: Math.round(cells), floor },
    }),
  ];
}

/** Growers who hold more seed than their planned land takes. */
function noteOwnSeed(scenario: Scenario, practices: readonly CropPractice[]): readonly Problem[] {
  return scenario.communities.flatMap((community) =>
    community.crops.flatMap((plan) => {
      const practice = practices.find(({ crop }) => crop === plan.crop);
      const needKg = plan.plannedHa * (plan.seedRateKgPerHa ?? practice?.seedRate.value ?? 0);
      if (plan.ownSeedKg <= needKg) return [];
      const facts = { community: community.id, crop: plan.crop, ownKg: plan.ownSeedKg, needKg };
      return [problem('E4002', { column: `${plan.crop}_own_seed_kg`, value: String(plan.ownSeedKg), facts })];
    }),
  );
}
