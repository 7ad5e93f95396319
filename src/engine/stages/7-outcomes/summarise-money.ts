import { exactSum } from '../../numerics/exact-sum.ts';
import type { CostParts, Headline, Range, Scenario, Spread } from '../../vocabulary/index.ts';
import type { HandedGoods } from './handed-goods.ts';
import type { PlayTotal } from './play-result.ts';
import type { DrivenLoads } from './prepare-play.ts';

type Money = Pick<
  Headline,
  | 'cost'
  | 'costPerHectare'
  | 'deliveryPerHectare'
  | 'goodsCost'
  | 'deliveryCost'
  | 'programmeGrainWorth'
  | 'inoculationGrainWorth'
  | 'valueCostRatio'
  | 'inoculantValueCostRatio'
>;

/**
 * Cost by its parts and what the grain is worth at the prices given. Goods and delivery must be priced for a cost per hectare;
 * training and testing are counted where the programme prices them.
 */
export function summariseMoney(
  scenario: Scenario,
  delivery: DrivenLoads,
  goods: readonly HandedGoods[],
  communityOf: ArrayLike<number>,
  totals: Readonly<Record<PlayTotal, Spread>>,
): Money {
  const cost = costParts(scenario, delivery, goods, communityOf);
  const goodsCost = cost.inoculant === null || cost.otherGoods === null ? null : cost.inoculant + cost.otherGoods;
  const isWhole = goodsCost !== null && delivery.cost !== null;
  const all = isWhole ? goodsCost + delivery.cost + (cost.training ?? 0) + (cost.testing ?? 0) : null;
  const { reachedHa } = totals;
  const programmeGrainWorth = rangeOrNull(totals.programmeGrainWorth);
  const inoculationGrainWorth = rangeOrNull(totals.inoculationGrainWorth);
  return {
    cost,
    costPerHectare:
      all === null || reachedHa.p10 <= 0
        ? null
        : { p10: all / reachedHa.p90, p50: all / reachedHa.p50, p90: all / reachedHa.p10 },
    deliveryPerHectare: delivery.cost === null || reachedHa.p50 <= 0 ? null : delivery.cost / reachedHa.p50,
    goodsCost,
    deliveryCost: delivery.cost,
    programmeGrainWorth,
    inoculationGrainWorth,
    valueCostRatio: overCost(programmeGrainWorth, all),
    inoculantValueCostRatio: overCost(inoculationGrainWorth, cost.inoculant),
  };
}

function rangeOrNull({ p10, p50, p90 }: Range): Range | null {
  return Number.isNaN(p50) ? null : { p10, p50, p90 };
}

function overCost(worth: Range | null, cost: number | null): Range | null {
  if (worth === null || cost === null || cost <= 0) return null;
  return { p10: worth.p10 / cost, p50: worth.p50 / cost, p90: worth.p90 / cost };
}

function costParts(
  scenario: Scenario,
  delivery: DrivenLoads,
  goods: readonly HandedGoods[],
  communityOf: ArrayLike<number>,
): CostParts {
  const { assumptions, lots, prices, products, vehicles } = scenario;
  const packPrice = new Map(products.map(({ id, pricePerPack }) => [id, pricePerPack]));
  const priced = (of: readonly HandedGoods[]): number | null => {
    const costs = of.map(({ lot, packs }) => packs * (packPrice.get(lots[lot]?.productId ?? '') ?? Number.NaN));
    return costs.some(Number.isNaN) ? null : exactSum(costs);
  };
  const isInoculant = ({ kind }: HandedGoods) => kind === 'inoculant';
  const days = delivery.vehicleDays;
  const part = (of: (day: (typeof days)[number], vehicle: Scenario['vehicles'][number]) => number): number | null =>
    delivery.cost === null
      ? null
      : exactSum(days.map((day) => of(day, vehicles[day.vehicle] as Scenario['vehicles'][number])));
  const inoculant = goods.filter(isInoculant);
  const perCommunity = assumptions['training.costPerCommunity'];
  const perLot = assumptions['testing.costPerLot'];
  const overTrips = (day: (typeof days)[number], of: (trip: (typeof day.trips)[number]) => number) =>
    day.trips.reduce((sum, trip) => sum + of(trip), 0);
  const trained = new Set(inoculant.map(({ shareRow }) => communityOf[shareRow]));
  return {
    inoculant: priced(inoculant),
    otherGoods: priced(goods.filter((each) => !isInoculant(each))),
    kilometres: part((day, { costPerKm }) => overTrips(day, ({ kilometres }) => kilometres * costPerKm)),
    vehicleDays: part((_, { costPerDay }) => costPerDay),
    crews: part((_, { crew, perDiem }) => crew * perDiem),
    ice: part((day) => overTrips(day, ({ iceKg }) => iceKg * (prices.icePerKg ?? 0))),
    training: perCommunity === undefined ? null : trained.size * perCommunity,
    testing: perLot === undefined ? null : new Set(inoculant.map(({ lot }) => lot)).size * perLot,
  };
}
