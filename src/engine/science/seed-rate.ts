import { cropFact } from '../reference/crops.ts';
import type { Crop } from '../vocabulary/crops.ts';

const CM2_PER_M2 = 10_000;
/** A thousand seeds of w g weigh w mg each. */
const MG_PER_KG = 1e6;

/** Plants per m² of a spacing: `plantsPerHill` plants every `plantCm` along rows `rowCm` apart (geometry). */
export function plantsPerM2(rowCm: number, plantCm: number, plantsPerHill: number): number {
  return (CM2_PER_M2 / (rowCm * plantCm)) * plantsPerHill;
}

/**
 * Seed to sow, kg per ha, for a stand of plants. `establishmentPercent` is the one percentage of seed sown that becomes a
 * plant: germination times purity times emergence, or a survival figure that holds them already and must not be multiplied
 * by germination again. The units cancel to one: 10⁴ m² per ha / (1000 seeds * 1000 g per kg * 1/100).
 * Formula: seed laboratory note, plantscienceconsulting.com.au (read).
 */
export function seedRateKgPerHa(standPerM2: number, thousandSeedG: number, establishmentPercent: number): number {
  return (standPerM2 * thousandSeedG) / establishmentPercent;
}

/** Seeds in one kilogram, of a thousand-seed weight in g; and the other way round, by the same division. */
export function seedsPerKg(thousandSeedG: number): number {
  return MG_PER_KG / thousandSeedG;
}

/**
 * Rhizobia on each seed, fresh from coating: count per g * g per kg of seed / seeds per kg, times the part that sticks
 * (`adhesion`, 0 to 1). Arithmetic of units.
 */
export function cellsPerSeed(countPerG: number, doseGPerKg: number, thousandSeedG: number, adhesion: number): number {
  return ((countPerG * doseGPerKg) / seedsPerKg(thousandSeedG)) * adhesion;
}

/** Dose, g per kg of seed, that puts `cells` rhizobia on each seed: the same the other way round. */
export function doseForCells(cells: number, countPerG: number, thousandSeedG: number): number {
  return (cells * seedsPerKg(thousandSeedG)) / countPerG;
}

/**
 * Packs for seed, fractions kept: kg * g per kg / g per pack, raised by a contingency in percent. Unrounded; whole packs
 * are made once, in the allocation, and by `wholePacks`.
 */
export function packsForSeed(seedKg: number, doseGPerKg: number, packG: number, contingencyPercent: number): number {
  return ((seedKg * doseGPerKg) / packG) * (1 + contingencyPercent / 100);
}

/** Whole packs that hold a fraction of packs. A billionth of a pack is arithmetic, not need: 360 packs and a tenth are 396. */
export function wholePacks(packs: number): number {
  return Math.max(0, Math.ceil(packs - 1e-9 * Math.max(1, packs)));
}

/** True where a thousand-seed weight is so light that it was probably taken on a hundred seeds (below half the lightest known). */
export function looksLikeHundredSeedWeight(crop: Crop, thousandSeedG: number): boolean {
  return thousandSeedG < cropFact(crop, 'thousandSeedLowG', {}).value / 2;
}
