import type { Crop } from '../../vocabulary/crops.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Product } from '../../vocabulary/supply.ts';

/** Packs in lots that are cleared and not past expiry on the first planning day, per product. */
export function clearedPacks(scenario: Scenario): Float64Array {
  const indexById = new Map(scenario.products.map((product, p) => [product.id, p]));
  const packs = new Float64Array(scenario.products.length);
  for (const lot of scenario.lots) {
    const p = indexById.get(lot.productId);
    if (p === undefined || lot.status !== 'cleared' || lot.expires < scenario.planning.from) continue;
    packs[p] = (packs[p] as number) + lot.packs;
  }
  return packs;
}

/**
 * Index of the product with most in stock among those that `worthPerPack` gives a number (null: not a candidate), -1 where
 * there is none. Of equals the first: products stand in the order of their content.
 */
export function chooseMostStocked(
  products: readonly Product[],
  packs: Float64Array,
  worthPerPack: (product: Product) => number | null,
): number {
  let [best, most] = [-1, -1];
  for (const [p, product] of products.entries()) {
    const worth = worthPerPack(product);
    const stock = worth === null ? -1 : worth * (packs[p] as number);
    if (stock > most) [best, most] = [p, stock];
  }
  return best;
}

/** Kilograms of seed that one pack coats; null where the label names another legume or states no dose. */
export function seedCoatedPerPackKg(product: Product, kind: 'inoculant' | 'sticker', crop: Crop): number | null {
  if (product.kind !== kind || !product.crops.includes(crop) || !product.doseGPerKg) return null;
  return product.packG / product.doseGPerKg;
}

/** The inoculant in whose packs and dose a crop's need is counted: the one whose cleared stock coats most of its seed. */
export function chooseReferenceProduct(products: readonly Product[], packs: Float64Array, crop: Crop): number {
  return chooseMostStocked(products, packs, (product) => seedCoatedPerPackKg(product, 'inoculant', crop));
}
