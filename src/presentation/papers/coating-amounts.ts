import { INOCULATION_PRACTICE, type Product } from '../../engine/index.ts';

/** What coats one batch of seed. */
export interface CoatingAmounts {
  readonly seedKg: number;
  /** Inoculant, g, by the dose of its label. */
  readonly powderG: number;
  /** Level caps of it, in halves and never more than the label's dose; null where not even half a cap is due. */
  readonly caps: number | null;
  /** Clean water, mL: to moisten the seed, or to dissolve the sticker in. */
  readonly waterMl: number;
  /** Caps of that water, whole. */
  readonly waterCaps: number;
  /** Sticker sachets, fractions allowed; 0 where none is used. */
  readonly stickerPacks: number;
}

/** What the label of the inoculant says, or common practice where it does not. Of a liquid, g stands for mL. */
export interface CoatingRates {
  readonly doseGPerKg: number;
  readonly gramsPerCap: number;
  readonly waterMlPerKg: number;
  readonly stickerPacksPerKg: number;
}

/**
 * @param needs litres of water and sachets of sticker that the plan reckons for so many kilograms of seed of the crop
 * @returns null where the label states no dose: nobody may guess it
 */
export function coatingRates(
  product: Product,
  needs: { readonly seedKg: number; readonly waterL: number; readonly stickerPacks: number },
): CoatingRates | null {
  if (product.doseGPerKg === null || needs.seedKg <= 0) return null;
  const { gramsPerLevelCap, millilitresPerLevelCap } = INOCULATION_PRACTICE;
  return {
    doseGPerKg: product.doseGPerKg,
    gramsPerCap: product.gramsPerLevelCap ?? (isLiquid(product) ? millilitresPerLevelCap : gramsPerLevelCap).value,
    waterMlPerKg: (needs.waterL * 1000) / needs.seedKg,
    stickerPacksPerKg: needs.stickerPacks / needs.seedKg,
  };
}

export function coatingAmounts(rates: CoatingRates, seedKg: number): CoatingAmounts {
  const powderG = rates.doseGPerKg * seedKg;
  const halves = Math.floor((2 * powderG) / rates.gramsPerCap + 1e-9);
  const waterMl = rates.waterMlPerKg * seedKg;
  return {
    seedKg,
    powderG,
    caps: halves === 0 ? null : halves / 2,
    waterMl,
    waterCaps: Math.round(waterMl / INOCULATION_PRACTICE.millilitresPerLevelCap.value),
    stickerPacks: rates.stickerPacksPerKg * seedKg,
  };
}

/** Measured in millilitres, not in grams, and never heaped: poured, not shaken on. */
export const isLiquid = ({ packUnit }: Product): boolean => packUnit === 'mL' || packUnit === 'L';

/** Whole level caps that one pack fills. */
export const capsPerPack = (product: Product, { gramsPerCap }: CoatingRates): number =>
  Math.floor(product.packG / gramsPerCap + 1e-9);
