import type {
  Allocation,
  Delivery,
  LegPath,
  Needs,
  Places,
  Scenario,
  SeasonOutlook,
} from '../../../../src/engine/index.ts';
import { type DayNumber, dayFromCivil, dayNumber, minuteOfDay } from '../../../../src/engine/index.ts';
import type { PlayParts } from '../../../../src/engine/stages/7-outcomes/play-season.ts';

/**
 * One depot, one zone, one community (invented) that plans 10 ha of soybean at 60 kg of seed per ha: 600 kg. Its growers
 * hold 120 kg. On planning day 3 it is handed 18 packs of seed of 20 kg and 12 packs of inoculant of 100 g; 5 g coat a
 * kilogram of seed, so the inoculant coats 240 kg. Every day is 20 to 36 °C. Two seasons: in the first the sowing window
 * opens on planning day 5 and closes on day 26, the second had no onset.
 */
export interface SmallPlan extends PlayParts {
  readonly legs: readonly LegPath[];
}

const FROM: DayNumber = dayFromCivil(2026, 11, 2);
const PLANNING_DAYS = 20;
const OUTLOOK_DAYS = 95;
const QUARTERS = 96;

const filled = (length: number, value: number) => new Float64Array(length).fill(value);
const days = (...offsets: number[]) => Float64Array.from(offsets, (offset) => FROM + offset);

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
  return {
    scenario: smallScenario(ownSeedKg),
    places: smallPlaces(zoneParts(change)),
    season: smallSeason(windows),
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
  return {
    name: 'Small plan',
    seasonYear: 2026,
    asOf: dayNumber(FROM - 1),
    forecastHorizonDays: 10,
    timeZone: 'Africa/Lusaka',
    utcOffsetMinutes: 120,
    currency: 'ZMW',
    planning: {
      from: FROM,
      to: dayNumber(FROM + PLANNING_DAYS - 1),
      workdays: [1, 2, 3, 4, 5, 6, 7],
      holidays: [],
      roadHours: null,
    },
    seasons: [{ name: 'main', from: { month: 11, day: 1 }, to: { month: 1, day: 31 } }],
    policy: {
      fairness: 'equal-share',
      equalOver: 'community',
      reservePercent: 0,
      contingencyPercent: 0,
      cellsPerSeedFloor: 1e5,
      heatRule: 'label',
      hoursAboveStorage: null,
      carry: 'apart',
      marketDays: 'prefer',
      promisePrice: null,
      trainingMinutes: 0,
      releaseMmInThreeDays: null,
    },
    prices: { nitrogenPerKg: 2, grainPerT: {}, icePerKg: null, perDiem: null },
    yieldsTPerHa: { soybean: 1.36 },
    assumptions: {},
    crops: ['soybean'],
    communities: [
      {
        id: 'C1',
        name: 'Red Anthill',
        zoneId: 'Z1',
        farmers: 40,
        farmersWomen: 25,
        crops: [{ crop: 'soybean', plannedHa: 10, growers: 20, ownSeedKg, seedRateKgPerHa: 60 }],
        marketDay: null,
        priority: 1,
        lastInoculatedYear: null,
        store: 'room',
        closedFrom: null,
        closedTo: null,
        elevationM: null,
        geometry: { kind: 'point', position: [28.5, -13.5] },
      },
    ],
    zones: [
      {
        id: 'Z1',
        name: 'East ridge',
        closedFrom: null,
        closedTo: null,
        geometry: { kind: 'point', position: [28.5, -13.5] },
      },
    ],
    handoverPoints: [],
    cropWindows: [],
    depots: [
      {
        id: 'D1',
        name: 'Store at the mill',
        position: [28.4, -13.5],
        kind: 'depot',
        opens: minuteOfDay(360),
        closes: minuteOfDay(1080),
        coolStoreLitres: 100,
        coolStoreC: 4,
        iceKgPerDay: 0,
        outageHours: 0,
        loadingMinutesPerT: 30,
        elevationM: null,
      },
    ],
    products: [
      { ...blankProduct('P-SEED', 'seed'), packSize: 20, packUnit: 'kg', packG: 20_000, pricePerPack: 400 },
      {
        ...blankProduct('P-INO', 'inoculant'),
        carrier: 'peat',
        carrierSterile: true,
        packSize: 100,
        packG: 100,
        doseGPerKg: 5,
        countPerG: 1e9,
        pricePerPack: 60,
      },
    ],
    lots: [smallLot('L-SEED', 'P-SEED', 18), smallLot('L-INO', 'P-INO', 12)],
    vehicles: [
      {
        id: 'V1',
        kind: 'pickup',
        depotId: 'D1',
        payloadKg: 1000,
        coolLitres: 20,
        coolUaWPerK: 0.5,
        iceKg: 0,
        carriage: 'covered_bed',
        costPerKm: 5,
        costPerDay: 100,
        crew: 1,
        perDiem: 0,
        shiftStart: minuteOfDay(360),
        maxHours: 9,
        roadsAllowed: ['primary', 'secondary', 'tertiary', 'unclassified'],
        availableFrom: null,
        availableTo: null,
      },
    ],
    roads: [
      {
        positions: [
          [28.4, -13.5],
          [28.45, -13.49],
          [28.5, -13.5],
        ],
        roadClass: 'secondary',
        surface: 'gravel',
        oneway: 'no',
        closedFrom: null,
        closedTo: null,
      },
    ],
    weather: [
      {
        id: 'W1',
        position: [28.5, -13.5],
        elevationM: null,
        days: new Int32Array(0),
        tminC: new Float64Array(0),
        tmaxC: new Float64Array(0),
        rainMm: new Float64Array(0),
      },
    ],
    handovers: [],
    defaults: [],
    origins: [],
    sha256: 'a'.repeat(64),
  };
}

function blankProduct(id: string, kind: 'seed' | 'inoculant'): Scenario['products'][number] {
  return {
    id,
    kind,
    crops: ['soybean'],
    carrier: null,
    carrierSterile: null,
    packSize: 1,
    packUnit: 'g',
    packG: 1,
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
}

function smallLot(id: string, productId: string, packs: number): Scenario['lots'][number] {
  return {
    id,
    productId,
    depotId: 'D1',
    packs,
    status: 'cleared',
    availableFrom: null,
    expires: dayNumber(FROM + 200),
    testedCountPerG: null,
    testedOn: null,
    germinationPercent: null,
    seedClass: null,
  };
}

function smallPlaces(parts: ReturnType<typeof zoneParts>): Places {
  const noGraph = { nodeCount: 0, arcOffsets: new Int32Array(1), arcTo: new Int32Array(0), arcKm: new Float64Array(0) };
  return {
    communityPolygons: [null],
    zonePolygons: [null],
    communityAreaHa: filled(1, Number.NaN),
    zoneAreaHa: filled(1, Number.NaN),
    shares: {
      community: Int32Array.from(parts, () => 0),
      zone: Int32Array.from(parts, ([zone]) => zone),
      share: Float64Array.from(parts, ([, share]) => share),
    },
    handoverPlaces: [
      {
        pointId: null,
        name: 'Red Anthill',
        position: [28.5, -13.5],
        status: 'assumed',
        communities: [0],
        opensMinute: null,
        closesMinute: null,
        store: 'room',
      },
    ],
    communityPlace: Int32Array.of(0),
    sites: [
      { kind: 'depot', index: 0, position: [28.4, -13.5] },
      { kind: 'handover', index: 0, position: [28.5, -13.5] },
    ],
    travel: {
      classes: [{ roadsAllowed: ['secondary'], motorcycle: false, vehicles: [0] }],
      vehicleClass: Int32Array.of(0),
      closureSets: [[]],
      dayClosureSet: new Int32Array(PLANNING_DAYS),
      tables: [],
      graph: { ...noGraph, arcPieces: [], siteNode: [], siteAccessKm: [] },
    },
    unreachable: [],
  };
}

function smallSeason(windows: readonly (readonly [number, number])[]): SeasonOutlook {
  const window = {
    crop: 'soybean',
    anchor: 'onset',
    firstOffsetDays: 0,
    lastOffsetDays: 21,
    status: 'assumed',
    firstDay: days(...windows.map(([first]) => first)),
    lastDay: days(...windows.map(([, last]) => last)),
    sownChance: filled(OUTLOOK_DAYS, 0),
  } as const;
  const onset = {
    status: 'expected',
    p20: FROM + 5,
    p50: FROM + 5.5,
    p80: Number.NaN,
    falseStartShare: 0.5,
    pastSeasons: windows.length,
  } as const;
  return {
    seasonName: 'main',
    onsetDefinition: 'climate-service',
    firstDay: FROM,
    planningDays: PLANNING_DAYS,
    outlookDays: OUTLOOK_DAYS,
    stations: Int32Array.of(0),
    zoneStation: Int32Array.of(0, 0),
    zoneStationKm: Float64Array.of(0, 0),
    siteStation: Int32Array.of(0, 0),
    members: windows.map(([first], i) => ({ year: 2000 + i, onset: days(first) })),
    onsets: [onset, onset],
    windows: [
      { zone: 0, ...window },
      { zone: 1, ...window },
    ],
    tminC: filled(OUTLOOK_DAYS, 20),
    tmaxC: filled(OUTLOOK_DAYS, 36),
    airBasis: new Int8Array(OUTLOOK_DAYS).fill(2),
    airC: new Float32Array(PLANNING_DAYS * QUARTERS).fill(28),
    sunLoad: new Float32Array(PLANNING_DAYS * QUARTERS),
    sunriseMinute: filled(PLANNING_DAYS, 340),
    sunsetMinute: filled(PLANNING_DAYS, 1100),
    roadState: new Int8Array(PLANNING_DAYS),
    roadStateChance: filled(PLANNING_DAYS * 3, 0),
    workday: new Uint8Array(PLANNING_DAYS).fill(1),
  };
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
      packsOffered: lot === 0 ? 18 : 12,
      chanceSownBeforeExpiry: 1,
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
            leaveMinute: 400,
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
  };
}

function smallLeg(fromSite: number, toSite: number): LegPath {
  const pieces = fromSite < toSite ? [{ road: 0, from: 0, to: 2 }] : [{ road: 0, from: 2, to: 0 }];
  return { fromSite, toSite, vehicleClass: 0, closureSet: 0, roadState: 0, minutes: 30, kilometres: 11.1, pieces };
}
