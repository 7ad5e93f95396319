import {
  type Community,
  type Crop,
  type Decision,
  type Decisions,
  type Depot,
  dayNumber,
  type Lot,
  type Needs,
  type Places,
  type Policy,
  type Product,
  type Scenario,
  type SeasonOutlook,
  type TravelTable,
} from '../../../../src/engine/index.ts';
import { blankPlaces, travelTable, zoneShares } from '../../blank-places.ts';
import {
  blankCommunity,
  blankCropPlan,
  blankDepot,
  blankInoculant,
  blankLot,
  blankPlanning,
  blankPolicy,
  blankProduct,
  blankScenario,
  blankSeed,
  blankVehicle,
  blankZone,
  noDecisions,
} from '../../blank-scenario.ts';
import { blankSeason, sownSeasons } from '../../blank-season.ts';

/** Invented places and people throughout. Day 20000 is the first planning day. */
export const FROM = dayNumber(20_000);
export const PLANNING_DAYS = 20;

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

export const decisions = (...list: readonly Decision[]): Decisions => ({ ...noDecisions, decisions: list });

const PRICE = { pricePerPack: 10 };

export const product = (over: Partial<Product> & Pick<Product, 'id' | 'kind' | 'crops' | 'packG'>): Product =>
  blankProduct({ ...PRICE, packSize: over.packG, ...over });

export const seedPack = (crop: Crop, kg: number, over: Partial<Product> = {}): Product =>
  blankSeed(kg, { ...PRICE, id: `SEED-${crop}-${kg}`, crops: [crop], ...over });

/** A sachet of 100 g; at 5 g per kg it coats 20 kg. */
export const sachet = (crops: readonly Crop[], over: Partial<Product> = {}): Product =>
  blankInoculant({
    ...PRICE,
    id: `INO-${crops.join('-')}`,
    crops,
    carrierSterile: true,
    maxStorageC: 30,
    litresPerPack: 0.2,
    packSize: over.packG ?? 100,
    ...over,
  });

let lotCount = 0;
export const lot = (of: Product, packs: number, over: Partial<Lot> = {}): Lot =>
  blankLot({
    id: `LOT-${++lotCount}`,
    productId: of.id,
    depotId: 'DEPOT-0',
    packs,
    expires: dayNumber(FROM + 300),
    ...over,
  });

export function smallDistrict(spec: DistrictSpec): SmallDistrict {
  const depots = (spec.depots ?? [{}]).map((over, d) =>
    blankDepot({ id: `DEPOT-${d}`, position: [0, d], coolStoreLitres: 100, coolStoreC: 6, ...over }),
  );
  const scenario = blankScenario({
    planning: blankPlanning(FROM, PLANNING_DAYS),
    policy: blankPolicy(spec.policy),
    crops: spec.crops,
    communities: spec.communities.map((community, c) => makeCommunity(spec, community, c)),
    zones: Array.from({ length: spec.zones ?? 1 }, (_, z) => blankZone({ id: `ZONE-${z}` })),
    depots,
    products: spec.products,
    lots: spec.lots,
    // One pickup for each depot, each a class of its own, so that the depots' roads can differ.
    vehicles: depots.map(({ id }) => blankVehicle({ id: `PICKUP-${id}`, depotId: id })),
  });
  return { scenario, places: makePlaces(spec, scenario), season: makeSeason(spec, scenario), needs: makeNeeds(spec) };
}

const makeCommunity = (spec: DistrictSpec, { ha, ownSeedKg, growers, priority }: CommunitySpec, c: number): Community =>
  blankCommunity({
    id: `${spec.idPrefix ?? 'COM'}-${c}`,
    farmers: growers === undefined ? 10 : growers,
    crops: spec.crops.map((crop) =>
      blankCropPlan({ crop, plannedHa: ha[crop] ?? 0, ownSeedKg: ownSeedKg?.[crop] ?? 0 }),
    ),
    priority: priority ?? 1,
    geometry: { kind: 'point', position: [c / 100, 0] },
  });

/** Parts in zones, as [zone, share]. */
const partsOf = ({ zones }: CommunitySpec) => zones ?? [[0, 1] as const];

function makePlaces(spec: DistrictSpec, scenario: Scenario): Places {
  const { depots } = scenario;
  const tables = depots.map((_, d) => makeTable(spec, d, depots.length));
  return blankPlaces(scenario, {
    shares: zoneShares(
      spec.communities.flatMap((community, c) => partsOf(community).map(([zone, share]) => [c, zone, share] as const)),
    ),
    travel: {
      classes: depots.map((_, d) => ({ roadsAllowed: ['trunk'], motorcycle: false, vehicles: [d] })),
      vehicleClass: Int32Array.from(depots, (_, d) => d),
      tables: tables.map((table) => [[table, table, table]]),
    },
  });
}

/** Legs from depot d to the communities it reaches, and back. */
const makeTable = ({ communities }: DistrictSpec, d: number, depots: number): TravelTable =>
  travelTable(depots + communities.length, (from, to) => {
    const community = communities[Math.max(from, to) - depots];
    if (Math.min(from, to) !== d || !community) return null;
    const minutes = community.minutes === undefined ? 30 : (community.minutes[d] ?? null);
    return minutes === null ? null : { minutes, km: minutes / 2 };
  });

const makeSeason = (spec: DistrictSpec, scenario: Scenario): SeasonOutlook =>
  blankSeason(scenario, sownSeasons(scenario, spec.seasons ?? [[5, 26]]), [16, 28]);

/** Seed = hectares * rate (10 kg per ha where a test says nothing), own seed off it, split over zones by land. */
function makeNeeds(spec: DistrictSpec): Needs {
  const lines = spec.communities.flatMap((stated, community) =>
    partsOf(stated).flatMap(([zone, share]) =>
      spec.crops.flatMap((crop, c) => {
        const plannedHa = (stated.ha[crop] ?? 0) * share;
        if (plannedHa === 0) return [];
        const seedKg = plannedHa * (spec.seedRateKgPerHa?.[crop] ?? 10);
        const own = (stated.ownSeedKg?.[crop] ?? 0) * share;
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
