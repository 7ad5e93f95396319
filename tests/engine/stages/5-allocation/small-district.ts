import {
  type Community,
  type Crop,
  type Decision,
  type Decisions,
  type Depot,
  dayNumber,
  type Lot,
  minuteOfDay,
  type Needs,
  type Places,
  type Policy,
  type Product,
  type Scenario,
  type SeasonOutlook,
  type TravelTable,
  type Vehicle,
} from '../../../../src/engine/index.ts';

/** Invented places and people throughout. Day 20000 is the first planning day. */
export const FROM = dayNumber(20_000);
export const PLANNING_DAYS = 20;
const OUTLOOK_DAYS = PLANNING_DAYS + 75;

/** A community as a test states it: kg of seed by crop, the rest following from it. */
export interface CommunitySpec {
  /** Planned hectares by crop. */
  readonly ha: Partial<Record<Crop, number>>;
  readonly ownSeedKg?: Partial<Record<Crop, number>>;
  readonly growers?: number | null;
  readonly priority?: number;
  /** Parts in zones; one zone, index 0, by default. */
  readonly zones?: readonly (readonly [zone: number, share: number])[];
  /** Minutes from each depot; null: no way. By default 30 from every depot. */
  readonly minutes?: readonly (number | null)[];
}

export interface DistrictSpec {
  readonly crops: readonly Crop[];
  readonly communities: readonly CommunitySpec[];
  readonly products: readonly Product[];
  readonly lots: readonly Lot[];
  readonly depots?: readonly Partial<Depot>[];
  readonly zones?: number;
  readonly policy?: Partial<Policy>;
  readonly seedRateKgPerHa?: Partial<Record<Crop, number>>;
  /** First and last sowing day of each season, days after FROM. */
  readonly seasons?: readonly (readonly [first: number, last: number])[];
  readonly idPrefix?: string;
}

export interface SmallDistrict {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly season: SeasonOutlook;
  readonly needs: Needs;
}

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

export function decisions(...list: readonly Decision[]): Decisions {
  return { format: 'nodulary-decisions/1', decisions: list, sha256: '' };
}

export function product(over: Partial<Product> & Pick<Product, 'id' | 'kind' | 'crops' | 'packG'>): Product {
  return {
    carrier: over.kind === 'inoculant' ? 'peat' : null,
    carrierSterile: over.kind === 'inoculant' ? true : null,
    packSize: over.packG,
    packUnit: 'g',
    doseGPerKg: over.kind === 'inoculant' ? 5 : null,
    countPerG: over.kind === 'inoculant' ? 1e9 : null,
    minCountPerG: 5e7,
    maxStorageC: over.kind === 'inoculant' ? 30 : null,
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
    pricePerPack: 10,
    leadDays: null,
    orderMultiple: 1,
    litresPerPack: over.kind === 'inoculant' ? 0.2 : null,
    ...over,
  };
}

export const seedPack = (crop: Crop, kg: number, over: Partial<Product> = {}): Product =>
  product({ id: `SEED-${crop}-${kg}`, kind: 'seed', crops: [crop], packG: kg * 1000, ...over });

/** A sachet of 100 g; at 5 g per kg it coats 20 kg. */
export const sachet = (crops: readonly Crop[], over: Partial<Product> = {}): Product =>
  product({ id: `INO-${crops.join('-')}`, kind: 'inoculant', crops, packG: 100, ...over });

let lotCount = 0;
export function lot(of: Product, packs: number, over: Partial<Lot> = {}): Lot {
  return {
    id: `LOT-${++lotCount}`,
    productId: of.id,
    depotId: 'DEPOT-0',
    packs,
    status: 'cleared',
    availableFrom: null,
    expires: dayNumber(FROM + 300),
    testedCountPerG: null,
    testedOn: null,
    germinationPercent: null,
    seedClass: null,
    ...over,
  };
}

export function smallDistrict(spec: DistrictSpec): SmallDistrict {
  const depots = (spec.depots ?? [{}]).map(makeDepot);
  const zones = spec.zones ?? 1;
  const scenario: Scenario = {
    name: 'invented',
    seasonYear: 2024,
    asOf: dayNumber(FROM - 1),
    forecastHorizonDays: 10,
    timeZone: 'Etc/UTC',
    utcOffsetMinutes: 0,
    currency: 'XXX',
    planning: {
      from: FROM,
      to: dayNumber(FROM + PLANNING_DAYS - 1),
      workdays: [1, 2, 3, 4, 5, 6, 7],
      holidays: [],
      roadHours: null,
    },
    seasons: [],
    policy: { ...POLICY, ...spec.policy },
    prices: { nitrogenPerKg: null, grainPerT: {}, icePerKg: null, perDiem: null },
    yieldsTPerHa: {},
    assumptions: {},
    crops: spec.crops,
    communities: spec.communities.map((community, c) => makeCommunity(spec, community, c)),
    zones: Array.from({ length: zones }, (_, z) => ({
      id: `ZONE-${z}`,
      name: '',
      closedFrom: null,
      closedTo: null,
      geometry: { kind: 'point', position: [0, 0] },
    })),
    handoverPoints: [],
    cropWindows: [],
    depots,
    products: spec.products,
    lots: spec.lots,
    vehicles: depots.map(makeVehicle),
    roads: [],
    weather: [],
    handovers: [],
    defaults: [],
    origins: [],
    sha256: '',
  };
  return {
    scenario,
    places: makePlaces(spec, scenario),
    season: makeSeason(spec, scenario, zones),
    needs: makeNeeds(spec),
  };
}

function makeCommunity(spec: DistrictSpec, { ha, ownSeedKg, growers, priority }: CommunitySpec, c: number): Community {
  return {
    id: `${spec.idPrefix ?? 'COM'}-${c}`,
    name: '',
    zoneId: null,
    farmers: growers === undefined ? 10 : growers,
    farmersWomen: null,
    crops: spec.crops.map((crop) => ({
      crop,
      plannedHa: ha[crop] ?? 0,
      growers: null,
      ownSeedKg: ownSeedKg?.[crop] ?? 0,
      seedRateKgPerHa: null,
    })),
    marketDay: null,
    priority: priority ?? 1,
    lastInoculatedYear: null,
    store: 'room',
    closedFrom: null,
    closedTo: null,
    elevationM: null,
    geometry: { kind: 'point', position: [c / 100, 0] },
  };
}

function makeDepot(over: Partial<Depot>, d: number): Depot {
  return {
    id: `DEPOT-${d}`,
    name: '',
    position: [0, d],
    kind: 'depot',
    opens: minuteOfDay(360),
    closes: minuteOfDay(1080),
    coolStoreLitres: 100,
    coolStoreC: 6,
    iceKgPerDay: 10,
    outageHours: 0,
    loadingMinutesPerT: 30,
    elevationM: null,
    ...over,
  };
}

/** One pickup for each depot, each a class of its own, so that the depots' roads can differ. */
function makeVehicle({ id }: Depot): Vehicle {
  return {
    id: `PICKUP-${id}`,
    kind: 'pickup',
    depotId: id,
    payloadKg: 900,
    coolLitres: 40,
    coolUaWPerK: null,
    iceKg: 5,
    carriage: 'open_bed',
    costPerKm: 1,
    costPerDay: 1,
    crew: 2,
    perDiem: 0,
    shiftStart: minuteOfDay(360),
    maxHours: 9,
    roadsAllowed: ['trunk', 'track'],
    availableFrom: null,
    availableTo: null,
  };
}

function makePlaces(spec: DistrictSpec, { depots, communities }: Scenario): Places {
  const count = communities.length;
  const siteCount = depots.length + count;
  const table = (d: number): TravelTable => travelTable(spec, d, depots.length, siteCount);
  return {
    communityPolygons: communities.map(() => null),
    zonePolygons: [],
    communityAreaHa: new Float64Array(count).fill(Number.NaN),
    zoneAreaHa: new Float64Array(0),
    shares: { community: new Int32Array(0), zone: new Int32Array(0), share: new Float64Array(0) },
    handoverPlaces: communities.map((community, c) => ({
      pointId: null,
      name: '',
      position: [c / 100, 0],
      status: 'assumed',
      communities: [c],
      opensMinute: null,
      closesMinute: null,
      store: community.store,
    })),
    communityPlace: Int32Array.from(communities, (_, c) => c),
    sites: [
      ...depots.map(({ position }, index) => ({ kind: 'depot' as const, index, position })),
      ...communities.map((_, index) => ({
        kind: 'handover' as const,
        index,
        position: [index / 100, 0] as const,
      })),
    ],
    travel: {
      classes: depots.map((_, d) => ({ roadsAllowed: ['trunk' as const], motorcycle: false, vehicles: [d] })),
      vehicleClass: Int32Array.from(depots, (_, d) => d),
      closureSets: [[]],
      dayClosureSet: new Int32Array(PLANNING_DAYS),
      tables: depots.map((_, d) => [[table(d), table(d), table(d)]]),
      graph: {
        nodeCount: 0,
        arcOffsets: new Int32Array(1),
        arcTo: new Int32Array(0),
        arcKm: new Float64Array(0),
        arcPieces: [],
        siteNode: [],
        siteAccessKm: [],
      },
    },
    unreachable: [],
  };
}

/** Legs from depot d to the communities it reaches, and back. */
function travelTable(spec: DistrictSpec, d: number, depots: number, sites: number): TravelTable {
  const minutesTo = (c: number): number | null => {
    const told = spec.communities[c]?.minutes;
    return told === undefined ? 30 : (told[d] ?? null);
  };
  const offsets = new Int32Array(sites + 1);
  const destinations: number[] = [];
  const minutes: number[] = [];
  for (let site = 0; site < sites; site++) {
    if (site === d) {
      spec.communities.forEach((_, c) => {
        const leg = minutesTo(c);
        if (leg === null) return;
        destinations.push(depots + c);
        minutes.push(leg);
      });
    }
    const back = site >= depots ? minutesTo(site - depots) : null;
    if (back !== null) {
      destinations.push(d);
      minutes.push(back);
    }
    offsets[site + 1] = destinations.length;
  }
  return {
    offsets,
    destinations: Int32Array.from(destinations),
    minutes: Float64Array.from(minutes),
    kilometres: Float64Array.from(minutes, (leg) => leg / 2),
  };
}

function makeSeason(spec: DistrictSpec, scenario: Scenario, zones: number): SeasonOutlook {
  const seasons = spec.seasons ?? [[5, 26]];
  const sites = scenario.depots.length + scenario.communities.length;
  const windows = Array.from({ length: (zones + 1) * spec.crops.length }, (_, w) => ({
    zone: Math.floor(w / spec.crops.length),
    crop: spec.crops[w % spec.crops.length] as Crop,
    anchor: 'onset' as const,
    firstOffsetDays: 0,
    lastOffsetDays: 21,
    status: 'assumed' as const,
    firstDay: Float64Array.from(seasons, ([first]) => FROM + first),
    lastDay: Float64Array.from(seasons, ([, last]) => FROM + last),
    sownChance: new Float64Array(OUTLOOK_DAYS),
  }));
  return {
    seasonName: 'main',
    onsetDefinition: '',
    firstDay: FROM,
    planningDays: PLANNING_DAYS,
    outlookDays: OUTLOOK_DAYS,
    stations: new Int32Array(1),
    zoneStation: new Int32Array(zones + 1),
    zoneStationKm: new Float64Array(zones + 1),
    siteStation: new Int32Array(sites),
    members: seasons.map(([first], m) => ({ year: 2000 + m, onset: Float64Array.of(FROM + first) })),
    onsets: [],
    windows,
    tminC: new Float64Array(OUTLOOK_DAYS).fill(16),
    tmaxC: new Float64Array(OUTLOOK_DAYS).fill(28),
    airBasis: new Int8Array(OUTLOOK_DAYS),
    airC: new Float32Array(0),
    sunLoad: new Float32Array(0),
    sunriseMinute: new Float64Array(0),
    sunsetMinute: new Float64Array(0),
    roadState: new Int8Array(PLANNING_DAYS),
    roadStateChance: new Float64Array(PLANNING_DAYS * 3),
    workday: new Uint8Array(PLANNING_DAYS).fill(1),
  };
}

/** Seed = hectares * rate (10 kg per ha where a test says nothing), own seed off it, split over zones by land. */
function makeNeeds(spec: DistrictSpec): Needs {
  const lines = spec.communities.flatMap(({ ha, ownSeedKg, zones }, community) =>
    (zones ?? [[0, 1] as const]).flatMap(([zone, share]) =>
      spec.crops.flatMap((crop, c) => {
        const plannedHa = (ha[crop] ?? 0) * share;
        if (plannedHa === 0) return [];
        const seedKg = plannedHa * (spec.seedRateKgPerHa?.[crop] ?? 10);
        const own = (ownSeedKg?.[crop] ?? 0) * share;
        return [{ zone, community, crop: c, plannedHa, seedKg, own }];
      }),
    ),
  );
  const column = (of: (line: (typeof lines)[number]) => number) => Float64Array.from(lines, of);
  return {
    zone: Int32Array.from(lines, ({ zone }) => zone),
    community: Int32Array.from(lines, ({ community }) => community),
    crop: Int32Array.from(lines, ({ crop }) => crop),
    plannedHa: column(({ plannedHa }) => plannedHa),
    seedKg: column(({ seedKg }) => seedKg),
    ownSeedKg: column(({ own }) => own),
    programmeSeedKg: column(({ seedKg, own }) => Math.max(0, seedKg - own)),
    inoculantG: column(({ seedKg }) => seedKg * 5),
    product: new Int32Array(lines.length).fill(-1),
    packsNeeded: column(() => 0),
    stickerPacks: column(() => 0),
    waterL: column(() => 0),
    fertiliserKg: column(() => 0),
    seedsPerKg: Float64Array.from(spec.crops, () => 7000),
  };
}
