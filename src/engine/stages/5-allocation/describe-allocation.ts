import { BOX_LITRES_PER_KG } from '../../reference/boxes.ts';
import { INOCULATION_PRACTICE } from '../../reference/inoculation-practice.ts';
import type { FigureInput, FigureProvenance, Status } from '../../vocabulary/provenance.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import { LEAST_CHANCE_BEFORE_EXPIRY } from './judge-lots.ts';

const OWN = 'arithmetic of this stage';

const given = (name: string, from: string, unit: string): FigureInput => ({
  name,
  from,
  unit,
  status: 'given',
  source: from.startsWith('figure:') ? 'this plan' : 'the programme',
});

const figure = (
  path: string,
  unit: string,
  formula: string,
  inputs: readonly FigureInput[],
  status: Status = 'derived',
  source = OWN,
): FigureProvenance => ({ figure: `allocation.${path}`, unit, formula, inputs, status, source });

const PACKS = given('packs', 'figure:allocation.grants.packs', 'packs');
const PACK_SIZE = given('pack', 'products.csv:pack_size', 'g');
const DOSE = given('dose', 'products.csv:dose_g_per_kg', 'g/kg');
const SERVES = given('seed served', 'figure:allocation.grants.servesSeedKg', 'kg');
const SEED_NEED = given('seed to sow', 'figure:needs.seedKg', 'kg');
const OWN_SEED = given('own seed', 'figure:needs.ownSeedKg', 'kg');
const PLANNED = given('planned', 'figure:needs.plannedHa', 'ha');

/** How every figure of this stage was made. */
export function describeAllocation({ policy }: Scenario): FigureProvenance[] {
  const reserve: FigureInput = {
    ...given('reserve', 'scenario.json:policy.reservePercent', '%'),
    value: policy.reservePercent,
  };
  const stock = given('stock', 'lots.csv:packs', 'packs');
  const leastChance: FigureInput = {
    name: 'least chance',
    from: 'reference:chance of sowing before expiry',
    unit: '1',
    value: LEAST_CHANCE_BEFORE_EXPIRY,
    status: 'assumed',
    source: 'rule of the design',
  };
  const boxLitres: FigureInput = {
    name: 'litres where the label gives none',
    from: 'reference:box litres per kg',
    unit: 'L/kg',
    value: BOX_LITRES_PER_KG.value,
    status: BOX_LITRES_PER_KG.status,
    source: BOX_LITRES_PER_KG.source,
  };
  const openedDays: FigureInput = {
    name: 'days where the label gives none',
    from: 'reference:opened pack',
    unit: 'd',
    value: INOCULATION_PRACTICE.openedPackDays.value,
    status: INOCULATION_PRACTICE.openedPackDays.status,
    source: INOCULATION_PRACTICE.openedPackDays.source,
  };
  return [
    figure('lots.packsReserved', 'packs', 'floor(packs * reserve / 100); 0 for a lot kept back', [stock, reserve]),
    figure('lots.packsOffered', 'packs', 'packs - reserved; 0 for a lot kept back', [stock, reserve, leastChance]),
    figure(
      'lots.chanceSownBeforeExpiry',
      '1',
      'share of seasons whose first sowing day comes before the expiry date, over zones and crops by planned hectares',
      [given('expires', 'lots.csv:expires', 'day'), given('first sowing day', 'figure:season.windows', 'day'), PLANNED],
    ),
    figure(
      'lots.countPerG',
      '1/g',
      'tested count * 10^-(sum over the days from the test to the first planning day of the loss in the depot); a label count as it is',
      [
        given('tested count', 'lots.csv:tested_count_per_g', '1/g'),
        given('day of the test', 'lots.csv:tested_on', 'day'),
        given('store', 'depots.csv:cool_store_c', '°C'),
      ],
      'derived',
      'science/stored-count.ts, survival sets of reference/survival-sets.ts',
    ),
    figure(
      'grants.packs',
      'packs',
      'linear program in kg of seed: largest least share, then most hectares; then whole packs, once (README of the stage)',
      [given('offered', 'figure:allocation.lots.packsOffered', 'packs'), SEED_NEED, OWN_SEED, reserve],
    ),
    figure('grants.kg', 'kg', 'packs * pack / 1000', [PACKS, PACK_SIZE]),
    figure(
      'grants.servesSeedKg',
      'kg',
      'seed: packs * pack / 1000 * min(1, germination / reference germination); inoculant: packs * pack / dose; lot by lot, not beyond the need; sticker likewise; fertiliser: packs * pack / 1000 / rate * seed to sow / planned',
      [
        PACKS,
        PACK_SIZE,
        DOSE,
        given('germination', 'lots.csv:germination_percent', '%'),
        given('rate', 'products.csv:rate_kg_ha', 'kg/ha'),
      ],
    ),
    figure('shares.plannedHa', 'ha', 'sum over zones', [PLANNED]),
    figure('shares.seedNeedKg', 'kg', 'sum over zones', [SEED_NEED]),
    figure('shares.ownSeedKg', 'kg', 'sum over zones', [OWN_SEED]),
    figure('shares.seedThereKg', 'kg', 'seed of past hand-overs, less what came back, at most the need', []),
    figure('shares.seedGivenKg', 'kg', 'sum of seed served by seed packs', [SERVES]),
    figure('shares.inoculantNeedSeedKg', 'kg', 'min(seed to sow, seed given + own seed)', [
      SERVES,
      OWN_SEED,
      SEED_NEED,
    ]),
    figure('shares.inoculantGivenSeedKg', 'kg', 'sum of seed served by inoculant packs', [SERVES]),
    figure('shares.seedShare', '1', 'min(1, (seed given + own seed) / seed to sow)', [SERVES, OWN_SEED, SEED_NEED]),
    figure('shares.inoculantShare', '1', 'seed coated / seed to sow', [SERVES, SEED_NEED]),
    figure('proofs', '1', 'least share <= sum(offered * lot price) + cap price (weak duality of linear programs)', [
      given('offered', 'figure:allocation.lots.packsOffered', 'packs'),
    ]),
    figure('shortfalls.shortKg', 'kg', 'need - given', [SEED_NEED, SERVES]),
    figure('shortfalls.hectares', 'ha', 'short kg * planned ha / seed to sow', [PLANNED, SEED_NEED]),
    figure('remedies.hectares', 'ha', 'shortfalls that the packs would lift, by themselves', [
      given('short', 'figure:allocation.shortfalls.hectares', 'ha'),
    ]),
    figure('remedies.cost', 'currency', 'packs * price', [given('price', 'products.csv:price_per_pack', 'currency')]),
    figure(
      'orders.packsWanted',
      'packs',
      'whole packs of least money for what each community lacks, + reserve, made up to the supplier multiple',
      [
        SEED_NEED,
        OWN_SEED,
        SERVES,
        reserve,
        given('multiple', 'products.csv:order_multiple', 'packs'),
        given('price', 'products.csv:price_per_pack', 'currency'),
      ],
    ),
    figure('orders.packs', 'packs', 'packs wanted; under a budget the multiples that serve land worth most', [
      given('wanted', 'figure:allocation.orders.packsWanted', 'packs'),
      given('budget', 'scenario.json:policy.orderBudget', 'currency'),
    ]),
    figure('orders.cost', 'currency', 'packs * price', [
      given('packs', 'figure:allocation.orders.packs', 'packs'),
      given('price', 'products.csv:price_per_pack', 'currency'),
    ]),
    figure(
      'orders.chanceInTime',
      '1',
      'share of seasons whose last good sowing day comes after hand-over on the day of arrival, by hectares',
      [
        given('lead time', 'products.csv:lead_days', 'd'),
        given('first and last sowing day', 'figure:season.windows', 'day'),
      ],
    ),
    figure('packShares.growersPerPack', 'growers', 'growers of the crop (else farmers), by seed coated / packs', [
      given('growers', 'communities.geojson:<crop>_growers', 'people'),
      PACKS,
    ]),
    figure('packShares.openedPackDays', 'd', 'the label, else the reference', [
      given('label', 'products.csv:opened_pack_days', 'd'),
      openedDays,
    ]),
    figure('consignments.kg', 'kg', 'sum of packs * pack / 1000', [PACKS, PACK_SIZE]),
    figure('consignments.coolLitres', 'L', 'sum over inoculant of packs * litres per pack', [
      PACKS,
      given('litres', 'products.csv:litres_per_pack', 'L'),
      boxLitres,
    ]),
    figure('consignments.inoculantKg', 'kg', 'sum over inoculant of packs * pack / 1000', [PACKS, PACK_SIZE]),
    figure('consignments.hectares', 'ha', 'sum of seed served * planned ha / seed to sow', [
      SERVES,
      PLANNED,
      SEED_NEED,
    ]),
    figure('consignments.worth', 'currency', 'sum of packs * price; unstated where a price is missing', [
      PACKS,
      given('price', 'products.csv:price_per_pack', 'currency'),
    ]),
    figure(
      'consignments.reachByDay',
      '1',
      'mean over seasons of yield kept for late sowing * worth of living rhizobia (science/reach), by hectares of each crop, if handed over that day with no loss on the road',
      [
        given('first and last sowing day', 'figure:season.windows', 'day'),
        given('count', 'lots.csv:tested_count_per_g', '1/g'),
      ],
      'assumed',
      'science/reach.ts',
    ),
    figure('consignments.bestReach', '1', 'highest of its planning days', [
      given('reach by day', 'figure:allocation.consignments.reachByDay', '1'),
    ]),
  ];
}
