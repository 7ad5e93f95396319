import { RESIDUAL_BENEFIT } from '../../reference/residual-benefit.ts';
import type { FigureInput, FigureProvenance, Scenario } from '../../vocabulary/index.ts';
import { figure, given, reference } from './figure-entries.ts';

/** What was signed for, as hectares, and the part of it reported sown. */
export function describeHandedOver(): FigureProvenance[] {
  const signed = [
    given('packs signed for less returned', 'file:handovers.csv:packs', 'packs', 'given'),
    given('dose', 'file:products.csv:dose_g_per_kg', 'g/kg', 'given'),
    given('seed need', 'figure:allocation.shares.seedNeedKg', 'kg', 'derived'),
  ];
  const sown = [...signed, given('day sown', 'file:handovers.csv:sown_on', 'day', 'given')];
  const formula = 'packs of inoculant kept * contents / dose / seed per hectare, at most the hectares planned';
  return ['headline', 'zones'].flatMap((part) => [
    figure(`outcomes.${part}.signedForHa`, 'ha', formula, signed),
    figure(`outcomes.${part}.sownHa`, 'ha', `${formula}, of the hand-overs with a day of sowing`, sown),
  ]);
}

export function describeMoney({ currency }: Scenario, handed: FigureInput): FigureProvenance[] {
  const price = given('price of nitrogen', 'file:scenario.json:prices', `${currency}/kg`, 'given');
  const grain = given('extra grain', 'figure:outcomes.headline.programmeGrainT', 't', 'assumed');
  const grainPrice = given('price of grain', 'file:scenario.json:prices.grain', `${currency}/t`, 'given');
  const cost = given('cost', 'figure:outcomes.headline.cost', currency, 'derived');
  const brought = given('hectares of seed brought', 'figure:outcomes.headline.broughtSeedHa', 'ha', 'derived');
  const { value, ...residual } = RESIDUAL_BENEFIT;
  const benefit = reference('residual benefit, least', 'kg/ha', { ...residual, value: value.least });
  const most = reference('residual benefit, most', 'kg/ha', { ...residual, value: value.most });
  return [
    figure('outcomes.headline.goodsCost', currency, 'sum of packs handed over * price', [
      handed,
      given('price per pack', 'file:products.csv:price_per_pack', currency, 'given'),
    ]),
    figure(
      'outcomes.headline.cost',
      currency,
      'goods by their price; trips by kilometre, vehicle-day, crew and ice; training by community and testing by lot, where the programme prices them (assumptions training.costPerCommunity, testing.costPerLot)',
      [handed, given('trips', 'figure:delivery.trips', '1', 'derived')],
    ),
    ...['programmeGrainWorth', 'inoculationGrainWorth'].map((name) =>
      figure(
        `outcomes.headline.${name}`,
        currency,
        'p10, p50, p90 over seasons and draws of the extra grain * price of that crop’s grain',
        [grain, grainPrice],
      ),
    ),
    figure(
      'outcomes.headline.valueCostRatio',
      '1',
      'worth of the grain owed to the programme / (goods + delivery + training + testing); growers’ land and work are not in the cost',
      [grain, grainPrice, cost],
    ),
    figure(
      'outcomes.headline.inoculantValueCostRatio',
      '1',
      'worth of the grain that inoculation adds / price of the packs of inoculant alone',
      [grain, grainPrice, cost],
    ),
    figure('outcomes.headline.deliveryCost', currency, 'cost of all trips: kilometres, vehicle-days, crews and ice', [
      given('delivery', 'figure:delivery.cost', currency, 'derived'),
    ]),
    figure(
      'outcomes.headline.costPerHectare',
      currency,
      '(goods + delivery + training and testing where priced) / hectares reached in the best tenth, the middle and the worst tenth of outcomes',
      [
        given('goods handed over', 'figure:outcomes.headline.goodsCost', currency, 'derived'),
        given('delivery', 'figure:outcomes.headline.deliveryCost', currency, 'derived'),
        given('hectares reached', 'figure:outcomes.headline.reachedHa', 'ha', 'assumed'),
      ],
    ),
    figure('outcomes.headline.deliveryPerHectare', currency, 'delivery / hectares reached in the middle outcome', [
      given('delivery', 'figure:outcomes.headline.deliveryCost', currency, 'derived'),
      given('hectares reached', 'figure:outcomes.headline.reachedHa', 'ha', 'assumed'),
    ]),
    figure('outcomes.headline.broughtSeedHa', 'ha', 'hectares with seed - hectares of own seed', [
      given('hectares with seed', 'figure:outcomes.crops.seedHa', 'ha', 'derived'),
      given('farmer-saved seed', 'figure:allocation.shares.ownSeedKg', 'kg', 'given'),
    ]),
    figure('outcomes.headline.residualNitrogenKg', 'kg', 'hectares of seed brought * residual benefit', [
      brought,
      benefit,
      most,
    ]),
    figure(
      'outcomes.headline.residualWorth',
      currency,
      'hectares of seed brought * residual benefit * price of nitrogen; nothing else of the nitrogen fixed is priced',
      [brought, benefit, most, price],
    ),
  ];
}
