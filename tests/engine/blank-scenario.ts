import {
  type Community,
  type CropPlan,
  civilFromDay,
  type Decisions,
  type Depot,
  dayFromCivil,
  dayNumber,
  type HandoverPoint,
  type Lot,
  minuteOfDay,
  type Policy,
  type Prices,
  type Product,
  type RoadLine,
  type Scenario,
  type Vehicle,
  type WeatherStation,
  type Zone,
} from '../../src/engine/index.ts';

/**
 * What a test has no need to say. Each function gives one sound entry of a scenario in which nothing is stated that need
 * not be, nothing is kept back, closed or forbidden, and nothing costs anything; the test states what matters to it.
 * Places, people and goods are invented.
 */

/** 2 November 2026, a Monday: the first planning day where a test states none. */
export const FIRST_DAY = dayFromCivil(2026, 11, 2);

export const noDecisions: Decisions = { format: 'nodulary-decisions/1', decisions: [], sha256: 'b'.repeat(64) };

/** Every day is worked, at any hour. */
export function blankPlanning(
  from = FIRST_DAY,
  days = 10,
  parts: Partial<Scenario['planning']> = {},
): Scenario['planning'] {
  const to = dayNumber(from + days - 1);
  return { from, to, workdays: [1, 2, 3, 4, 5, 6, 7], holidays: [], roadHours: null, ...parts };
}

export const blankPolicy = (parts: Partial<Policy> = {}): Policy => ({
  fairness: 'equal-share',
  equalOver: 'community',
  priorityWeights: [],
  hectareValue: 'land',
  orderBudget: null,
  reservePercent: 0,
  contingencyPercent: 0,
  cellsPerSeedFloor: 1e5,
  heatRule: 'label',
  hoursAboveStorage: null,
  carry: 'apart',
  marketDays: 'prefer',
  promisePrice: null,
  trainingMinutes: 0,
  restAfterHours: 4.5,
  restMinutes: 0,
  releaseMmInThreeDays: null,
  ...parts,
});

export const blankPrices = (parts: Partial<Prices> = {}): Prices => ({
  nitrogenPerKg: null,
  grainPerT: {},
  icePerKg: null,
  perDiem: null,
  ...parts,
});

/** Nobody and nothing, of soybean alone; known up to the evening before the first planning day, of that day's year. */
export function blankScenario(parts: Partial<Scenario> = {}): Scenario {
  const planning = parts.planning ?? blankPlanning();
  return {
    name: 'invented',
    seasonYear: civilFromDay(planning.from).year,
    asOf: dayNumber(planning.from - 1),
    forecastHorizonDays: 10,
    timeZone: 'Africa/Lusaka',
    utcOffsetMinutes: 120,
    contact: null,
    currency: 'ZMW',
    planning,
    seasons: [],
    policy: blankPolicy(),
    prices: blankPrices(),
    yieldsTPerHa: {},
    assumptions: {},
    crops: ['soybean'],
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
    readings: [],
    defaults: [],
    origins: [],
    sha256: 'a'.repeat(64),
    ...parts,
  };
}

const SOMEWHERE = { kind: 'point', position: [28.5, -13.5] } as const;

/** 10 ha of soybean, no seed of their own. */
export const blankCropPlan = (parts: Partial<CropPlan> = {}): CropPlan => ({
  crop: 'soybean',
  plannedHa: 10,
  growers: null,
  ownSeedKg: 0,
  seedRateKgPerHa: null,
  ...parts,
});

export const blankCommunity = (parts: Partial<Community> = {}): Community => ({
  id: 'C1',
  name: '',
  zoneId: null,
  farmers: null,
  farmersWomen: null,
  crops: [blankCropPlan()],
  marketDay: null,
  priority: 1,
  lastInoculatedYear: null,
  store: 'room',
  closedFrom: null,
  closedTo: null,
  elevationM: null,
  geometry: SOMEWHERE,
  ...parts,
});

export const blankZone = (parts: Partial<Zone> = {}): Zone => ({
  id: 'Z1',
  name: '',
  closedFrom: null,
  closedTo: null,
  geometry: SOMEWHERE,
  ...parts,
});

export const blankHandoverPoint = (parts: Partial<HandoverPoint> = {}): HandoverPoint => ({
  id: 'H1',
  name: '',
  position: SOMEWHERE.position,
  communityIds: [],
  opens: null,
  closes: null,
  store: null,
  contact: null,
  ...parts,
});

/** Open from 6 to 18 h, without cool store or ice. */
export const blankDepot = (parts: Partial<Depot> = {}): Depot => ({
  id: 'D1',
  name: '',
  position: SOMEWHERE.position,
  kind: 'depot',
  opens: minuteOfDay(360),
  closes: minuteOfDay(1080),
  coolStoreLitres: 0,
  coolStoreC: null,
  iceKgPerDay: 0,
  outageHours: 0,
  loadingMinutesPerT: 30,
  elevationM: null,
  ...parts,
});

/** A pickup for a tonne, without box, on all but footpaths. */
export const blankVehicle = (parts: Partial<Vehicle> = {}): Vehicle => ({
  id: 'V1',
  kind: 'pickup',
  depotId: 'D1',
  payloadKg: 1000,
  coolLitres: 0,
  coolUaWPerK: null,
  iceKg: 0,
  coolantC: 0,
  carriage: 'covered_bed',
  parksInShade: false,
  costPerKm: 0,
  costPerDay: 0,
  crew: 1,
  perDiem: 0,
  shiftStart: minuteOfDay(360),
  maxHours: 9,
  roadsAllowed: ['trunk', 'primary', 'secondary', 'tertiary', 'unclassified', 'track'],
  availableFrom: null,
  availableTo: null,
  ...parts,
});

export const blankRoad = (parts: Partial<RoadLine> = {}): RoadLine => ({
  positions: [],
  roadClass: 'primary',
  surface: 'paved',
  oneway: 'no',
  closedFrom: null,
  closedTo: null,
  ...parts,
});

/** Goods for soybean in packs of 100 g whose label says nothing else. */
export const blankProduct = (parts: Partial<Product> = {}): Product => ({
  id: 'P1',
  kind: 'inoculant',
  crops: ['soybean'],
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
  phosphorusPercent: null,
  pricePerPack: null,
  leadDays: null,
  orderMultiple: 1,
  litresPerPack: null,
  ...parts,
});

/** Peat, 1e9 per g, 5 g to a kilogram of seed: a pack coats 20 kg. */
export const blankInoculant = (parts: Partial<Product> = {}): Product =>
  blankProduct({ carrier: 'peat', doseGPerKg: 5, countPerG: 1e9, ...parts });

/** Seed in packs of so many kilograms. */
export const blankSeed = (packKg: number, parts: Partial<Product> = {}): Product =>
  blankProduct({ kind: 'seed', packSize: packKg, packUnit: 'kg', packG: packKg * 1000, ...parts });

export const blankSticker = (parts: Partial<Product> = {}): Product =>
  blankProduct({ kind: 'sticker', packSize: 50, packG: 50, doseGPerKg: 2, ...parts });

/** Ten packs, cleared, here, good until the end of June 2027. */
export const blankLot = (parts: Partial<Lot> = {}): Lot => ({
  id: 'L1',
  productId: 'P1',
  depotId: 'D1',
  packs: 10,
  status: 'cleared',
  availableFrom: null,
  expires: dayFromCivil(2027, 6, 30),
  testedCountPerG: null,
  testedOn: null,
  germinationPercent: null,
  seedClass: null,
  ...parts,
});

/** A station that has recorded nothing. */
export const blankStation = (parts: Partial<WeatherStation> = {}): WeatherStation => ({
  id: 'W1',
  position: SOMEWHERE.position,
  elevationM: null,
  days: new Int32Array(0),
  tminC: new Float64Array(0),
  tmaxC: new Float64Array(0),
  rainMm: new Float64Array(0),
  ...parts,
});
