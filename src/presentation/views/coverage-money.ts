import type { Plan, Range, Scenario } from '../../engine/index.ts';

/** What the plan costs and what of it may be priced, in the scenario's currency; null where a price is missing. */
export interface CoverageMoney {
  readonly goods: number | null;
  readonly delivery: number | null /** Per hectare expected; null where a price is missing or none is expected. */;
  readonly perHectare: Range | null;
  readonly deliveryPerHectare: number | null;
  readonly residual: {
    readonly hectares: number;
    readonly leastKg: number;
    readonly mostKg: number;
    readonly leastKgPerHa: number;
    readonly mostKgPerHa: number;
    readonly worth: { readonly least: number; readonly most: number } | null;
    readonly pricePerKg: number | null;
  } | null;
  /** Products handed over that have no price. */
  readonly productsWithoutPrice: readonly string[];
}

export function coverageMoney(plan: Plan, scenario: Scenario): CoverageMoney {
  const { goodsCost, deliveryCost, costPerHectare, deliveryPerHectare } = plan.outcomes.headline;
  return {
    goods: goodsCost,
    delivery: deliveryCost,
    perHectare: costPerHectare,
    deliveryPerHectare,
    residual: residualOf(plan, scenario),
    productsWithoutPrice: goodsCost === null ? productsWithoutPrice(plan, scenario) : [],
  };
}

function residualOf({ outcomes }: Plan, { prices }: Scenario): CoverageMoney['residual'] {
  const { broughtSeedHa, residualNitrogenKg, residualWorth } = outcomes.headline;
  if (broughtSeedHa <= 0) return null;
  return {
    hectares: broughtSeedHa,
    leastKg: residualNitrogenKg.least,
    mostKg: residualNitrogenKg.most,
    leastKgPerHa: residualNitrogenKg.least / broughtSeedHa,
    mostKgPerHa: residualNitrogenKg.most / broughtSeedHa,
    worth: residualWorth,
    pricePerKg: prices.nitrogenPerKg,
  };
}

/** Products of the loads that are served and have no price per pack, in the order of the scenario. */
function productsWithoutPrice({ allocation, delivery }: Plan, { lots, products }: Scenario): string[] {
  const served = new Set(delivery.stops.loads.flat());
  const grants = [...served].flatMap((load) => delivery.loads.grants[load] ?? []);
  const handed = new Set(grants.map((grant) => lots[allocation.grants.lot[grant] ?? -1]?.productId));
  return products.filter(({ id, pricePerPack }) => pricePerPack === null && handed.has(id)).map(({ id }) => id);
}
