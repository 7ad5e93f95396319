import { CROP_FACTS, cropFact } from '../../reference/crops.ts';
import { REPEATED_INOCULATION, RESPONSE_SHARED_BY_DISTRICT } from '../../reference/inoculation-response.ts';
import { NITROGEN_COEFFICIENTS, NITROGEN_RELATIVE_SD } from '../../reference/nitrogen-coefficients.ts';
import { COATED_SEED_WAIT, SURVIVAL_SETS } from '../../reference/survival-sets.ts';
import type { FigureInput, FigureProvenance, Scenario } from '../../vocabulary/index.ts';
import { describeHarvest } from './describe-harvest.ts';
import { describeHandedOver, describeMoney } from './describe-money.ts';
import { describeRanges, describeSeasons } from './describe-ranges.ts';
import { describeSums } from './describe-sums.ts';
import { DRAW_SEED, DRAWS, UNCERTAINTY } from './draw-parameters.ts';
import { figure, given, reference } from './figure-entries.ts';
import { ON_SEED_LOG10 } from './live-inoculant.ts';

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
  const responses = [
    ...responseInputs(scenario),
    reference('part of the response left where inoculated last year', '1', {
      ...REPEATED_INOCULATION,
      value: REPEATED_INOCULATION.value.partNextYear,
    }),
    given('last inoculated', 'file:communities.geojson:last_inoculated_year', 'year', 'given'),
  ];
  const draws: FigureInput[] = [
    reference('relative standard deviation of the nitrogen method', '1', NITROGEN_RELATIVE_SD),
    reference('relative standard deviation of the yield', '1', UNCERTAINTY.yieldRelativeSd),
    reference('factor between central and outer loss rates', '1', UNCERTAINTY.lossRateFactor),
    reference('variance of the response shared by the district', '1', RESPONSE_SHARED_BY_DISTRICT),
    reference('days that hand-overs run late, standard deviation', 'd', UNCERTAINTY.delaySdDays),
    reference('chance that a vehicle breaks down', '1', UNCERTAINTY.breakdownChance),
    reference('days lost by a breakdown', 'd', UNCERTAINTY.breakdownDays),
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
    crops('storeLog10', 'log10', 'sum over days in the depot’s store of 1 / D(T), in each season’s own heat', survival),
    crops('roadLog10', 'log10', 'as the delivery found it, by hectares', [road]),
    crops('communityLog10', 'log10', 'sum over days in the community’s store until sowing of 1 / D(T)', survival),
    crops('seedLog10', 'log10', `loss on coated seed in the morning’s batch, ${ON_SEED_LOG10}`, [onSeed]),
    crops(
      'grainT',
      't',
      'hectares * (yield + response * part left after earlier inoculation * worth of live rhizobia + response to phosphorus) * yield kept when late',
      grain,
    ),
    crops('nitrogenKg', 'kg', 'hectares * N fixed at that grain yield (Herridge et al. 2022)', [...grain, ...nitrogen]),
    ...describeRanges([...grain, ...nitrogen, ...draws], [windows, floor, ...life, ...draws], grain, draws, own),
    ...describeSeasons([windows, floor, ...life]),
    ...describeHandedOver(),
    ...describeHarvest(scenario, grain, nitrogen),
    ...describeMoney(scenario, handed),
    ...describeSums(),
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
