import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Product } from '../../vocabulary/supply.ts';
import { seedKgPerPack } from './stock-groups.ts';

/** Bags that are wanted, and the land of each crop, ha, that they are wanted for. */
export interface WantedBags {
  readonly product: number;
  readonly packs: number;
  readonly haOfCrop: readonly number[];
}

/**
 * Bags of fertiliser to buy with what seed and inoculant leave of a budget: the product that serves a hectare for least money first, in
 * supplier's multiples, and for no more land than will have seed.
 *
 * @param sownPart per crop, part of the land that fertiliser is wanted for which will have seed, 0 to 1
 * @returns packs of each product, in the order given
 */
export function spendRest(
  { products, policy }: Scenario,
  wanted: readonly WantedBags[],
  money: number,
  sownPart: readonly number[],
): number[] {
  const useful = 1 - policy.reservePercent / 100;
  const offers = wanted.map((bags, i) => {
    const product = products[bags.product] as Product;
    const { pricePerPack, orderMultiple } = product;
    const hectares = orderMultiple * seedKgPerPack(product) * useful;
    const price = orderMultiple * (pricePerPack ?? Number.POSITIVE_INFINITY);
    const sownHa = bags.haOfCrop.reduce((sum, ha, crop) => sum + ha * (sownPart[crop] as number), 0);
    const most = Math.min(Math.floor(bags.packs / orderMultiple + 1e-9), Math.ceil(sownHa / hectares - 1e-9));
    return { i, price, orderMultiple, hectares, most };
  });
  const packs = wanted.map(() => 0);
  let left = money;
  for (const offer of offers.sort((a, b) => a.price / a.hectares - b.price / b.hectares || a.i - b.i)) {
    const affordable = offer.price > 0 ? Math.floor(left / offer.price + 1e-9) : offer.most;
    const multiples = Math.max(0, Math.min(offer.most, affordable));
    left -= multiples * offer.price;
    packs[offer.i] = multiples * offer.orderMultiple;
  }
  return packs;
}
