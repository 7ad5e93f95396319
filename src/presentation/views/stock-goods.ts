import type { Commodity, Crop, LotReason, Plan, Product, Scenario } from '../../engine/index.ts';
import { localNumber, NO_BREAK, noBreaks, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** `Soybean inoculant`: products have ids and no names, so goods are called by what they are for. */
export const goodsName = (crop: Crop, commodity: Commodity, words: Words): string =>
  capital(words.stock.goods(words.crops[crop], words.stock.commodity[commodity]));

/** `Soybean, groundnut fertiliser`: goods beside seed and inoculant. */
export const otherGoodsName = ({ crops, kind }: Product, words: Words): string =>
  capital(words.stock.goods(crops.map((crop) => words.crops[crop]).join(', '), words.stock.kinds[kind]));

export const cropName = (crop: Crop, words: Words): string => capital(words.crops[crop]);

/** Kilograms of seed that one pack is, or coats; NaN where the label gives no dose. */
export function seedKgPerPack(product: Product): number {
  if (product.kind === 'seed') return product.packG / 1000;
  return product.doseGPerKg === null || product.doseGPerKg <= 0 ? Number.NaN : product.packG / product.doseGPerKg;
}

/** Goods that come in bags, of more sizes than one. */
export const isBagged = ({ kind }: Pick<Product, 'kind'>): boolean => kind === 'seed' || kind === 'fertiliser';

/** `971 packs`, `231 bags`. */
export function countOf(product: Product, count: number, words: Words): string {
  const said = isBagged(product) ? words.stock.bags : words.stock.packs;
  return noBreaks(said(localNumber(count, words), count === 1));
}

/** `971 packs`, `231 bags of 5 kg`: bags are not all of one size. */
export function amountOf(product: Product, count: number, words: Words): string {
  const counted = countOf(product, count, words);
  return isBagged(product) ? words.stock.ofSize(counted, packSize(product, words)) : counted;
}

/** `231 × 5 kg`: where there is no room for more. */
export const bagsText = (product: Product, count: number, words: Words): string =>
  noBreaks(words.stock.bagsCount(localNumber(count, words), packSize(product, words)));

export function packSize({ packG }: Product, words: Words): string {
  const kilograms = packG / 1000;
  return withUnit(localNumber(kilograms, words, Number.isInteger(kilograms) ? 0 : 1), 'kg');
}

export function serves(product: Product | undefined, crop: Crop, commodity: Commodity): product is Product {
  return product !== undefined && product.kind === commodity && product.crops.includes(crop);
}

/** Lots of goods for a crop, as indexes into the scenario's lots. */
export function lotsFor(scenario: Scenario, crop: Crop, commodity: Commodity): number[] {
  const products = new Map(scenario.products.map((product) => [product.id, product]));
  return scenario.lots.flatMap(({ productId }, lot) => (serves(products.get(productId), crop, commodity) ? [lot] : []));
}

export function productOfLot({ lots, products }: Scenario, lot: number): Product | undefined {
  return products.find(({ id }) => id === lots[lot]?.productId);
}

/** Why a lot is kept back, with the figure that decides where there is one; null where it may be given. */
export function keptReason(plan: Plan, scenario: Scenario, lot: number, words: Words): string | null {
  const reasons = plan.allocation.lots.reasons[lot] ?? [];
  if (reasons.length === 0) return null;
  return reasons.map((reason) => reasonWithFact(reason, plan, scenario, lot, words)).join('; ');
}

function reasonWithFact(reason: LotReason, plan: Plan, scenario: Scenario, lot: number, words: Words): string {
  const said = words.reasons.LOT_REASON_WORDING[reason];
  const fact = factOf(reason, plan, scenario, lot, words);
  return fact === null ? said : `${said} (${fact})`;
}

function factOf(reason: LotReason, plan: Plan, scenario: Scenario, lot: number, words: Words): string | null {
  const of = scenario.lots[lot];
  const product = productOfLot(scenario, lot);
  if (!of || !product) return null;
  if (reason === 'germination-below-minimum' && of.germinationPercent !== null) {
    const percent = (value: number) => noBreaks(words.stock.percent(localNumber(value, words)));
    return words.stock.germinates(percent(of.germinationPercent), percent(product.minGerminationPercent));
  }
  const count = plan.allocation.lots.countPerG[lot] ?? null;
  if (reason !== 'count-below-minimum' || count === null) return null;
  return words.stock.counted(powerText(count, words), powerText(product.minCountPerG, words));
}

const SUPERSCRIPT = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** `1.9 × 10⁹`: counts of living cells span too many powers of ten to be written out. */
export function powerText(value: number, words: Words): string {
  if (!(value > 0)) return localNumber(0, words);
  const [mantissa = '0', power = '0'] = value.toExponential(1).split('e+');
  const raised = [...power].map((digit) => SUPERSCRIPT[Number(digit)]).join('');
  return [localNumber(Number(mantissa), words, 1), '×', `10${raised}`].join(NO_BREAK);
}
