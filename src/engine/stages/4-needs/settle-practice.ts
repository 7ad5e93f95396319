import { cropFact } from '../../reference/crops.ts';
import { INOCULATION_PRACTICE } from '../../reference/inoculation-practice.ts';
import { seedRateKgPerHa } from '../../science/seed-rate.ts';
import type { Crop } from '../../vocabulary/crops.ts';
import { type Sourced, sourced } from '../../vocabulary/provenance.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Product } from '../../vocabulary/supply.ts';
import { chooseMostStocked, chooseReferenceProduct, seedCoatedPerPackKg } from './choose-reference-product.ts';

/** What one crop takes for each hectare and each kilogram of seed. Without an inoculant nothing is coated. */
export interface CropPractice {
  readonly crop: Crop;
  /** Where the community states no rate of its own. */
  readonly seedRate: Sourced<number>;
  readonly thousandSeedG: Sourced<number>;
  /** Index of the reference inoculant, -1 where no label names the crop and states a dose. */
  readonly product: number;
  readonly doseGPerKg: number;
  readonly packsPerKg: number;
  readonly stickerPacksPerKg: number;
  readonly waterLPerKg: number;
  readonly fertiliserKgPerHa: number;
}

/** Settles the practice of one crop from products, stock, the programme's assumptions and, last, reference values. */
export function settlePractice(scenario: Scenario, packs: Float64Array, crop: Crop): CropPractice {
  const { products } = scenario;
  const at = (index: number): Product | null => products[index] ?? null;
  const product = chooseReferenceProduct(products, packs, crop);
  const inoculant = at(product);
  const sticker = inoculant && at(chooseMostStocked(products, packs, (p) => seedCoatedPerPackKg(p, 'sticker', crop)));
  const fertiliser = at(
    chooseMostStocked(products, packs, (p) =>
      p.kind === 'fertiliser' && p.crops.includes(crop) && p.rateKgPerHa !== null ? p.packG : null,
    ),
  );
  const thousandSeedG = settleThousandSeed(scenario, packs, crop);
  const stickerPacksPerKg = sticker ? (sticker.doseGPerKg ?? 0) / sticker.packG : 0;
  return {
    crop,
    seedRate: settleSeedRate(scenario, packs, crop, thousandSeedG.value),
    thousandSeedG,
    product,
    doseGPerKg: inoculant?.doseGPerKg ?? 0,
    packsPerKg: inoculant ? (inoculant.doseGPerKg ?? 0) / inoculant.packG : 0,
    stickerPacksPerKg,
    waterLPerKg: inoculant ? waterLPerKg(inoculant, stickerPacksPerKg) : 0,
    fertiliserKgPerHa: fertiliser?.rateKgPerHa ?? 0,
  };
}

/** With a sticker the water that dissolves its sachets moistens the seed; without, so much plain water for each kilogram. */
function waterLPerKg(inoculant: Product, stickerPacksPerKg: number): number {
  const sachetL = INOCULATION_PRACTICE.waterMlPerStickerSachet.value / 1000;
  return stickerPacksPerKg > 0 ? stickerPacksPerKg * sachetL : inoculant.waterMlPerKg / 1000;
}

/** The seed product of a crop with most kilograms in stock among those that state a figure; null where none does. */
function statedBySeed(
  scenario: Scenario,
  packs: Float64Array,
  crop: Crop,
  figure: 'seedRateKgPerHa' | 'thousandSeedG',
): Sourced<number> | null {
  const chosen = chooseMostStocked(scenario.products, packs, (product) =>
    product.kind === 'seed' && product.crops.includes(crop) && product[figure] !== null ? product.packG : null,
  );
  const product = scenario.products[chosen];
  const value = product?.[figure] ?? null;
  return value === null ? null : sourced(value, 'given', `products.csv, ${product?.id}`);
}

function settleThousandSeed(scenario: Scenario, packs: Float64Array, crop: Crop): Sourced<number> {
  const own = cropFact(crop, 'thousandSeedG', scenario.assumptions);
  return own.status === 'given' ? own : (statedBySeed(scenario, packs, crop, 'thousandSeedG') ?? own);
}

/** The programme's assumed rate, else its assumed stand, else the rate on the seed most in stock, else the reference. */
function settleSeedRate(scenario: Scenario, packs: Float64Array, crop: Crop, thousandSeedG: number): Sourced<number> {
  const { assumptions } = scenario;
  const rate = cropFact(crop, 'seedRateKgPerHa', assumptions);
  if (rate.status === 'given') return rate;
  const stand = assumptions[`${crop}.plantsPerM2`];
  if (stand === undefined) return statedBySeed(scenario, packs, crop, 'seedRateKgPerHa') ?? rate;
  const germination = cropFact(crop, 'referenceGermination', assumptions).value;
  const establishmentPercent = 100 * germination * cropFact(crop, 'emergence', assumptions).value;
  return sourced(
    seedRateKgPerHa(stand, thousandSeedG, establishmentPercent),
    'derived',
    `stand of scenario.json:assumptions.${crop}.plantsPerM2`,
  );
}
