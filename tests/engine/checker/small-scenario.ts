import { dayFromCivil } from '../../../src/engine/vocabulary/calendar.ts';
import type { MultiPolygon, RoadClass } from '../../../src/engine/vocabulary/places.ts';
import type { Community, Scenario, WeatherStation } from '../../../src/engine/vocabulary/scenario.ts';
import { type DayNumber, dayNumber, minuteOfDay } from '../../../src/engine/vocabulary/units.ts';
import {
  blankCommunity,
  blankCropPlan,
  blankDepot,
  blankHandoverPoint,
  blankInoculant,
  blankLot,
  blankPlanning,
  blankPolicy,
  blankPrices,
  blankRoad,
  blankScenario,
  blankSeed,
  blankStation,
  blankSticker,
  blankVehicle,
  blankZone,
} from '../blank-scenario.ts';

export { noDecisions } from '../blank-scenario.ts';

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

const community = (id: string, geometry: Community['geometry'], plannedHa: number, ownSeedKg: number): Community =>
  blankCommunity({
    id,
    name: `Place ${id}`,
    farmers: 50,
    crops: [blankCropPlan({ plannedHa, growers: 20, ownSeedKg })],
    marketDay: 3,
    closedFrom: id === 'C2' ? day(2026, 11, 2) : null,
    closedTo: id === 'C2' ? day(2026, 11, 2) : null,
    geometry,
  });

const POWDER = blankInoculant({
  id: 'INO-SOY',
  maxStorageC: 20,
  openedPackDays: 14,
  pricePerPack: 4,
  litresPerPack: 0.2,
});
const SEED = blankSeed(25, {
  id: 'SEED-SOY',
  thousandSeedG: 150,
  seedRateKgPerHa: 60,
  pricePerPack: 30,
});

const LOT = blankLot({ expires: day(2027, 3, 1) });

const MADE_ROADS: readonly RoadClass[] = ['trunk', 'primary', 'secondary', 'tertiary', 'unclassified'];

const TRUCK = blankVehicle({
  id: 'TRUCK',
  kind: 'truck',
  costPerKm: 2,
  costPerDay: 100,
  crew: 2,
  perDiem: 5,
  roadsAllowed: MADE_ROADS,
  availableTo: day(2026, 11, 6),
});

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
  return blankStation({
    id: 'ST',
    position: [30.1, -14],
    days: Int32Array.from(days),
    tminC: new Float64Array(days.length).fill(22),
    tmaxC: new Float64Array(days.length).fill(40),
    rainMm: Float64Array.from(rain),
  });
}

export const smallScenario: Scenario = blankScenario({
  name: 'small',
  planning: blankPlanning(day(2026, 11, 2), 7, {
    workdays: [1, 2, 3, 4, 5, 6],
    holidays: [day(2026, 11, 4)],
    roadHours: { opens: minuteOfDay(360), closes: minuteOfDay(1080) },
  }),
  seasons: [{ name: 'main', from: { month: 10, day: 15 }, to: { month: 12, day: 31 } }],
  policy: blankPolicy({ reservePercent: 5, trainingMinutes: 30 }),
  prices: blankPrices({ nitrogenPerKg: 1.5, icePerKg: 0.5 }),
  communities: [
    community('C1', { kind: 'area', polygons: box(30.05, -14.02, 30.1, -13.98) }, 10, 100),
    community('C2', { kind: 'area', polygons: box(30.15, -14.02, 30.25, -13.98) }, 10, 0),
    community('C3', { kind: 'point', position: [30.35, -13.92] }, 2, 0),
  ],
  zones: [
    blankZone({ id: 'Z1', name: 'West', geometry: { kind: 'area', polygons: box(30, -14.1, 30.2, -13.9) } }),
    blankZone({ id: 'Z2', name: 'East', geometry: { kind: 'area', polygons: box(30.2, -14.1, 30.4, -13.9) } }),
  ],
  handoverPoints: [
    blankHandoverPoint({
      id: 'P1',
      name: 'Store at the road',
      position: [30.075, -14],
      communityIds: ['C1'],
      opens: minuteOfDay(480),
      closes: minuteOfDay(960),
    }),
  ],
  depots: [
    blankDepot({
      id: 'D1',
      name: 'Depot west',
      position: [30, -14],
      opens: minuteOfDay(420),
      coolStoreLitres: 500,
      coolStoreC: 25,
      iceKgPerDay: 10,
    }),
    blankDepot({ id: 'D2', name: 'Depot east', position: [30.3, -14], opens: minuteOfDay(420) }),
  ],
  products: [
    POWDER,
    SEED,
    blankSticker({ id: 'STICKER', pricePerPack: 1 }),
    { ...SEED, id: 'SEED-TREATED', treatedSeed: true },
    { ...POWDER, id: 'INO-BEAN', crops: ['common_bean'] },
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
    blankRoad({
      positions: [
        [30, -14],
        [30.075, -14],
        [30.2, -14],
        [30.3, -14],
      ],
    }),
    // A loop to the first place, one-way.
    blankRoad({
      roadClass: 'tertiary',
      surface: 'gravel',
      oneway: 'forward',
      positions: [
        [30, -14],
        [30.04, -13.99],
        [30.075, -14],
      ],
    }),
    // Straight as the main road, closed this month.
    blankRoad({
      roadClass: 'unclassified',
      surface: 'earth',
      closedFrom: day(2026, 11, 1),
      closedTo: day(2026, 11, 30),
      positions: [
        [30, -14],
        [30.075, -14],
      ],
    }),
    // A footpath between the places.
    blankRoad({
      roadClass: 'path',
      surface: 'earth',
      positions: [
        [30.075, -14],
        [30.2, -14],
      ],
    }),
  ],
  weather: [weather()],
});

export const planningDate = (offset: number): DayNumber => dayNumber(smallScenario.planning.from + offset);
