import { CROP_FACTS, cropFact } from '../../reference/crops.ts';
import { NITROGEN_COEFFICIENTS, NITROGEN_RELATIVE_SD } from '../../reference/nitrogen-coefficients.ts';
import { RESIDUAL_BENEFIT } from '../../reference/residual-benefit.ts';
import { COATED_SEED_WAIT, SURVIVAL_SETS } from '../../reference/survival-sets.ts';
import type { FigureInput, FigureProvenance, Scenario, Sourced, Status } from '../../vocabulary/index.ts';
import { DRAW_SEED, DRAWS, UNCERTAINTY } from './draw-parameters.ts';
import { ON_SEED_LOG10 } from './live-inoculant.ts';
import { LITTLE_LOST_SHARE } from './past-seasons.ts';

/** How every figure of the outcomes was made, one entry each. */
export function describeOutcomes(scenario: Scenario): readonly FigureProvenance[] {
  const handed = given('packs handed over', 'figure:delivery.stops', 'packs', 'derived');
  const needed = given('seed need', 'figure:allocation.shares.seedNeedKg', 'kg', 'derived');
  const planned = given('planned hectares', 'figure:allocation.shares.plannedHa', 'ha', 'given');
  const own = given('farmer-saved seed', 'figure:allocation.shares.ownSeedKg', 'kg', 'given');
  const coats = given('seed that the packs coat', 'figure:allocation.grants.servesSeedKg', 'kg', 'derived');
  const windows = given('sowing windows per season', 'figure:season.windows', 'day', 'derived');
  const count = given('count, tested else the label’s', 'file:lots.csv:tested_count_per_g', '1/g', 'given');
  const dose = given('dose on the label', 'file:products.csv:dose_g_per_kg', 'g/kg', 'given');
  const seeds = given('seeds per kg', 'figure:needs.seedsPerKg', 'seeds/kg', 'derived');
  const road = given('log10 lost on the road', 'figure:delivery.stops.log10Loss', 'log10', 'derived');
  const floor = given('floor', 'file:scenario.json:policy.cellsPerSeedFloor', 'rhizobia/seed', 'given');
  const yields = yieldInputs(scenario);
  const delays = scenario.crops.map((crop) =>
    reference(`yield lost per day of delay, ${crop}`, '1/d', cropFact(crop, 'delayLossPerDay', scenario.assumptions)),
  );
  const survival = Object.entries(SURVIVAL_SETS).map(([name, set]) =>
    reference(`survival set ${name}, D40`, 'd', { ...set, value: set.value.daysPerLog10 }),
  );
  const onSeed = reference('hours from coating to sowing', 'h', {
    ...COATED_SEED_WAIT,
    value: COATED_SEED_WAIT.value.hours,
  });
  const nitrogen = scenario.crops.map((crop) =>
    reference(`percent of nitrogen from the air, ${crop}`, 'percent', {
      ...NITROGEN_COEFFICIENTS[crop],
      value: NITROGEN_COEFFICIENTS[crop].value.ndfaPercent,
    }),
  );
  const responses = responseInputs(scenario);
  const draws: FigureInput[] = [
    reference('relative standard deviation of the nitrogen method', '1', NITROGEN_RELATIVE_SD),
    reference('relative standard deviation of the yield', '1', UNCERTAINTY.yieldRelativeSd),
    reference('factor between central and outer loss rates', '1', UNCERTAINTY.lossRateFactor),
    reference('variance of the response shared by the district', '1', UNCERTAINTY.responseSharedByDistrict),
    { ...given('draws of the parameters', 'reference:draws', '1', 'assumed'), value: DRAWS, source: 'planning choice' },
    {
      ...given('seed of the draws', 'reference:draw seed', '1', 'assumed'),
      value: DRAW_SEED,
      source: 'planning choice: the same draws in every plan',
    },
  ];
  const life = [count, dose, seeds, road, ...survival, onSeed];
  const grain = [planned, windows, ...yields, ...delays, ...responses, ...life];
  return [
    crops('seedHa', 'ha', 'planned * min(1, (own + handed over seed) / need)', [planned, own, handed, needed]),
    crops('seedInTimeHa', 'ha', 'seeded hectares * share of seasons whose window is open after the hand-over', [
      planned,
      own,
      handed,
      needed,
      windows,
    ]),
    crops('inoculatedHa', 'ha', 'planned * seed coated by packs handed over / need, at most seeded hectares', [
      planned,
      handed,
      coats,
      needed,
    ]),
    crops('reachedHa', 'ha', 'inoculated * share of seasons sown within the window at or above the floor', [
      planned,
      windows,
      floor,
      ...life,
    ]),
    crops('log10PerSeed', 'log10', 'log10(count * dose / seeds per kg) - store - road - community - seed', life),
    crops('storeLog10', 'log10', 'sum over days in the depot’s store of 1 / D(T)', survival),
    crops('roadLog10', 'log10', 'as the delivery found it, by hectares', [road]),
    crops('communityLog10', 'log10', 'sum over days in the community’s store until sowing of 1 / D(T)', survival),
    crops('seedLog10', 'log10', `loss on coated seed in the morning’s batch, ${ON_SEED_LOG10}`, [onSeed]),
    crops('grainT', 't', 'hectares * (yield + response * worth of live rhizobia) * yield kept when late', grain),
    crops('nitrogenKg', 'kg', 'hectares * N fixed at that grain yield (Herridge et al. 2022)', [...grain, ...nitrogen]),
    ...describeRanges([...grain, ...nitrogen, ...draws], [windows, floor, ...life, ...draws], grain, draws, own),
    ...describeSeasons([windows, floor, ...life]),
    ...describeHandedOver(),
    ...describeMoney(scenario, handed),
  ];
}

/** Quantiles over every member of the season played with every draw. */
function describeRanges(
  fixing: readonly FigureInput[],
  reaching: readonly FigureInput[],
  grain: readonly FigureInput[],
  draws: readonly FigureInput[],
  own: FigureInput,
): FigureProvenance[] {
  const over = 'p10, p25, p50, p75, p90 over seasons and draws';
  const farmers = given('farmers, where counted', 'file:communities.geojson:farmers', 'people', 'given');
  const women = given('women farmers, where counted', 'file:communities.geojson:farmers_women', 'people', 'given');
  const reached = given('hectares reached', 'figure:outcomes.headline.reachedHa', 'ha', 'assumed');
  return [
    figure('outcomes.headline.nitrogenKg', 'kg', `${over} of the nitrogen fixed on all land sown`, fixing),
    figure(
      'outcomes.headline.programmeNitrogenKg',
      'kg',
      'nitrogen with the plan - nitrogen of own seed alone, uncoated, in the same season and draw',
      [...fixing, own],
    ),
    figure(
      'outcomes.headline.inoculationNitrogenKg',
      'kg',
      'nitrogen with the plan - nitrogen of the same land sown on the same days without inoculant, in the same season and draw: by larger yields alone, because the method cannot credit a higher share from the air',
      fixing,
    ),
    figure('outcomes.headline.reachedHa', 'ha', over, reaching),
    figure('outcomes.zones.reachedRange', 'ha', over, reaching),
    figure('outcomes.headline.grainT', 't', over, [...grain, ...draws]),
    figure(
      'outcomes.headline.farmersReached',
      'people',
      'sum over communities of farmers * hectares reached / hectares planned; a share of farmers as of land, not a count of who was met',
      [farmers, reached],
    ),
    figure(
      'outcomes.headline.womenShare',
      '1',
      'sum of women farmers * share of land reached / sum of farmers * share of land reached, where both are counted',
      [women, farmers, reached],
    ),
  ];
}

function describeSeasons(reaching: readonly FigureInput[]): FigureProvenance[] {
  const least = reference('share of land lost that is worth a name', '1', LITTLE_LOST_SHARE);
  return [
    figure(
      'outcomes.seasons',
      'ha',
      'this plan in the onset of each past season at the central parameters, with the heat expected this year; what cost most = the largest of no onset, late, waiting, weak',
      [...reaching, least],
    ),
  ];
}

/** What was signed for, as hectares, and the part of it reported sown. */
function describeHandedOver(): FigureProvenance[] {
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

function describeMoney({ currency }: Scenario, handed: FigureInput): FigureProvenance[] {
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

function yieldInputs({ crops: names, yieldsTPerHa, assumptions }: Scenario): FigureInput[] {
  return names.map((crop) => {
    const own = yieldsTPerHa[crop];
    if (own === undefined) return reference(`yield, ${crop}`, 't/ha', cropFact(crop, 'yieldTPerHa', assumptions));
    return { ...given(`yield, ${crop}`, 'file:scenario.json:yields', 't/ha', 'given'), value: own };
  });
}

function responseInputs({ crops: names }: Scenario): FigureInput[] {
  return names.flatMap((crop) => {
    const { responseTPerHa, responseFraction } = CROP_FACTS[crop];
    if (responseTPerHa) return [reference(`response to inoculation, ${crop}`, 't/ha', responseTPerHa.mean)];
    return responseFraction ? [reference(`response to inoculation, ${crop}`, '1', responseFraction.mean)] : [];
  });
}

function crops(name: string, unit: string, formula: string, inputs: readonly FigureInput[]): FigureProvenance {
  return figure(`outcomes.crops.${name}`, unit, formula, inputs);
}

function figure(name: string, unit: string, formula: string, inputs: readonly FigureInput[]): FigureProvenance {
  const statuses = inputs.map(({ status }) => status);
  const status = statuses.includes('assumed') ? 'assumed' : statuses.includes('memory') ? 'memory' : 'derived';
  return { figure: name, unit, formula, inputs, status, source: 'arithmetic on the inputs named' };
}

function given(name: string, from: string, unit: string, status: Status): FigureInput {
  return { name, from, unit, status, source: from.replace(/^[a-z]+:/, '') };
}

function reference(name: string, unit: string, { value, status, source }: Sourced<number>): FigureInput {
  return { name, from: `reference:${name}`, unit, value, status, source };
}
