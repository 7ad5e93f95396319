import { RESIDUAL_BENEFIT } from '../reference/residual-benefit.ts';
import type { Problem } from '../vocabulary/problems.ts';
import { plannedOf } from './check-needs.ts';
import { at, type CheckedCase } from './checked-case.ts';
import { finding, type Tell } from './finding.ts';
import type { Handed } from './own-land.ts';
import { TOLERANCE } from './tolerances.ts';

interface DeliveryParts {
  readonly kilometres: number;
  readonly vehicleDays: number;
  readonly crews: number;
  readonly ice: number;
}

/** What the trips cost, part by part; a vehicle-day and its crew once however many trips it makes. */
function deliveryParts(c: CheckedCase): DeliveryParts {
  const { trips } = c.plan.delivery;
  const parts = { kilometres: 0, vehicleDays: 0, crews: 0, ice: 0 };
  const days = new Set<string>();
  trips.vehicle.forEach((v, trip) => {
    const { costPerDay, crew, perDiem, costPerKm } = at(c.scenario.vehicles, v);
    const key = `${v} ${at(trips.date, trip)}`;
    if (!days.has(key))
      [parts.vehicleDays, parts.crews] = [parts.vehicleDays + costPerDay, parts.crews + crew * perDiem];
    days.add(key);
    parts.kilometres += at(trips.kilometres, trip) * costPerKm;
    parts.ice += at(trips.iceKg, trip) * (c.scenario.prices.icePerKg ?? 0);
  });
  return parts;
}

/** Goods at their prices, trips at their rates, what the next cereal saves, and the parts that the cost is told in. */
export function checkMoney(
  c: CheckedCase,
  goods: ReadonlyMap<number, readonly Handed[]>,
  tell: Tell,
  found: Problem[],
): void {
  const { headline } = c.plan.outcomes;
  const { cost } = c.plan.delivery;
  const { vehicles, prices } = c.scenario;
  const parts = deliveryParts(c);
  const delivery = parts.kilometres + parts.vehicleDays + parts.crews + parts.ice;
  const isPriced =
    vehicles.some((v) => v.costPerDay > 0 || v.costPerKm > 0 || v.crew * v.perDiem > 0) || prices.icePerKg !== null;
  if (isPriced || cost !== null) tell('E8955', 'headline.deliveryCost', null, headline.deliveryCost, delivery, 1);
  if (cost !== headline.deliveryCost)
    found.push(finding('E8955', 'delivery.cost', null, cost ?? 'none', headline.deliveryCost ?? 'none'));
  const { promisePrice } = c.scenario.policy;
  if (promisePrice !== null)
    tell('E8955', 'delivery.promisePrice', null, c.plan.delivery.promisePrice, promisePrice, 1);
  let worth = 0;
  for (const list of goods.values())
    for (const { lot, packs } of list) {
      const product = c.scenario.products[at(c.productOfLot, lot)];
      worth += packs * (product?.pricePerPack ?? Number.NaN);
    }
  if (Number.isNaN(worth) !== (headline.goodsCost === null))
    found.push(finding('E8955', 'outcomes.headline.goodsCost', null, headline.goodsCost ?? 'none', worth));
  else if (!Number.isNaN(worth)) tell('E8955', 'headline.goodsCost', null, headline.goodsCost, worth, 1);
  checkResidual(c, tell);
  checkCostParts(c, goods, parts, worth, tell);
}

/** Only what the next cereal can do without is priced: hectares of seed brought, at the published bounds. */
function checkResidual(c: CheckedCase, tell: Tell): void {
  const { headline } = c.plan.outcomes;
  const brought = c.plan.allocation.shares.community.reduce((sum, community, row) => {
    const { plannedHa, ownSeedKg } = plannedOf(c, community, at(c.plan.allocation.shares.crop, row));
    const need = at(c.plan.allocation.shares.seedNeedKg, row);
    const ownHa = need > 0 ? Math.min(plannedHa, (ownSeedKg / need) * plannedHa) : 0;
    return sum + Math.max(0, at(c.plan.outcomes.crops.seedHa, row) - ownHa);
  }, 0);
  tell('E8954', 'headline.broughtSeedHa', null, headline.broughtSeedHa, brought, TOLERANCE.outcomesHa * 10);
  const price = c.scenario.prices.nitrogenPerKg;
  for (const end of ['least', 'most'] as const) {
    const kg = brought * RESIDUAL_BENEFIT.value[end];
    tell('E8952', 'headline.residualNitrogenKg', null, headline.residualNitrogenKg[end], kg, 1);
    if (price !== null)
      tell('E8955', 'headline.residualWorth', null, headline.residualWorth?.[end] ?? null, kg * price, 1);
  }
}

/** The parts of the cost sum to goods and delivery; what the programme does not price is left unstated. */
function checkCostParts(
  c: CheckedCase,
  goods: ReadonlyMap<number, readonly Handed[]>,
  parts: DeliveryParts,
  worth: number,
  tell: Tell,
): void {
  const { cost, deliveryCost, costPerHectare, reachedHa } = c.plan.outcomes.headline;
  const { assumptions } = c.scenario;
  if (deliveryCost !== null)
    for (const [name, due] of Object.entries(parts))
      tell('E8955', `headline.cost.${name}`, null, cost[name as keyof DeliveryParts], due, 0.5);
  if (!Number.isNaN(worth))
    tell('E8955', 'headline.cost', null, (cost.inoculant ?? 0) + (cost.otherGoods ?? 0), worth, 1);
  const inoculant = [...goods].flatMap(([key, list]) => list.map((handed) => ({ key, ...handed })));
  const alive = inoculant.filter(({ kind }) => kind === 'inoculant');
  const trained = new Set(alive.map(({ key }) => Math.floor(key / c.scenario.crops.length))).size;
  const tested = new Set(alive.map(({ lot }) => lot)).size;
  const told = (name: 'training' | 'testing', count: number, price: number | undefined) => {
    if (price !== undefined) tell('E8955', `headline.cost.${name}`, null, cost[name], count * price, 0.01);
    else if (cost[name] !== null) tell('E8955', `headline.cost.${name}`, null, cost[name], Number.NaN, 0);
    return (price ?? 0) * count;
  };
  const extra =
    told('training', trained, assumptions['training.costPerCommunity']) +
    told('testing', tested, assumptions['testing.costPerLot']);
  if (costPerHectare !== null)
    tell(
      'E8955',
      'headline.costPerHectare',
      null,
      costPerHectare.p50,
      (worth + (deliveryCost ?? 0) + extra) / reachedHa.p50,
      0.05,
    );
}
