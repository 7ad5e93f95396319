import { type Crop, dayFromCivil, minuteOfDay } from '../../../../src/engine/vocabulary/index.ts';
import type { Community, CropPlan, Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import type { Places } from '../../../../src/engine/vocabulary/stage-results.ts';
import type { Lot, Product } from '../../../../src/engine/vocabulary/supply.ts';

const blank: Omit<Product, 'id' | 'kind' | 'crops'> = {
  carrier: null,
  carrierSterile: null,
  packSize: 100,
  packUnit: 'g',
  packG: 100,
  doseGPerKg: null,
  countPerG: null,
  minCountPerG: 5e7,
  maxStorageC: null,
  openedPackDays: null,
  waterMlPerKg: 15,
  gramsPerLevelCap: null,
  thousandSeedG: null,
  seedRateKgPerHa: null,
  minGerminationPercent: 70,
  shelled: null,
  treatedSeed: false,
  inoculantAllowed: null,
  sowWithinH: null,
  rateKgPerHa: null,
  pricePerPack: null,
  leadDays: null,
  orderMultiple: 1,
  litresPerPack: null,
};

/** Peat in packs of 100 g, 5 g to a kilogram of seed, 1e9 per g, unless said otherwise. */
export const inoculant = (id: string, crops: readonly Crop[], more: Partial<Product>): Product => ({
  ...blank,
  id,
  kind: 'inoculant',
  crops,
  carrier: 'peat',
  doseGPerKg: 5,
  countPerG: 1e9,
  ...more,
});

/** Seed in packs of 10 kg. */
export const seed = (id: string, crop: Crop, more: Partial<Product>): Product => ({
  ...blank,
  id,
  kind: 'seed',
  crops: [crop],
  packSize: 10,
  packUnit: 'kg',
  packG: 10_000,
  ...more,
});

/** Sticker in sachets of 50 g, 2 g to a kilogram of seed. */
export const sticker = (id: string, crops: readonly Crop[]): Product => ({
  ...blank,
  id,
  kind: 'sticker',
  crops,
  packSize: 50,
  packG: 50,
  doseGPerKg: 2,
});

export const fertiliser = (id: string, crops: readonly Crop[], rateKgPerHa: number): Product => ({
  ...blank,
  id,
  kind: 'fertiliser',
  crops,
  packSize: 50,
  packUnit: 'kg',
  packG: 50_000,
  rateKgPerHa,
});

export const lot = (productId: string, packs: number, more: Partial<Lot> = {}): Lot => ({
  id: `L-${productId}-${packs}`,
  productId,
  depotId: 'D1',
  packs,
  status: 'cleared',
  availableFrom: null,
  expires: dayFromCivil(2027, 6, 30),
  testedCountPerG: null,
  testedOn: null,
  germinationPercent: null,
  seedClass: null,
  ...more,
});

export const plan = (crop: Crop, plannedHa: number, more: Partial<CropPlan> = {}): CropPlan => ({
  crop,
  plannedHa,
  growers: null,
  ownSeedKg: 0,
  seedRateKgPerHa: null,
  ...more,
});

export const community = (id: string, crops: readonly CropPlan[]): Community => ({
  id,
  name: id,
  zoneId: null,
  farmers: null,
  farmersWomen: null,
  crops,
  marketDay: null,
  priority: 1,
  lastInoculatedYear: null,
  store: 'none',
  closedFrom: null,
  closedTo: null,
  elevationM: null,
  geometry: { kind: 'point', position: [28.5, -13.2] },
});

/** Only what this stage reads differs from scenario to scenario. */
export function smallScenario(parts: Partial<Scenario>, contingencyPercent = 0): Scenario {
  return {
    name: 'Invented plateau',
    seasonYear: 2026,
    asOf: dayFromCivil(2026, 11, 1),
    forecastHorizonDays: 10,
    timeZone: 'Africa/Lusaka',
    utcOffsetMinutes: 120,
    currency: 'ZMW',
    planning: {
      from: dayFromCivil(2026, 11, 2),
      to: dayFromCivil(2026, 12, 15),
      workdays: [1, 2, 3, 4, 5],
      holidays: [],
      roadHours: { opens: minuteOfDay(360), closes: minuteOfDay(1080) },
    },
    seasons: [],
    policy: {
      fairness: 'equal-share',
      equalOver: 'community',
      reservePercent: 0,
      contingencyPercent,
      cellsPerSeedFloor: 1e5,
      heatRule: 'label',
      hoursAboveStorage: null,
      carry: 'apart',
      marketDays: 'prefer',
      promisePrice: null,
      trainingMinutes: 0,
      releaseMmInThreeDays: null,
    },
    prices: { nitrogenPerKg: null, grainPerT: {}, icePerKg: null, perDiem: null },
    yieldsTPerHa: {},
    assumptions: {},
    crops: ['soybean', 'cowpea', 'common_bean'],
    communities: [],
    zones: [],
    handoverPoints: [],
    cropWindows: [],
    depots: [],
    products: [],
    lots: [],
    vehicles: [],
    roads: [],
    weather: [],
    handovers: [],
    defaults: [],
    origins: [],
    sha256: '',
    ...parts,
  };
}

/** Zone shares as [community, zone, share]; this stage reads nothing else of the places. */
export function sharesOnly(rows: readonly (readonly [number, number, number])[]): Places {
  return {
    shares: {
      community: Int32Array.from(rows, ([c]) => c),
      zone: Int32Array.from(rows, ([, z]) => z),
      share: Float64Array.from(rows, ([, , share]) => share),
    },
  } as Places;
}
