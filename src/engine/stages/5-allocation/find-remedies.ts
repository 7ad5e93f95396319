import { statedCountPerG } from '../../science/stored-count.ts';
import type { LotReason } from '../../vocabulary/reasons.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { LotVerdict, Remedy, Shortfall } from '../../vocabulary/stage-results/allocation.ts';
import type { Product } from '../../vocabulary/supply.ts';
import type { DemandRows } from './demand-rows.ts';
import { STOCK_REASONS } from './list-shortfalls.ts';
import { seedKgPerPack } from './stock-groups.ts';

/** Reasons for which a lot is replaced. Testing it again until it passes is no remedy. */
const REPLACED_FOR: readonly LotReason[] = [
  'expired',
  'expires-before-sowing',
  'count-below-minimum',
  'germination-below-minimum',
];

/**
 * What would lift shortfalls: more packs of the product that binds, lots that wait for a release, good lots in place of
 * failed ones, the reserve. Each remedy counts by itself; two for the same shortfall do not add up. Best hectares for
 * money first (what costs nothing leads, what has no price comes last), then most hectares.
 *
 * @param lastUsefulDay last planning day on which goods for the row are still of use, day number
 */
export function findRemedies(
  scenario: Scenario,
  demand: DemandRows,
  verdicts: readonly LotVerdict[],
  shortfalls: readonly Shortfall[],
  lastUsefulDay: Float64Array,
): Remedy[] {
  const open = shortfalls.filter(({ reason }) => STOCK_REASONS.includes(reason));
  const liftedBy = (product: Product, arrives: number): Lifted =>
    open.filter(
      ({ shareRow, commodity }) =>
        product.kind === commodity &&
        product.crops.some((crop) => crop === scenario.crops[demand.crop[shareRow] as number]) &&
        (lastUsefulDay[shareRow] as number) >= arrives,
    );
  const remedies = [
    ...morePacks(scenario, demand, open, liftedBy),
    ...fromLots(scenario, demand, verdicts, liftedBy),
    ...lowerReserve(scenario, demand, verdicts, liftedBy),
  ].filter(({ hectares }) => hectares > 0);
  const perCost = ({ hectares, cost }: Remedy) => (cost === null ? 0 : hectares / cost);
  return remedies
    .map((remedy, i) => ({ remedy, i, value: perCost(remedy) }))
    .sort((a, b) => (a.value === b.value ? 0 : b.value - a.value) || b.remedy.hectares - a.remedy.hectares || a.i - b.i)
    .map(({ remedy }) => remedy);
}

/** Shortfalls that a product would lift if it were there on a day. */
type Lifted = readonly Shortfall[];
type LiftedBy = (product: Product, arrives: number) => Lifted;

/** Day on which goods ordered today would be there. An unknown lead time is taken as none: the label or supplier tells. */
const arrivalOf = ({ asOf }: Scenario, product: Product) => asOf + (product.leadDays ?? 0);

function morePacks(scenario: Scenario, demand: DemandRows, open: Lifted, liftedBy: LiftedBy): Remedy[] {
  const binding = [...new Set(open.map(({ product }) => product))].sort((a, b) => a - b);
  return binding.flatMap((p) => {
    const product = scenario.products[p];
    if (!product) return [];
    const lifted = liftedBy(product, arrivalOf(scenario, product)).filter((shortfall) => shortfall.product === p);
    const wanted = lifted.reduce((sum, { shortKg }) => sum + Math.ceil(shortKg / seedKgPerPack(product) - 1e-9), 0);
    const packs = Math.ceil(wanted / product.orderMultiple) * product.orderMultiple;
    return [
      {
        kind: 'more-packs' as const,
        product: p,
        lot: -1,
        packs,
        ...reached(demand, lifted, 1),
        cost: priceOf(product, packs),
      },
    ];
  });
}

function fromLots(
  scenario: Scenario,
  demand: DemandRows,
  verdicts: readonly LotVerdict[],
  liftedBy: LiftedBy,
): Remedy[] {
  return verdicts.flatMap(({ lot: l, reasons }): Remedy[] => {
    const lot = scenario.lots[l];
    const p = scenario.products.findIndex(({ id }) => id === lot?.productId);
    const product = scenario.products[p];
    if (!lot || !product || reasons.length === 0) return [];
    const make = (kind: Remedy['kind'], arrives: number, cost: number | null): Remedy[] => {
      const lifted = liftedBy(product, arrives);
      return [
        {
          kind,
          product: p,
          lot: l,
          packs: lot.packs,
          ...reached(demand, lifted, partOf(lifted, product, lot.packs)),
          cost,
        },
      ];
    };
    if (reasons.every((reason) => reason === 'on-hold' || reason === 'awaiting')) {
      return make('release-lot', lot.availableFrom ?? scenario.asOf, 0);
    }
    // A lot without any count is first of all to be told of, not to be replaced.
    if (!reasons.every((reason) => REPLACED_FOR.includes(reason)) || isUntold(product, lot)) return [];
    return make('replace-lot', arrivalOf(scenario, product), priceOf(product, lot.packs));
  });
}

const isUntold = (product: Product, lot: Scenario['lots'][number]) =>
  product.kind === 'inoculant' && Number.isNaN(statedCountPerG(lot, product));

function lowerReserve(
  scenario: Scenario,
  demand: DemandRows,
  verdicts: readonly LotVerdict[],
  liftedBy: LiftedBy,
): Remedy[] {
  return scenario.products.flatMap((product, p) => {
    const packs = verdicts.reduce(
      (sum, { lot, packsReserved }) => sum + (scenario.lots[lot]?.productId === product.id ? packsReserved : 0),
      0,
    );
    const lifted = liftedBy(product, scenario.asOf);
    const part = packs > 0 ? partOf(lifted, product, packs) : 0;
    return [{ kind: 'lower-reserve' as const, product: p, lot: -1, packs, ...reached(demand, lifted, part), cost: 0 }];
  });
}

/** Part of the shortfalls that so many packs lift, 0 to 1. */
function partOf(lifted: Lifted, product: Product, packs: number): number {
  const shortKg = lifted.reduce((sum, shortfall) => sum + shortfall.shortKg, 0);
  const kg = packs * seedKgPerPack(product);
  return shortKg > 0 && kg > 0 ? Math.min(1, kg / shortKg) : 0;
}

/** Hectares lifted, and communities among which they lie. */
function reached(demand: DemandRows, lifted: Lifted, part: number): Pick<Remedy, 'hectares' | 'communities'> {
  return {
    hectares: part * lifted.reduce((sum, { hectares }) => sum + hectares, 0),
    communities: new Set(lifted.map(({ shareRow }) => demand.community[shareRow])).size,
  };
}

function priceOf(product: Product, packs: number): number | null {
  return product.pricePerPack === null ? null : packs * product.pricePerPack;
}
