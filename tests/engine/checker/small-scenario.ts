import { dayFromCivil } from '../../../src/engine/vocabulary/calendar.ts';
import type { Decisions } from '../../../src/engine/vocabulary/decisions.ts';
import type { Vehicle } from '../../../src/engine/vocabulary/fleet.ts';
import type { MultiPolygon, RoadClass } from '../../../src/engine/vocabulary/places.ts';
import type { Community, RoadLine, Scenario, WeatherStation } from '../../../src/engine/vocabulary/scenario.ts';
import type { Lot, Product } from '../../../src/engine/vocabulary/supply.ts';
import { type DayNumber, dayNumber, minuteOfDay } from '../../../src/engine/vocabulary/units.ts';

/** An invented week of November on a southern plateau: hot, two communities on a road, one far from any. */

const day = (year: number, month: number, dayOfMonth: number): DayNumber => dayFromCivil(year, month, dayOfMonth);

function box(west: number, south: number, east: number, north: number): MultiPolygon {
  return [
    [
      [
        [west, south],
        [east, south],
        [east, north],
        [west, north],
        [west, south],
      ],
    ],
  ];
}

function community(id: string, geometry: Community['geometry'], plannedHa: number, ownSeedKg: number): Community {
  return {
    id,
    name: `Place ${id}`,
    zoneId: null,
    farmers: 50,
    farmersWomen: null,
    crops: [{ crop: 'soybean', plannedHa, growers: 20, ownSeedKg, seedRateKgPerHa: null }],
    marketDay: 3,
    priority: 1,
    lastInoculatedYear: null,
    store: 'room',
    closedFrom: id === 'C2' ? day(2026, 11, 2) : null,
    closedTo: id === 'C2' ? day(2026, 11, 2) : null,
    elevationM: null,
    geometry,
  };
}

const PRODUCT: Product = {
  id: '',
  kind: 'inoculant',
  crops: ['soybean'],
  carrier: 'peat',
  carrierSterile: null,
  packSize: 100,
  packUnit: 'g',
  packG: 100,
  doseGPerKg: 5,
  countPerG: 1e9,
  minCountPerG: 5e7,
  maxStorageC: 20,
  openedPackDays: 14,
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
  pricePerPack: 4,
  leadDays: null,
  orderMultiple: 1,
  litresPerPack: 0.2,
};

const SEED: Product = {
  ...PRODUCT,
  id: 'SEED-SOY',
  kind: 'seed',
  carrier: null,
  packSize: 25,
  packUnit: 'kg',
  packG: 25_000,
  doseGPerKg: null,
  countPerG: null,
  maxStorageC: null,
  thousandSeedG: 150,
  seedRateKgPerHa: 60,
  pricePerPack: 30,
  litresPerPack: null,
};

const LOT: Lot = {
  id: '',
  productId: '',
  depotId: 'D1',
  packs: 10,
  status: 'cleared',
  availableFrom: null,
  expires: day(2027, 3, 1),
  testedCountPerG: null,
  testedOn: null,
  germinationPercent: null,
  seedClass: null,
};

const MADE_ROADS: readonly RoadClass[] = ['trunk', 'primary', 'secondary', 'tertiary', 'unclassified'];

const TRUCK: Vehicle = {
  id: 'TRUCK',
  kind: 'truck',
  depotId: 'D1',
  payloadKg: 1000,
  coolLitres: 0,
  coolUaWPerK: null,
  iceKg: 0,
  carriage: 'covered_bed',
  costPerKm: 2,
  costPerDay: 100,
  crew: 2,
  perDiem: 5,
  shiftStart: minuteOfDay(360),
  maxHours: 9,
  roadsAllowed: MADE_ROADS,
  availableFrom: null,
  availableTo: day(2026, 11, 6),
};

const ROAD: RoadLine = {
  positions: [],
  roadClass: 'primary',
  surface: 'paved',
  oneway: 'no',
  closedFrom: null,
  closedTo: null,
};

/** Three past seasons with rains on 20, 25 and 30 November, one with rains before today, and this year up to today. */
function weather(): WeatherStation {
  const onsets: Readonly<Record<number, DayNumber>> = {
    2022: day(2022, 10, 20),
    2023: day(2023, 11, 20),
    2024: day(2024, 11, 25),
    2025: day(2025, 11, 30),
  };
  const days: number[] = [];
  const rain: number[] = [];
  for (const year of [2022, 2023, 2024, 2025]) {
    const onset = onsets[year] ?? 0;
    for (let d: number = day(year, 10, 1); d <= day(year + 1, 2, 15); d++) {
      const wet = d >= onset && (d - onset) % 3 === 0;
      const shower = d === day(year, 11, 6) && year >= 2024;
      days.push(d);
      rain.push(d === onset ? 25 : wet ? 5 : shower ? 12 : 0);
    }
  }
  for (let d: number = day(2026, 10, 1); d <= day(2026, 11, 1); d++) {
    days.push(d);
    rain.push(0);
  }
  return {
    id: 'ST',
    position: [30.1, -14],
    elevationM: null,
    days: Int32Array.from(days),
    tminC: new Float64Array(days.length).fill(22),
    tmaxC: new Float64Array(days.length).fill(40),
    rainMm: Float64Array.from(rain),
  };
}

export const smallScenario: Scenario = {
  name: 'small',
  seasonYear: 2026,
  asOf: day(2026, 11, 1),
  forecastHorizonDays: 10,
  timeZone: 'Africa/Lusaka',
  utcOffsetMinutes: 120,
  currency: 'ZMW',
  planning: {
    from: day(2026, 11, 2),
    to: day(2026, 11, 8),
    workdays: [1, 2, 3, 4, 5, 6],
    holidays: [day(2026, 11, 4)],
    roadHours: { opens: minuteOfDay(360), closes: minuteOfDay(1080) },
  },
  seasons: [{ name: 'main', from: { month: 10, day: 15 }, to: { month: 12, day: 31 } }],
  policy: {
    fairness: 'equal-share',
    equalOver: 'community',
    reservePercent: 5,
    contingencyPercent: 0,
    cellsPerSeedFloor: 1e5,
    heatRule: 'label',
    hoursAboveStorage: null,
    carry: 'apart',
    marketDays: 'prefer',
    promisePrice: null,
    trainingMinutes: 30,
    releaseMmInThreeDays: null,
  },
  prices: { nitrogenPerKg: 1.5, grainPerT: {}, icePerKg: 0.5, perDiem: null },
  yieldsTPerHa: {},
  assumptions: {},
  crops: ['soybean'],
  communities: [
    community('C1', { kind: 'area', polygons: box(30.05, -14.02, 30.1, -13.98) }, 10, 100),
    community('C2', { kind: 'area', polygons: box(30.15, -14.02, 30.25, -13.98) }, 10, 0),
    community('C3', { kind: 'point', position: [30.35, -13.92] }, 2, 0),
  ],
  zones: [
    {
      id: 'Z1',
      name: 'West',
      closedFrom: null,
      closedTo: null,
      geometry: { kind: 'area', polygons: box(30, -14.1, 30.2, -13.9) },
    },
    {
      id: 'Z2',
      name: 'East',
      closedFrom: null,
      closedTo: null,
      geometry: { kind: 'area', polygons: box(30.2, -14.1, 30.4, -13.9) },
    },
  ],
  handoverPoints: [
    {
      id: 'P1',
      name: 'Store at the road',
      position: [30.075, -14],
      communityIds: ['C1'],
      opens: minuteOfDay(480),
      closes: minuteOfDay(960),
      store: null,
      contact: null,
    },
  ],
  cropWindows: [],
  depots: [
    {
      id: 'D1',
      name: 'Depot west',
      position: [30, -14],
      kind: 'depot',
      opens: minuteOfDay(420),
      closes: minuteOfDay(1080),
      coolStoreLitres: 500,
      coolStoreC: 25,
      iceKgPerDay: 10,
      outageHours: 0,
      loadingMinutesPerT: 30,
      elevationM: null,
    },
    {
      id: 'D2',
      name: 'Depot east',
      position: [30.3, -14],
      kind: 'depot',
      opens: minuteOfDay(420),
      closes: minuteOfDay(1080),
      coolStoreLitres: 0,
      coolStoreC: null,
      iceKgPerDay: 0,
      outageHours: 0,
      loadingMinutesPerT: 30,
      elevationM: null,
    },
  ],
  products: [
    { ...PRODUCT, id: 'INO-SOY' },
    SEED,
    {
      ...PRODUCT,
      id: 'STICKER',
      kind: 'sticker',
      packG: 50,
      packSize: 50,
      doseGPerKg: 2,
      countPerG: null,
      maxStorageC: null,
      pricePerPack: 1,
      litresPerPack: null,
    },
    { ...SEED, id: 'SEED-TREATED', treatedSeed: true },
    { ...PRODUCT, id: 'INO-BEAN', crops: ['common_bean'] },
  ],
  lots: [
    { ...LOT, id: 'L-INO', productId: 'INO-SOY', packs: 60, testedCountPerG: 1.5e9 },
    { ...LOT, id: 'L-SEED', productId: 'SEED-SOY', packs: 40, availableFrom: day(2026, 11, 3), germinationPercent: 90 },
    { ...LOT, id: 'L-STICKER', productId: 'STICKER', packs: 50 },
    { ...LOT, id: 'L-EXPIRED', productId: 'INO-SOY', expires: day(2026, 10, 1) },
    { ...LOT, id: 'L-SOON', productId: 'INO-SOY', expires: day(2026, 11, 21) },
    { ...LOT, id: 'L-HELD', productId: 'INO-SOY', status: 'on_hold' },
    { ...LOT, id: 'L-AWAITED', productId: 'INO-SOY', status: 'awaiting', depotId: 'D2' },
    { ...LOT, id: 'L-THIN', productId: 'INO-SOY', testedCountPerG: 6e6 },
    { ...LOT, id: 'L-DULL', productId: 'SEED-SOY', germinationPercent: 50 },
    { ...LOT, id: 'L-TREATED', productId: 'SEED-TREATED', germinationPercent: 90 },
    { ...LOT, id: 'L-BEAN', productId: 'INO-BEAN' },
  ],
  vehicles: [
    TRUCK,
    {
      ...TRUCK,
      id: 'PICKUP',
      kind: 'pickup',
      payloadKg: 500,
      coolLitres: 6,
      coolUaWPerK: 0.6,
      iceKg: 6,
      carriage: 'open_bed',
    },
    { ...TRUCK, id: 'TRUCK-EAST', depotId: 'D2' },
  ],
  roads: [
    // The main road, from depot to depot past both hand-over places.
    {
      ...ROAD,
      positions: [
        [30, -14],
        [30.075, -14],
        [30.2, -14],
        [30.3, -14],
      ],
    },
    // A loop to the first place, one-way.
    {
      ...ROAD,
      roadClass: 'tertiary',
      surface: 'gravel',
      oneway: 'forward',
      positions: [
        [30, -14],
        [30.04, -13.99],
        [30.075, -14],
      ],
    },
    // Straight as the main road, closed this month.
    {
      ...ROAD,
      roadClass: 'unclassified',
      surface: 'earth',
      closedFrom: day(2026, 11, 1),
      closedTo: day(2026, 11, 30),
      positions: [
        [30, -14],
        [30.075, -14],
      ],
    },
    // A footpath between the places.
    {
      ...ROAD,
      roadClass: 'path',
      surface: 'earth',
      positions: [
        [30.075, -14],
        [30.2, -14],
      ],
    },
  ],
  weather: [weather()],
  handovers: [],
  defaults: [],
  origins: [],
  sha256: 'a'.repeat(64),
};

export const noDecisions: Decisions = { format: 'nodulary-decisions/1', decisions: [], sha256: 'b'.repeat(64) };

export const planningDate = (offset: number): DayNumber => dayNumber(smallScenario.planning.from + offset);
