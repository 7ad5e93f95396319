import { cropFact } from '../../reference/crops.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { LotVerdict } from '../../vocabulary/stage-results/allocation.ts';
import type { Lot, Product, ProductKind } from '../../vocabulary/supply.ts';

/** Packs of one size in a group, and the lots that hold them, first expiring first. */
export interface PackSize {
  /** Seed that one pack is (seed) or coats (inoculant, sticker), kg; of fertiliser, hectares. */
  readonly kg: number;
  readonly packs: number;
  readonly lots: readonly GroupLot[];
}

export interface GroupLot {
  readonly lot: number;
  /** Packs still to give. */
  readonly packs: number;
}

/**
 * Stock that is alike for sharing out: one depot, the same crops; a lot that not everyone may have stands by itself. The linear program sees groups instead of lots, which keeps it small; whole packs and lots are chosen afterwards.
 */
export interface StockGroup {
  readonly depot: number;
  /** Indexes into scenario.crops. */
  readonly crops: readonly number[];
  /** The one lot, where it has to be told from the others; else -1. */
  readonly namedLot: number;
  readonly kg: number;
  /** Largest pack first. */
  readonly sizes: readonly PackSize[];
}

/**
 * Kilograms of seed that a pack is or coats, hectares that a bag of fertiliser serves; NaN where the label states no dose or rate.
 *
 * Seed: g / 1000. Inoculant and sticker: g per pack / g per kg of seed, by the label's own dose. Fertiliser: kg per bag / kg per ha.
 */
export function seedKgPerPack(product: Product): number {
  if (product.kind === 'seed') return product.packG / 1000;
  if (product.kind === 'fertiliser') return product.packG / 1000 / (product.rateKgPerHa ?? Number.NaN);
  return product.doseGPerKg !== null && product.doseGPerKg > 0 ? product.packG / product.doseGPerKg : Number.NaN;
}

/**
 * Kilograms of seed that a pack of each lot is or coats, or hectares it serves. Seed that germinates less than the rate reckons with is sown thicker, so a bag
 * serves less land: its kilograms count as those of seed at reference germination. It is never sown thinner than the rate.
 */
export function packKgOfLots({ lots, crops, assumptions }: Scenario, products: readonly Product[]): Float64Array {
  return Float64Array.from(lots, ({ germinationPercent }, l) => {
    const product = products[l] as Product;
    const kg = seedKgPerPack(product);
    const crop = crops.find((one) => product.crops.includes(one));
    if (product.kind !== 'seed' || germinationPercent === null || crop === undefined) return kg;
    const reference = cropFact(crop, 'referenceGermination', assumptions).value;
    return kg * Math.min(1, germinationPercent / 100 / reference);
  });
}

/**
 * Groups the offered packs of one kind of product, in an order of depots and crops that names play no part in.
 *
 * @param takenPacks packs of each lot already given (second round)
 * @param namedLots lots that not everyone may have
 * @param packKg kg of seed that a pack of each lot is or coats
 */
export function groupStock(
  scenario: Scenario,
  verdicts: readonly LotVerdict[],
  kind: ProductKind,
  takenPacks: Int32Array,
  namedLots: ReadonlySet<number>,
  packKg: Float64Array,
): readonly StockGroup[] {
  const products = new Map(scenario.products.map((product) => [product.id, product]));
  const depots = new Map(scenario.depots.map(({ id }, d) => [id, d]));
  const groups = new Map<string, { depot: number; crops: number[]; namedLot: number; lots: OfferedLot[] }>();
  for (const { lot: l, packsOffered } of verdicts) {
    const lot = scenario.lots[l] as Lot;
    const product = products.get(lot.productId);
    const depot = depots.get(lot.depotId);
    if (product?.kind !== kind || depot === undefined || packsOffered <= 0 || !((packKg[l] as number) > 0)) continue;
    const crops = scenario.crops.flatMap((crop, c) => (product.crops.includes(crop) ? [c] : []));
    const namedLot = namedLots.has(l) ? l : -1;
    const key = `${depot} ${crops.join(',')} ${namedLot}`;
    const group = groups.get(key) ?? { depot, crops, namedLot, lots: [] };
    // A lot that promises have used up stays in its group: its price is part of the proof of the fair share.
    const packs = packsOffered - (takenPacks[l] as number);
    group.lots.push({ lot: l, packs, kg: packKg[l] as number, expires: lot.expires, from: lot.availableFrom ?? 0 });
    groups.set(key, group);
  }
  return [...groups.values()]
    .sort((a, b) => a.depot - b.depot || compareLists(a.crops, b.crops) || a.namedLot - b.namedLot)
    .map(({ lots, ...group }) => ({
      ...group,
      kg: lots.reduce((sum, { packs, kg }) => sum + packs * kg, 0),
      sizes: packSizes(lots),
    }));
}

interface OfferedLot extends GroupLot {
  readonly kg: number;
  readonly expires: number;
  readonly from: number;
}

function packSizes(lots: readonly OfferedLot[]): PackSize[] {
  const firstExpiringFirst = [...lots].sort((a, b) => a.expires - b.expires || a.from - b.from || a.lot - b.lot);
  const sizes = [...new Set(lots.map(({ kg }) => kg))].sort((a, b) => b - a);
  return sizes.map((kg) => {
    const own = firstExpiringFirst.filter((lot) => lot.kg === kg);
    return { kg, packs: own.reduce((sum, { packs }) => sum + packs, 0), lots: own };
  });
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at < 0 ? a.length - b.length : (a[at] as number) - (b[at] ?? -1);
}
