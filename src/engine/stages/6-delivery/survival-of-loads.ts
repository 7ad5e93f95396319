import type { SurvivalSet } from '../../reference/survival-sets.ts';
import { packLog10PerDay, survivalSet } from '../../science/survival.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Allocation } from '../../vocabulary/stage-results/allocation.ts';
import type { Load } from '../../vocabulary/stage-results/delivery.ts';

/** The survival set that loses most at 35 °C among a load's packs; sets are numbered as first met. */
export function survivalOfLoads(scenario: Scenario, allocation: Allocation, loads: readonly Load[]) {
  const productOf = new Map(scenario.products.map((product) => [product.id, product]));
  const sets: SurvivalSet[] = [];
  const numberOf = new Map<string, number>();
  const ofLoad = Int32Array.from(loads, (load) => {
    let worst: SurvivalSet | null = null;
    for (const row of load.grants) {
      const lot = scenario.lots[allocation.grants.lot[row] as number];
      const product = productOf.get(lot?.productId ?? '');
      const crop = scenario.crops[allocation.grants.crop[row] as number];
      if (product?.kind !== 'inoculant' || !crop) continue;
      const set = survivalSet(product, crop);
      if (worst === null || packLog10PerDay(35, set) > packLog10PerDay(35, worst)) worst = set;
    }
    if (worst === null) return -1;
    const key = JSON.stringify(worst);
    const known = numberOf.get(key);
    if (known !== undefined) return known;
    numberOf.set(key, sets.length);
    return sets.push(worst) - 1;
  });
  return { sets, ofLoad };
}
