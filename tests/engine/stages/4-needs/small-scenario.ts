import type { Crop } from '../../../../src/engine/vocabulary/crops.ts';
import type { Community, CropPlan, Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import type { Places } from '../../../../src/engine/vocabulary/stage-results/places.ts';
import type { Lot, Product } from '../../../../src/engine/vocabulary/supply.ts';
import { blankPlaces, zoneShares } from '../../blank-places.ts';
import {
  blankCommunity,
  blankCropPlan,
  blankInoculant,
  blankLot,
  blankPolicy,
  blankProduct,
  blankScenario,
  blankSeed,
  blankSticker,
} from '../../blank-scenario.ts';

/** Peat in packs of 100 g, 5 g to a kilogram of seed, 1e9 per g, unless said otherwise. */
export const inoculant = (id: string, crops: readonly Crop[], more: Partial<Product>): Product =>
  blankInoculant({ id, crops, ...more });

/** Seed in packs of 10 kg. */
export const seed = (id: string, crop: Crop, more: Partial<Product>): Product =>
  blankSeed(10, { id, crops: [crop], ...more });

/** Sticker in sachets of 50 g, 2 g to a kilogram of seed. */
export const sticker = (id: string, crops: readonly Crop[]): Product => blankSticker({ id, crops });

export const fertiliser = (id: string, crops: readonly Crop[], rateKgPerHa: number): Product =>
  blankProduct({ id, kind: 'fertiliser', crops, packSize: 50, packUnit: 'kg', packG: 50_000, rateKgPerHa });

export const lot = (productId: string, packs: number, more: Partial<Lot> = {}): Lot =>
  blankLot({ id: `L-${productId}-${packs}`, productId, packs, ...more });

export const plan = (crop: Crop, plannedHa: number, more: Partial<CropPlan> = {}): CropPlan =>
  blankCropPlan({ crop, plannedHa, ...more });

export const community = (id: string, crops: readonly CropPlan[]): Community => blankCommunity({ id, crops });

/** Only what this stage reads differs from scenario to scenario. */
export const smallScenario = (parts: Partial<Scenario>, contingencyPercent = 0): Scenario =>
  blankScenario({
    policy: blankPolicy({ contingencyPercent }),
    crops: ['soybean', 'cowpea', 'common_bean'],
    ...parts,
  });

/** Zone shares as [community, zone, share]; this stage reads nothing else of the places. */
export const sharesOnly = (rows: readonly (readonly [number, number, number])[]): Places =>
  blankPlaces(blankScenario(), { shares: zoneShares(rows) });
