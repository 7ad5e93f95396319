import { GRAIN_DRY_FRACTION, GRAIN_N_PERCENT, KERNEL_FRACTION, RESIDUES } from '../../reference/harvest-nitrogen.ts';
import { RESPONSE_SHARED_BY_DISTRICT } from '../../reference/inoculation-response.ts';
import { EARLIER_NITROGEN_COEFFICIENTS } from '../../reference/nitrogen-coefficients.ts';
import {
  GRAIN_PER_KG_PHOSPHORUS,
  MOST_PHOSPHORUS_KG_PER_HA,
  PHOSPHORUS_RELATIVE_SD,
  RESPONSES_OVERLAP,
} from '../../reference/phosphorus-response.ts';
import type { FigureInput, FigureProvenance, Scenario } from '../../vocabulary/index.ts';
import { figure, given, reference } from './figure-entries.ts';
import { ZONE_IN_TIME_SHARE } from './range-over-plays.ts';

/** Grain that is owed to someone, what is left in the field after harvest, and what stands beside it for comparison. */
export function describeHarvest(
  { crops }: Scenario,
  grain: readonly FigureInput[],
  nitrogen: readonly FigureInput[],
): FigureProvenance[] {
  const over = 'p10, p25, p50, p75, p90 over seasons and draws';
  const fixed = given('nitrogen fixed', 'figure:outcomes.headline.nitrogenKg', 'kg', 'assumed');
  const inGrain = crops.map((crop) => reference(`nitrogen in dry grain, ${crop}`, 'percent', GRAIN_N_PERCENT[crop]));
  const dry = reference('dry matter in grain', '1', GRAIN_DRY_FRACTION);
  const kernels = reference('kernels in groundnut', '1', KERNEL_FRACTION);
  const residues = crops.flatMap((crop) => {
    const told = RESIDUES[crop];
    return told ? [reference(`residue slope, ${crop}`, '1', { ...told, value: told.value.slope })] : [];
  });
  const earlier = crops.map((crop) =>
    reference(`harvest index of 2008, ${crop}`, '1', {
      ...EARLIER_NITROGEN_COEFFICIENTS[crop],
      value: EARLIER_NITROGEN_COEFFICIENTS[crop].value.harvestIndex,
    }),
  );
  const reached = given('hectares reached', 'figure:outcomes.headline.reachedHa', 'ha', 'assumed');
  return [
    figure(
      'outcomes.headline.inoculationAtMostKg',
      'kg',
      `${over} of all nitrogen fixed on hectares reached: what inoculation gives where no field held compatible rhizobia`,
      [fixed, reached],
    ),
    figure('outcomes.headline.netNitrogenKg', 'kg', `${over} of nitrogen fixed - nitrogen that leaves with the grain`, [
      fixed,
      dry,
      kernels,
      ...inGrain,
    ]),
    figure('outcomes.headline.programmeGrainT', 't', `${over} of grain with the plan - grain of own seed alone`, grain),
    figure(
      'outcomes.headline.inoculationGrainT',
      't',
      `${over} of grain with the plan - the same land sown on the same days without inoculant`,
      grain,
    ),
    figure(
      'outcomes.headline.central',
      'kg, t, ha',
      'the same totals at the central parameters, mean over the seasons; residues by the IPCC and the method of 2008 stand here alone, and are neither added to nitrogen fixed nor taken from it',
      [...grain, ...nitrogen, ...residues, ...earlier],
    ),
    ...describePhosphorus(crops, over),
    figure('outcomes.zones.inTimeChance', '1', 'share of seasons and draws in which enough of the zone is reached', [
      reference('part of the inoculated land that counts as enough', '1', ZONE_IN_TIME_SHARE),
      reached,
    ]),
  ];
}

/** What fertiliser adds, and the land that it is handed over for. */
function describePhosphorus(crops: Scenario['crops'], over: string): FigureProvenance[] {
  const fertilised = given('hectares with fertiliser', 'figure:outcomes.headline.fertilisedHa', 'ha', 'derived');
  const inputs = [
    fertilised,
    given('rate', 'file:products.csv:rate_kg_ha', 'kg/ha', 'given'),
    given('phosphorus', 'file:products.csv:p_percent', 'percent', 'given'),
    ...crops.flatMap((crop) => {
      const told = GRAIN_PER_KG_PHOSPHORUS[crop];
      return told ? [reference(`grain for each kg of phosphorus, ${crop}`, 'kg/kg', told)] : [];
    }),
    reference('phosphorus that the trials gave', 'kg/ha', MOST_PHOSPHORUS_KG_PER_HA),
    reference('part of the smaller of two responses that both together do not give', '1', RESPONSES_OVERLAP),
    reference('relative standard deviation of the response to phosphorus', '1', PHOSPHORUS_RELATIVE_SD),
    reference('variance of the response shared by the district', '1', RESPONSE_SHARED_BY_DISTRICT),
  ];
  const formula =
    'hectares with fertiliser in hand when they are sown * grain for each kg of phosphorus * least(rate * phosphorus, what the trials gave) * yield kept when late; beside live inoculant less the overlap';
  return [
    figure(
      'outcomes.headline.fertilisedHa',
      'ha',
      'planned * seed of the land that bags serve / need, at most seeded hectares',
      [
        given('packs handed over', 'figure:delivery.stops', 'packs', 'derived'),
        given('seed of that land', 'figure:allocation.grants.servesSeedKg', 'kg', 'derived'),
        given('seed need', 'figure:allocation.shares.seedNeedKg', 'kg', 'derived'),
      ],
    ),
    figure('outcomes.headline.phosphorusGrainT', 't', `${over} of ${formula}`, inputs),
    figure(
      'outcomes.headline.phosphorusNitrogenKg',
      'kg',
      `${over} of nitrogen with the plan - nitrogen of the same land sown on the same days without fertiliser: by larger yields alone`,
      inputs,
    ),
  ];
}
