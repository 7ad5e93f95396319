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
  const brought = given('hectares of seed brought', 'figure:outcomes.headline.broughtSeedHa', 'ha', 'derived');
  const programme = given(
    'nitrogen owed to the programme',
    'figure:outcomes.headline.programmeNitrogenKg',
    'kg',
    'derived',
  );
  const { value, ...residual } = RESIDUAL_BENEFIT;
  const benefit = reference('residual benefit, least', 'kg/ha', { ...residual, value: value.least });
  const most = reference('residual benefit, most', 'kg/ha', { ...residual, value: value.most });
  return [
    figure('outcomes.headline.goodsCost', currency, 'sum of packs handed over * price', [
      handed,
      given('price per pack', 'file:products.csv:price_per_pack', currency, 'given'),
    ]),
    figure('outcomes.headline.nitrogenWorth', currency, 'median nitrogen owed to the programme * price', [
      price,
      programme,
    ]),
    figure('outcomes.headline.deliveryCost', currency, 'cost of all trips: kilometres, vehicle-days, crews and ice', [
      given('delivery', 'figure:delivery.cost', currency, 'derived'),
    ]),
    figure(
      'outcomes.headline.costPerHectare',
      currency,
      '(goods + delivery) / hectares reached in the best tenth, the middle and the worst tenth of outcomes',
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
