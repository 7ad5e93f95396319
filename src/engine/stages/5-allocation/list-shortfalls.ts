import type { ShortfallReason } from '../../vocabulary/reasons.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Commodity, LotVerdict, Shortfall } from '../../vocabulary/stage-results/allocation.ts';
import { type Ask, NOISE_KG } from './ask.ts';
import type { DemandRows } from './demand-rows.ts';
import { seedKgPerPack } from './stock-groups.ts';

/** What became of one commodity, as far as shortfalls need to know. */
export interface Outturn {
  readonly ask: Ask;
  /** What the plan should have met, kg of seed. */
  readonly needKg: Float64Array;
  readonly givenKg: Float64Array;
  /** There already from earlier hand-overs, kg of seed. */
  readonly handedKg: Float64Array;
  /** Rows that some offered stock may reach. */
  readonly reached: Uint8Array;
  /** Rows that some depot reaches, whatever it holds. */
  readonly mayBeReached: Uint8Array;
}

/**
 * Why each row falls short of its need: the first of these that holds.
 *
 * @param outOfSeason rows whose sowing window is over before the first planning day
 * @param unseededKg seed that will not be there to coat, per row (inoculant only)
 */
export function listShortfalls(
  scenario: Scenario,
  demand: DemandRows,
  verdicts: readonly LotVerdict[],
  packKg: Float64Array,
  outturn: Outturn,
  outOfSeason: Uint8Array,
  unseededKg: Float64Array | null,
): Shortfall[] {
  const commodity = outturn.ask.commodity as Commodity;
  const stock = bindingProducts(scenario, verdicts, packKg, commodity);
  const shortfalls: Shortfall[] = [];
  for (let row = 0; row < demand.count; row++) {
    const note = (shortKg: number, reason: ShortfallReason, product: number) => {
      if (shortKg <= NOISE_KG) return;
      const hectares = shortKg / (demand.kgPerHa[row] as number);
      shortfalls.push({ shareRow: row, commodity, shortKg, hectares, reason, product });
    };
    const binding = stock[demand.crop[row] as number] as BindingProduct;
    const lacksKg = (outturn.needKg[row] as number) - (outturn.givenKg[row] as number);
    const thereKg = Math.min(Math.max(0, lacksKg), outturn.handedKg[row] as number);
    const shortKg = lacksKg - thereKg;
    note(thereKg, 'handed-over-before', -1);
    const reason = outOfSeason[row] === 1 ? 'window-missed' : reasonFor(outturn, row, shortKg, binding);
    note(shortKg, reason, STOCK_REASONS.includes(reason) ? binding.product : -1);
    note(unseededKg?.[row] ?? 0, 'no-seed-to-inoculate', -1);
  }
  return shortfalls;
}

/** Reasons that more stock would lift. */
export const STOCK_REASONS: readonly ShortfallReason[] = [
  'stock-short',
  'no-compatible-stock',
  'stock-elsewhere',
  'pack-rounding',
];

function reasonFor(
  { ask, needKg, givenKg, handedKg, reached, mayBeReached }: Outturn,
  row: number,
  shortKg: number,
  binding: BindingProduct,
): ShortfallReason {
  const heldBelowNeed = (ask.highKg[row] as number) < (needKg[row] as number) - NOISE_KG;
  if (ask.leftBehind[row] === 1) return 'not-delivered';
  const thereKg = (givenKg[row] as number) + (handedKg[row] as number);
  if (heldBelowNeed && thereKg > (ask.highKg[row] as number) - binding.smallestKg) return 'decision';
  if (!binding.isOffered) return 'no-compatible-stock';
  if (reached[row] === 0) return mayBeReached[row] === 1 ? 'stock-elsewhere' : 'not-reachable';
  return shortKg < binding.smallestKg - NOISE_KG ? 'pack-rounding' : 'stock-short';
}

/** The product that more stock of would help a crop: of those offered the one that holds most seed, else of all that fit. */
interface BindingProduct {
  /** Index into scenario.products; -1 where no product fits the crop. */
  readonly product: number;
  readonly isOffered: boolean;
  /** Smallest pack on offer, kg of seed. */
  readonly smallestKg: number;
}

function bindingProducts(
  scenario: Scenario,
  verdicts: readonly LotVerdict[],
  packKg: Float64Array,
  kind: Commodity,
): BindingProduct[] {
  const smallestKg = new Float64Array(scenario.products.length).fill(Number.POSITIVE_INFINITY);
  const offeredKg = new Float64Array(scenario.products.length);
  const productIndex = new Map(scenario.products.map(({ id }, p) => [id, p]));
  for (const { lot, packsOffered } of verdicts) {
    const p = productIndex.get(scenario.lots[lot]?.productId ?? '');
    const product = scenario.products[p ?? -1];
    if (p === undefined || !product || packsOffered === 0) continue;
    const kg = packKg[lot] as number;
    offeredKg[p] = (offeredKg[p] as number) + packsOffered * (kg || 0);
    if (kg > 0) smallestKg[p] = Math.min(smallestKg[p] as number, kg);
  }
  return scenario.crops.map((crop) => {
    const fitting = scenario.products
      .map((product, p) => ({ product, p, kg: offeredKg[p] as number }))
      .filter(({ product }) => product.kind === kind && product.crops.includes(crop) && seedKgPerPack(product) > 0)
      .filter(({ product }) => !product.treatedSeed || product.inoculantAllowed === true);
    const offered = fitting.filter(({ kg }) => kg > 0);
    const largest = fitting.reduce((best, one) => (best && best.kg >= one.kg ? best : one), fitting[0]);
    return {
      product: largest?.p ?? -1,
      isOffered: offered.length > 0,
      smallestKg: offered.reduce((least, { p }) => Math.min(least, smallestKg[p] as number), Number.POSITIVE_INFINITY),
    };
  });
}
