import type {
  Allocation,
  Carriage,
  Community,
  Consignment,
  Decision,
  Decisions,
  Delivery,
  Lot,
  Places,
  Policy,
  Product,
  ReachCurve,
  Scenario,
  SeasonOutlook,
  TravelTable,
  Vehicle,
} from '../../../../src/engine/index.ts';
import { dayFromCivil, dayNumber, minuteOfDay } from '../../../../src/engine/index.ts';
import { planDelivery } from '../../../../src/engine/stages/6-delivery/plan-delivery.ts';

/** Invented places in kilometres on a flat plain; roads are straight and driven at 30 km/h. The depot of a network is place -1. */
export interface PlaceSpec {
  readonly x: number;
  readonly y: number;
  readonly opens?: number;
  readonly closes?: number;
  readonly marketDay?: number;
  readonly closedFrom?: number;
  readonly closedTo?: number;
  readonly ownSeedKg?: number;
  /** No road at all. */
  readonly cutOff?: boolean;
}

export interface ConsignmentSpec {
  readonly place: number;
  readonly group: Consignment['group'];
  readonly depot?: number;
  /** Dry goods, in packs of `packKg`. */
  readonly seedPacks?: number;
  readonly packKg?: number;
  /** Sachets of 100 g and 0.2 L. */
  readonly sachets?: number;
  readonly earliest?: number;
  readonly latest?: number;
  readonly worth?: number | null;
  readonly hectares?: number;
  readonly maxStorageC?: number | null;
  /** Share of the value still had by day; 1 throughout unless given. */
  readonly reachByDay?: readonly number[];
}

export interface NetworkSpec {
  readonly days?: number;
  readonly depots?: readonly {
    readonly x: number;
    readonly y: number;
    readonly ice?: number;
    readonly storeC?: number | null;
  }[];
  readonly places: readonly PlaceSpec[];
  readonly vehicles: readonly Partial<Vehicle & { depot: number }>[];
  readonly consignments: readonly ConsignmentSpec[];
  readonly policy?: Partial<Policy>;
  readonly decisions?: readonly Decision[];
  /** Shade air over the day; `(minute) => 25` unless given. */
  readonly airC?: (minute: number) => number;
  readonly sun?: (minute: number) => number;
  readonly roadHours?: Scenario['planning']['roadHours'];
  readonly workday?: (day: number) => boolean;
  readonly roadState?: (day: number) => number;
  /** Legs that may not be driven in a road state: sites count depots first. */
  readonly shut?: (from: number, to: number, roadState: number) => boolean;
  readonly icePerKg?: number | null;
}

/** A Monday. */
export const FIRST_DAY = dayFromCivil(2025, 11, 3);
export const KM_PER_MINUTE = 0.5;
const LOSS_BREAKS = [0, 0.05, 0.2, 0.5, 1, 2, 4];

export interface Network {
  readonly scenario: Scenario;
  readonly decisions: Decisions;
  readonly places: Places;
  readonly season: SeasonOutlook;
  readonly allocation: Allocation;
}

export function buildNetwork(spec: NetworkSpec): Network {
  const days = spec.days ?? 3;
  const depots = spec.depots ?? [{ x: 0, y: 0 }];
  return {
    scenario: buildScenario(spec, days, depots.length),
    decisions: { format: 'nodulary-decisions/1', decisions: spec.decisions ?? [], sha256: '' },
    places: buildPlaces(spec, days),
    season: buildSeason(spec, days),
    allocation: buildAllocation(spec, days),
  };
}

export function planNetwork(
  network: Network,
  iterations = 300,
  earlier: { allocation: Allocation; delivery: Delivery } | null = null,
  seed = 1,
) {
  const { scenario, decisions, places, season, allocation } = network;
  const settings = { seed, iterations, stop: null, progress: null };
  return planDelivery(scenario, decisions, places, season, allocation, settings, earlier);
}

export const deliver = (spec: NetworkSpec, iterations = 300): Delivery =>
  planNetwork(buildNetwork(spec), iterations).result;

const VEHICLE: Omit<Vehicle, 'id' | 'depotId'> = {
  kind: 'pickup',
  payloadKg: 1000,
  coolLitres: 50,
  coolUaWPerK: 0.6,
  iceKg: 9.6,
  carriage: 'open_bed' as Carriage,
  costPerKm: 1,
  costPerDay: 20,
  crew: 0,
  perDiem: 0,
  shiftStart: minuteOfDay(360),
  maxHours: 9,
  roadsAllowed: ['trunk', 'primary', 'secondary', 'tertiary', 'unclassified', 'track'],
  availableFrom: null,
  availableTo: null,
};

const POLICY: Policy = {
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
  trainingMinutes: 30,
  releaseMmInThreeDays: null,
};

function buildScenario(spec: NetworkSpec, days: number, depotCount: number): Scenario {
  return {
    name: 'small network',
    seasonYear: 2025,
    asOf: dayNumber(FIRST_DAY - 1),
    forecastHorizonDays: 10,
    timeZone: 'Africa/Lusaka',
    utcOffsetMinutes: 120,
    currency: 'ZMW',
    planning: {
      from: FIRST_DAY,
      to: dayNumber(FIRST_DAY + days - 1),
      workdays: [1, 2, 3, 4, 5, 6, 7],
      holidays: [],
      roadHours: spec.roadHours ?? null,
    },
    seasons: [{ name: 'main', from: { month: 11, day: 1 }, to: { month: 1, day: 31 } }],
    policy: { ...POLICY, ...spec.policy },
    prices: { nitrogenPerKg: null, grainPerT: {}, icePerKg: spec.icePerKg ?? null, perDiem: null },
    yieldsTPerHa: {},
    assumptions: {},
    crops: ['soybean'],
    communities: spec.places.map(
      (place, i): Community => ({
        id: `C${i}`,
        name: `Community ${i}`,
        zoneId: null,
        farmers: null,
        farmersWomen: null,
        crops: [
          { crop: 'soybean', plannedHa: 1, growers: null, ownSeedKg: place.ownSeedKg ?? 0, seedRateKgPerHa: null },
        ],
        marketDay: place.marketDay ?? null,
        priority: 1,
        lastInoculatedYear: null,
        store: 'room',
        closedFrom: place.closedFrom === undefined ? null : dayNumber(FIRST_DAY + place.closedFrom),
        closedTo: place.closedTo === undefined ? null : dayNumber(FIRST_DAY + place.closedTo),
        elevationM: null,
        geometry: { kind: 'point', position: [place.x / 100, -place.y / 100] },
      }),
    ),
    zones: [],
    handoverPoints: [],
    cropWindows: [],
    depots: Array.from({ length: depotCount }, (_, i) => ({
      id: `D${i}`,
      name: `Depot ${i}`,
      position: [0, 0],
      kind: 'depot',
      opens: minuteOfDay(360),
      closes: minuteOfDay(1080),
      coolStoreLitres: 1000,
      coolStoreC: spec.depots?.[i]?.storeC === undefined ? 8 : spec.depots[i].storeC,
      iceKgPerDay: spec.depots?.[i]?.ice ?? 100,
      outageHours: 0,
      loadingMinutesPerT: 30,
      elevationM: null,
    })),
    products: [SACHET, SEED, ...extraSeedPacks(spec)],
    lots: buildLots(spec, depotCount),
    vehicles: spec.vehicles.map(({ depot = 0, ...vehicle }, i) => ({
      ...VEHICLE,
      id: `V${i}`,
      depotId: `D${depot}`,
      ...vehicle,
    })),
    roads: [],
    weather: [],
    handovers: [],
    defaults: [],
    origins: [],
    sha256: '',
  };
}

const PRODUCT: Omit<Product, 'id' | 'kind' | 'packSize' | 'packUnit' | 'packG'> = {
  crops: ['soybean'],
  carrier: 'peat',
  carrierSterile: true,
  doseGPerKg: null,
  countPerG: 1e9,
  minCountPerG: 5e7,
  maxStorageC: 30,
  openedPackDays: null,
  waterMlPerKg: 15,
  gramsPerLevelCap: null,
  thousandSeedG: null,
  seedRateKgPerHa: null,
  minGerminationPercent: 70,
  shelled: null,
  treatedSeed: false,
  inoculantAllowed: true,
  sowWithinH: null,
  rateKgPerHa: null,
  pricePerPack: 1,
  leadDays: null,
  orderMultiple: 1,
  litresPerPack: null,
};
const SACHET: Product = {
  ...PRODUCT,
  id: 'INO',
  kind: 'inoculant',
  packSize: 100,
  packUnit: 'g',
  packG: 100,
  doseGPerKg: 5,
  litresPerPack: 0.2,
};
const seedPack = (id: string, kg: number): Product => ({
  ...PRODUCT,
  id,
  kind: 'seed',
  packSize: kg,
  packUnit: 'kg',
  packG: kg * 1000,
});
const SEED = seedPack('SEED', 25);
const extraSeedPacks = (spec: NetworkSpec): Product[] =>
  [...new Set(spec.consignments.map((c) => c.packKg ?? 25))]
    .filter((kg) => kg !== 25)
    .map((kg) => seedPack(`SEED${kg}`, kg));

function buildLots(spec: NetworkSpec, depotCount: number): Lot[] {
  const products = ['INO', 'SEED', ...extraSeedPacks(spec).map((p) => p.id)];
  return Array.from({ length: depotCount }, (_, depot) =>
    products.map(
      (productId): Lot => ({
        id: `L-${productId}-${depot}`,
        productId,
        depotId: `D${depot}`,
        packs: 100_000,
        status: 'cleared',
        availableFrom: null,
        expires: dayNumber(FIRST_DAY + 300),
        testedCountPerG: null,
        testedOn: null,
        germinationPercent: null,
        seedClass: null,
      }),
    ),
  ).flat();
}

function buildAllocation(spec: NetworkSpec, days: number): Allocation {
  const perDepot = 2 + extraSeedPacks(spec).length;
  const products = ['INO', 'SEED', ...extraSeedPacks(spec).map((p) => p.id)];
  const rows: { community: number; lot: number; packs: number; kg: number; serves: number }[] = [];
  const consignments = spec.consignments.map((c): Consignment => {
    const depot = c.depot ?? 0;
    const packKg = c.packKg ?? 25;
    const grants: number[] = [];
    const grant = (product: string, packs: number, kg: number, serves: number) => {
      if (packs <= 0) return;
      grants.push(rows.length);
      rows.push({ community: c.place, lot: depot * perDepot + products.indexOf(product), packs, kg, serves });
    };
    const seedPacks = c.seedPacks ?? 0;
    const sachets = c.sachets ?? 0;
    grant(packKg === 25 ? 'SEED' : `SEED${packKg}`, seedPacks, seedPacks * packKg, seedPacks * packKg);
    grant('INO', sachets, sachets * 0.1, sachets * 20);
    return {
      community: c.place,
      place: c.place,
      depot,
      group: c.group,
      grants,
      kg: seedPacks * packKg + sachets * 0.1,
      coolLitres: sachets * 0.2,
      inoculantKg: sachets * 0.1,
      maxStorageC: c.maxStorageC === undefined ? 30 : c.maxStorageC,
      hectares: c.hectares ?? 10,
      worth: c.worth === undefined ? 500 : c.worth,
      earliest: c.earliest ?? 0,
      latest: c.latest ?? days - 1,
      reach: reachOf(days, c),
    };
  });
  return {
    round: 1,
    lots: [],
    grants: {
      community: Int32Array.from(rows, (r) => r.community),
      crop: new Int32Array(rows.length),
      lot: Int32Array.from(rows, (r) => r.lot),
      packs: Int32Array.from(rows, (r) => r.packs),
      kg: Float64Array.from(rows, (r) => r.kg),
      servesSeedKg: Float64Array.from(rows, (r) => r.serves),
    },
    shares: {
      community: new Int32Array(),
      crop: new Int32Array(),
      plannedHa: new Float64Array(),
      seedNeedKg: new Float64Array(),
      ownSeedKg: new Float64Array(),
      seedGivenKg: new Float64Array(),
      inoculantNeedSeedKg: new Float64Array(),
      inoculantGivenSeedKg: new Float64Array(),
      seedShare: new Float64Array(),
      inoculantShare: new Float64Array(),
    },
    proofs: [],
    shortfalls: [],
    remedies: [],
    packShares: [],
    consignments,
  };
}

/** Falls by 0.3 per log10 lost for inoculant. */
function reachOf(days: number, c: ConsignmentSpec): ReachCurve {
  const lost = c.group === 'dry' ? 0 : 0.3;
  const value: number[] = [];
  for (let day = 0; day < days; day++) {
    const at = c.reachByDay?.[day] ?? 1;
    for (const loss of LOSS_BREAKS) value.push(Math.max(0, at * (1 - lost * Math.min(loss, 3))));
  }
  return {
    lossBreaks: Float64Array.from(LOSS_BREAKS),
    value: Float64Array.from(value),
    inTime: new Float64Array(days).fill(1),
  };
}

function buildPlaces(spec: NetworkSpec, days: number): Places {
  const depots = spec.depots ?? [{ x: 0, y: 0 }];
  const points = [...depots, ...spec.places];
  const table = (state: number): TravelTable => {
    const offsets = [0];
    const destinations: number[] = [];
    const minutes: number[] = [];
    const kilometres: number[] = [];
    points.forEach((from, i) => {
      points.forEach((to, j) => {
        const cut =
          (spec.places[i - depots.length]?.cutOff ?? false) || (spec.places[j - depots.length]?.cutOff ?? false);
        if (i === j || cut || spec.shut?.(i, j, state)) return;
        const km = Math.hypot(from.x - to.x, from.y - to.y);
        destinations.push(j);
        kilometres.push(km);
        minutes.push((km / KM_PER_MINUTE) * (state === 0 ? 1 : 1.5));
      });
      offsets.push(destinations.length);
    });
    return {
      offsets: Int32Array.from(offsets),
      destinations: Int32Array.from(destinations),
      minutes: Float64Array.from(minutes),
      kilometres: Float64Array.from(kilometres),
    };
  };
  return {
    communityPolygons: spec.places.map(() => null),
    zonePolygons: [],
    communityAreaHa: new Float64Array(spec.places.length).fill(Number.NaN),
    zoneAreaHa: new Float64Array(),
    shares: {
      community: Int32Array.from(spec.places, (_, i) => i),
      zone: new Int32Array(spec.places.length).fill(-1),
      share: new Float64Array(spec.places.length).fill(1),
    },
    handoverPlaces: spec.places.map((place, i) => ({
      pointId: null,
      name: `Community ${i}`,
      position: [place.x / 100, -place.y / 100],
      status: 'assumed',
      communities: [i],
      opensMinute: place.opens ?? null,
      closesMinute: place.closes ?? null,
      store: 'room',
    })),
    communityPlace: Int32Array.from(spec.places, (_, i) => i),
    sites: points.map((point, i) => ({
      kind: i < depots.length ? 'depot' : 'handover',
      index: i < depots.length ? i : i - depots.length,
      position: [point.x / 100, -point.y / 100],
    })),
    travel: {
      classes: [{ roadsAllowed: [], motorcycle: false, vehicles: spec.vehicles.map((_, i) => i) }],
      vehicleClass: new Int32Array(spec.vehicles.length),
      closureSets: [[]],
      dayClosureSet: new Int32Array(days),
      tables: [[[table(0), table(1), table(2)]]],
      graph: {
        nodeCount: 0,
        arcOffsets: new Int32Array(1),
        arcTo: new Int32Array(),
        arcKm: new Float64Array(),
        arcPieces: [],
        siteNode: [],
        siteAccessKm: [],
      },
    },
    unreachable: [],
  };
}

function buildSeason(spec: NetworkSpec, days: number): SeasonOutlook {
  const sites = (spec.depots?.length ?? 1) + spec.places.length;
  const perQuarter = (of: (minute: number) => number) =>
    Float32Array.from({ length: days * 96 }, (_, i) => of((i % 96) * 15));
  return {
    seasonName: 'main',
    onsetDefinition: '',
    firstDay: FIRST_DAY,
    planningDays: days,
    outlookDays: days,
    stations: new Int32Array(1),
    zoneStation: new Int32Array(1),
    zoneStationKm: new Float64Array(1),
    siteStation: new Int32Array(sites),
    members: [],
    onsets: [],
    windows: [],
    tminC: new Float64Array(days).fill(18),
    tmaxC: new Float64Array(days).fill(30),
    airBasis: new Int8Array(days),
    airC: perQuarter(spec.airC ?? (() => 25)),
    sunLoad: perQuarter(spec.sun ?? (() => 0)),
    sunriseMinute: new Float64Array(days).fill(345),
    sunsetMinute: new Float64Array(days).fill(1110),
    roadState: Int8Array.from({ length: days }, (_, day) => spec.roadState?.(day) ?? 0),
    roadStateChance: new Float64Array(days * 3),
    workday: Uint8Array.from({ length: days }, (_, day) => (spec.workday?.(day) === false ? 0 : 1)),
  };
}
