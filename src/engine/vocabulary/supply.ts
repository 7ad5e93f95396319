import type { Crop } from './crops.ts';
import type { DayNumber } from './units.ts';

export type ProductKind = 'inoculant' | 'seed' | 'sticker' | 'fertiliser';
export type PackUnit = 'g' | 'kg' | 'mL' | 'L';
export type LotStatus = 'cleared' | 'on_hold' | 'awaiting';

/** A product as its label states it. Null: the label (the file) does not say. */
export interface Product {
  readonly id: string;
  readonly kind: ProductKind;
  readonly crops: readonly Crop[];
  readonly carrier: string | null;
  readonly carrierSterile: boolean | null;
  readonly packSize: number;
  readonly packUnit: PackUnit;
  /** Pack contents in grams; a millilitre counts as 1 g (noted where it was so taken). */
  readonly packG: number;
  /** Inoculant or sticker, g per kg of seed (mL taken as g). Null for seed and fertiliser. */
  readonly doseGPerKg: number | null;
  readonly countPerG: number | null;
  readonly minCountPerG: number;
  readonly maxStorageC: number | null;
  readonly openedPackDays: number | null;
  readonly waterMlPerKg: number;
  readonly gramsPerLevelCap: number | null;
  readonly thousandSeedG: number | null;
  readonly seedRateKgPerHa: number | null;
  readonly minGerminationPercent: number;
  readonly shelled: boolean | null;
  readonly treatedSeed: boolean;
  readonly inoculantAllowed: boolean | null;
  readonly sowWithinH: number | null;
  /** Fertiliser, kg per ha. */
  readonly rateKgPerHa: number | null;
  /** Phosphorus in a fertiliser as the element P, percent by weight: P2O5 * 0.4364 (IUPAC atomic masses). */
  readonly phosphorusPercent: number | null;
  /** In the scenario's currency. */
  readonly pricePerPack: number | null;
  readonly leadDays: number | null;
  readonly orderMultiple: number;
  readonly litresPerPack: number | null;
}

export interface Lot {
  readonly id: string;
  readonly productId: string;
  readonly depotId: string;
  readonly packs: number;
  readonly status: LotStatus;
  readonly availableFrom: DayNumber | null;
  readonly expires: DayNumber;
  readonly testedCountPerG: number | null;
  readonly testedOn: DayNumber | null;
  readonly germinationPercent: number | null;
  readonly seedClass: string | null;
}
