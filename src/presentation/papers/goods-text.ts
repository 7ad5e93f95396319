import type { Product } from '../../engine/index.ts';
import { withUnit } from '../local-number.ts';
import type { CarriedGoods } from './carried-goods.ts';
import { number, type PaperCase, shortNumber } from './paper-case.ts';

/** `12 packs soybean`, `4 bags of 25 kg, soybean`, `8 bags of 50 kg, fertiliser for soybean`, `2 × 50 g, sticker`. */
export function goodsText(c: PaperCase, { product, crop, packs }: CarriedGoods): string {
  const { road } = c.said;
  const count = number(c, packs);
  if (product.kind === 'inoculant') return road.goodsPacks(count, packs === 1, c.words.crops[crop]);
  if (product.kind === 'seed') {
    return road.goodsBags(count, shortNumber(c, product.packG / 1000), packs === 1, c.words.crops[crop]);
  }
  if (product.kind === 'fertiliser')
    return road.goodsFertiliser(count, sizeText(c, product), packs === 1, c.words.crops[crop]);
  return road.goodsOther(count, sizeText(c, product), road.kinds[product.kind]);
}

/** `100 g`, `1 L`: as the label says it. */
export const sizeText = (c: PaperCase, { packSize, packUnit }: Product): string =>
  withUnit(shortNumber(c, packSize, 2), packUnit);

/** What the lot is, without how many. */
export function productText(c: PaperCase, product: Product): string {
  const { community, road } = c.said;
  const crops = product.crops.map((crop) => c.words.crops[crop]).join(', ');
  if (product.kind === 'inoculant') return community.packs(crops, sizeText(c, product));
  if (product.kind === 'seed') return community.bags(crops, withUnit(shortNumber(c, product.packG / 1000), 'kg'));
  if (product.kind === 'fertiliser') return community.fertiliser(crops, sizeText(c, product));
  return community.other(road.kinds[product.kind], sizeText(c, product));
}
