import type { Allocation, Delivery, LegPath, Needs, Scenario, SeasonOutlook } from '../../../../src/engine/index.ts';
import { dayNumber } from '../../../../src/engine/index.ts';
import type { PlayParts } from '../../../../src/engine/stages/7-outcomes/prepare-play.ts';
import { blankPlaces, zoneShares } from '../../blank-places.ts';
import {
  blankCommunity,
  blankCropPlan,
  blankDepot,
  blankInoculant,
  blankLot,
  blankPlanning,
  blankPrices,
  blankRoad,
  blankScenario,
  blankSeed,
  blankStation,
  blankVehicle,
  blankZone,
  FIRST_DAY,
} from '../../blank-scenario.ts';
import { blankSeason, sownSeasons } from '../../blank-season.ts';

/**
 * One depot, one zone, one community (invented) that plans 10 ha of soybean at 60 kg of seed per ha: 600 kg. Its growers
 * hold 120 kg. On planning day 3 it is handed 18 packs of seed of 20 kg and 12 packs of inoculant of 100 g; 5 g coat a
 * kilogram of seed, so the inoculant coats 240 kg. Every day is 20 to 36 °C. Two seasons: in the first the sowing window
 * opens on planning day 5 and closes on day 26, the second had no onset.
 */
export interface SmallPlan extends PlayParts {
  readonly allocation: Allocation;
  readonly delivery: Delivery;
  readonly legs: readonly LegPath[];
}

const PLANNING_DAYS = 20;

const filled = (length: number, value: number) => new Float64Array(length).fill(value);

export interface SmallPlanChange {
  readonly ownSeedKg?: number;
  /** False: the load of inoculant is not served. */
  readonly inoculantServed?: boolean;
  /** Opening and closing of the window per season, NaN for a season without onset. */
  readonly windows?: readonly (readonly [first: number, last: number])[];
  /** Part of the community's land that lies outside the zone. */
  readonly outside?: number;
  readonly roadLog10?: number;
}

export function smallPlan(change: SmallPlanChange = {}): SmallPlan {
  const windows = change.windows ?? [
    [5, 26],
    [Number.NaN, Number.NaN],
  ];
  const ownSeedKg = change.ownSeedKg ?? 120;
  const scenario = smallScenario(ownSeedKg);
  return {
    scenario,
    places: blankPlaces(scenario, { shares: zoneShares(zoneParts(change).map(([zone, share]) => [0, zone, share])) }),
    season: smallSeason(scenario, windows),
    needs: smallNeeds(ownSeedKg, zoneParts(change)),
    allocation: smallAllocation(ownSeedKg),
    delivery: smallDelivery(change.inoculantServed ?? true, change.roadLog10 ?? 0.02),
    legs: [smallLeg(0, 1), smallLeg(1, 0)],
  };
}

/** Zone (-1 outside) and share of each part of the community. */
function zoneParts({ outside = 0 }: SmallPlanChange): readonly (readonly [zone: number, share: number])[] {
  return outside > 0
    ? [
        [-1, outside],
        [0, 1 - outside],
      ]
    : [[0, 1]];
}

function smallScenario(ownSeedKg: number): Scenario {
  const lot = { expires: dayNumber(FIRST_DAY + 200) };
  return blankScenario({
    name: 'Small plan',
    planning: blankPlanning(FIRST_DAY, PLANNING_DAYS),
    prices: blankPrices({ nitrogenPerKg: 2 }),
    yieldsTPerHa: { soybean: 1.36 },
    communities: [
      blankCommunity({
        name: 'Red Anthill',
        zoneId: 'Z1',
        farmers: 40,
        farmersWomen: 25,
        crops: [blankCropPlan({ growers: 20, ownSeedKg, seedRateKgPerHa: 60 })],
      }),
    ],
    zones: [blankZone({ name: 'East ridge' })],
    depots: [blankDepot({ name: 'Store at the mill', position: [28.4, -13.5], coolStoreLitres: 100, coolStoreC: 4 })],
    products: [
      blankSeed(20, { id: 'P-SEED', pricePerPack: 400 }),
      blankInoculant({ id: 'P-INO', carrierSterile: true, pricePerPack: 60 }),
    ],
    lots: [
      blankLot({ ...lot, id: 'L-SEED', productId: 'P-SEED', packs: 18 }),
      blankLot({ ...lot, id: 'L-INO', productId: 'P-INO', packs: 12 }),
    ],
    vehicles: [blankVehicle({ coolLitres: 20, coolUaWPerK: 0.5, costPerKm: 5, costPerDay: 100 })],
    roads: [
      blankRoad({
        positions: [
          [28.4, -13.5],
          [28.45, -13.49],
          [28.5, -13.5],
        ],
        roadClass: 'secondary',
        surface: 'gravel',
      }),
    ],
    weather: [blankStation()],
  });
}

function smallSeason(scenario: Scenario, windows: readonly (readonly [number, number])[]): SeasonOutlook {
  const onset = {
    status: 'expected',
    p20: FIRST_DAY + 5,
    p50: FIRST_DAY + 5.5,
    p80: Number.NaN,
    falseStartShare: 0.5,
    pastSeasons: windows.length,
  } as const;
  return blankSeason(
    scenario,
    { ...sownSeasons(scenario, windows), onsetDefinition: 'climate-service', onsets: [onset, onset] },
    [20, 36],
  );
}

function smallNeeds(ownSeedKg: number, parts: ReturnType<typeof zoneParts>): Needs {
  const cut = (whole: number) => Float64Array.from(parts, ([, share]) => whole * share);
  const same = (value: number) => Int32Array.from(parts, () => value);
  return {
    zone: Int32Array.from(parts, ([zone]) => zone),
    community: same(0),
    crop: same(0),
    plannedHa: cut(10),
    seedKg: cut(600),
    ownSeedKg: cut(ownSeedKg),
    programmeSeedKg: cut(600 - ownSeedKg),
    inoculantG: cut(3000),
    product: same(1),
    packsNeeded: cut(30),
    stickerPacks: cut(0),
    waterL: cut(9),
    fertiliserKg: cut(0),
    seedsPerKg: Float64Array.of(1e6 / 150),
  };
}

function smallAllocation(ownSeedKg: number): Allocation {
  const curve = {
    lossBreaks: Float64Array.of(0),
    value: filled(PLANNING_DAYS, 0.5),
    inTime: filled(PLANNING_DAYS, 0.5),
  };
  const consignment = {
    community: 0,
    place: 0,
    depot: 0,
    maxStorageC: null,
    earliest: 0,
    latest: PLANNING_DAYS - 1,
    reach: curve,
  };
  return {
    round: 1,
    lots: [0, 1].map((lot) => ({
      lot,
      reasons: [],
      packsReserved: 0,
      packsHeld: 0,
      packsOffered: lot === 0 ? 18 : 12,
      chanceSownBeforeExpiry: 1,
      countPerG: 1e9,
    })),
    grants: {
      community: Int32Array.of(0, 0),
      crop: Int32Array.of(0, 0),
      lot: Int32Array.of(0, 1),
      packs: Int32Array.of(18, 12),
      kg: Float64Array.of(360, 1.2),
      servesSeedKg: Float64Array.of(360, 240),
    },
    shares: {
      community: Int32Array.of(0),
      crop: Int32Array.of(0),
      plannedHa: Float64Array.of(10),
      seedNeedKg: Float64Array.of(600),
      ownSeedKg: Float64Array.of(ownSeedKg),
      seedThereKg: Float64Array.of(0),
      seedGivenKg: Float64Array.of(360),
      inoculantNeedSeedKg: Float64Array.of(480),
      inoculantGivenSeedKg: Float64Array.of(240),
      seedShare: Float64Array.of(0.8),
      inoculantShare: Float64Array.of(0.4),
    },
    proofs: [],
    shortfalls: [
      { shareRow: 0, commodity: 'seed', shortKg: 120, hectares: 2, reason: 'stock-short', product: 0 },
      { shareRow: 0, commodity: 'inoculant', shortKg: 240, hectares: 4, reason: 'stock-short', product: 1 },
    ],
    remedies: [],
    orders: [],
    packShares: [{ grant: 1, growers: 20, growersPerPack: 20 / 12, openedPackDays: 14, sowTogether: true }],
    consignments: [
      { ...consignment, group: 'dry', grants: [0], kg: 360, coolLitres: 0, inoculantKg: 0, hectares: 6, worth: 7200 },
      {
        ...consignment,
        group: 'inoculant',
        grants: [1],
        kg: 1.2,
        coolLitres: 2,
        inoculantKg: 1.2,
        hectares: 4,
        worth: 720,
      },
    ],
  };
}

function smallDelivery(inoculantServed: boolean, roadLog10: number): Delivery {
  const served = inoculantServed ? [0, 1] : [0];
  return {
    loads: [
      { consignment: 0, grants: [0], packs: [18], kg: 360, coolLitres: 0, inoculantKg: 0, hectares: 6 },
      { consignment: 1, grants: [1], packs: [12], kg: 1.2, coolLitres: 2, inoculantKg: 1.2, hectares: 4 },
    ],
    vehicleDays: [
      {
        vehicle: 0,
        day: 3,
        trips: [
          {
            exposure: null,
            leaveMinute: 400,
            latestLeaveMinute: 400,
            returnMinute: 500,
            iceKg: 0,
            loadKg: 361.2,
            coolLitres: 2,
            stops: [
              {
                site: 1,
                loads: served,
                arriveMinute: 430,
                startMinute: 430,
                departMinute: 465,
                restMinutes: 0,
                legMinutes: 30,
                legKm: 11.1,
                loadKg: 361.2,
                packC: 12,
                packMaxC: 12,
                hotBandMaxC: 12.5,
                log10Loss: roadLog10,
                hoursAboveStorage: 0,
              },
            ],
            kilometres: 22.2,
            curve: { minute: [], packC: [], hotBandC: [], boxAirC: [], shadeC: [] },
            returnLegMinutes: 30,
            returnLegKm: 11.1,
          },
        ],
      },
    ],
    unserved: inoculantServed ? [] : [{ load: 1, reason: 'no-cold-box', hectares: 4 }],
    iterationsDone: 100,
    stoppedBy: 'iterations',
    cost: 211,
    promisePrice: 0,
  };
}

function smallLeg(fromSite: number, toSite: number): LegPath {
  const pieces = fromSite < toSite ? [{ road: 0, from: 0, to: 2 }] : [{ road: 0, from: 2, to: 0 }];
  return { fromSite, toSite, vehicleClass: 0, closureSet: 0, roadState: 0, minutes: 30, kilometres: 11.1, pieces };
}
