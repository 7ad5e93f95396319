import type {
  Allocation,
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
  Vehicle,
} from '../../../../src/engine/index.ts';
import { dayFromCivil, dayNumber } from '../../../../src/engine/index.ts';
import { planDelivery } from '../../../../src/engine/stages/6-delivery/plan-delivery.ts';
import { blankPlaces, travelTable } from '../../blank-places.ts';
import {
  blankCommunity,
  blankCropPlan,
  blankDepot,
  blankInoculant,
  blankLot,
  blankPlanning,
  blankPolicy,
  blankPrices,
  blankScenario,
  blankSeed,
  blankVehicle,
  noDecisions,
} from '../../blank-scenario.ts';
import { blankSeason } from '../../blank-season.ts';

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
  const scenario = buildScenario(spec, days);
  return {
    scenario,
    decisions: { ...noDecisions, decisions: spec.decisions ?? [] },
    places: buildPlaces(spec, scenario),
    season: buildSeason(spec, scenario, days),
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
  return planDelivery(scenario, decisions, places, season, allocation, settings, earlier && { ...earlier, as: 'held' });
}

export const deliver = (spec: NetworkSpec, iterations = 300): Delivery =>
  planNetwork(buildNetwork(spec), iterations).result;

/** An open pickup with a box of 50 L, run without crew. */
const VEHICLE: Partial<Vehicle> = {
  coolLitres: 50,
  coolUaWPerK: 0.6,
  iceKg: 9.6,
  carriage: 'open_bed',
  costPerKm: 1,
  costPerDay: 20,
  crew: 0,
};

const positionOf = ({ x, y }: { readonly x: number; readonly y: number }) => [x / 100, -y / 100] as const;
const depotsOf = (spec: NetworkSpec): NonNullable<NetworkSpec['depots']> => spec.depots ?? [{ x: 0, y: 0 }];

function buildScenario(spec: NetworkSpec, days: number): Scenario {
  const dayOf = (offset: number | undefined) => (offset === undefined ? null : dayNumber(FIRST_DAY + offset));
  return blankScenario({
    planning: blankPlanning(FIRST_DAY, days, { roadHours: spec.roadHours ?? null }),
    policy: blankPolicy({ trainingMinutes: 30, ...spec.policy }),
    prices: blankPrices({ icePerKg: spec.icePerKg ?? null }),
    communities: spec.places.map((place, i) =>
      blankCommunity({
        id: `C${i}`,
        crops: [blankCropPlan({ plannedHa: 1, ownSeedKg: place.ownSeedKg ?? 0 })],
        marketDay: place.marketDay ?? null,
        closedFrom: dayOf(place.closedFrom),
        closedTo: dayOf(place.closedTo),
        geometry: { kind: 'point', position: positionOf(place) },
      }),
    ),
    depots: depotsOf(spec).map((depot, i) =>
      blankDepot({
        id: `D${i}`,
        position: positionOf(depot),
        coolStoreLitres: 1000,
        coolStoreC: depot.storeC === undefined ? 8 : depot.storeC,
        iceKgPerDay: depot.ice ?? 100,
      }),
    ),
    products: productsOf(spec),
    lots: buildLots(spec),
    vehicles: spec.vehicles.map(({ depot = 0, ...vehicle }, i) =>
      blankVehicle({ ...VEHICLE, id: `V${i}`, depotId: `D${depot}`, ...vehicle }),
    ),
  });
}

/** A sachet, seed in packs of 25 kg, and seed in such other packs as a test names. */
const productsOf = (spec: NetworkSpec): Product[] => [
  blankInoculant({ id: 'INO', carrierSterile: true, maxStorageC: 30, pricePerPack: 1, litresPerPack: 0.2 }),
  ...[...new Set([25, ...spec.consignments.map((c) => c.packKg ?? 25)])].map((kg) =>
    blankSeed(kg, { id: seedId(kg), pricePerPack: 1 }),
  ),
];
const seedId = (packKg: number) => (packKg === 25 ? 'SEED' : `SEED${packKg}`);

/** More than enough of every product at every depot, products within depots. */
const buildLots = (spec: NetworkSpec): Lot[] =>
  depotsOf(spec).flatMap((_, depot) =>
    productsOf(spec).map(({ id }) =>
      blankLot({ id: `L-${id}-${depot}`, productId: id, depotId: `D${depot}`, packs: 100_000 }),
    ),
  );

function buildAllocation(spec: NetworkSpec, days: number): Allocation {
  const products = productsOf(spec).map(({ id }) => id);
  const rows: { community: number; lot: number; packs: number; kg: number; serves: number }[] = [];
  const consignments = spec.consignments.map((c): Consignment => {
    const depot = c.depot ?? 0;
    const packKg = c.packKg ?? 25;
    const grants: number[] = [];
    const grant = (product: string, packs: number, kg: number, serves: number) => {
      if (packs <= 0) return;
      grants.push(rows.length);
      rows.push({ community: c.place, lot: depot * products.length + products.indexOf(product), packs, kg, serves });
    };
    const seedPacks = c.seedPacks ?? 0;
    const sachets = c.sachets ?? 0;
    grant(seedId(packKg), seedPacks, seedPacks * packKg, seedPacks * packKg);
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
      seedThereKg: new Float64Array(),
      seedGivenKg: new Float64Array(),
      inoculantNeedSeedKg: new Float64Array(),
      inoculantGivenSeedKg: new Float64Array(),
      seedShare: new Float64Array(),
      inoculantShare: new Float64Array(),
    },
    proofs: [],
    shortfalls: [],
    remedies: [],
    orders: [],
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

function buildPlaces(spec: NetworkSpec, scenario: Scenario): Places {
  const depots = depotsOf(spec);
  const points = [...depots, ...spec.places];
  const isCutOff = (site: number) => spec.places[site - depots.length]?.cutOff ?? false;
  const table = (state: number) =>
    travelTable(points.length, (i, j) => {
      const [from, to] = [points[i], points[j]];
      if (!from || !to || isCutOff(i) || isCutOff(j) || spec.shut?.(i, j, state)) return null;
      const km = Math.hypot(from.x - to.x, from.y - to.y);
      return { km, minutes: (km / KM_PER_MINUTE) * (state === 0 ? 1 : 1.5) };
    });
  const places = blankPlaces(scenario, { travel: { tables: [[[table(0), table(1), table(2)]]] } });
  const handoverPlaces = places.handoverPlaces.map((place, i) => ({
    ...place,
    opensMinute: spec.places[i]?.opens ?? null,
    closesMinute: spec.places[i]?.closes ?? null,
  }));
  return { ...places, handoverPlaces };
}

function buildSeason(spec: NetworkSpec, scenario: Scenario, days: number): SeasonOutlook {
  const perQuarter = (of: (minute: number) => number) =>
    Float32Array.from({ length: days * 96 }, (_, i) => of((i % 96) * 15));
  return blankSeason(scenario, {
    airC: perQuarter(spec.airC ?? (() => 25)),
    sunLoad: perQuarter(spec.sun ?? (() => 0)),
    sunriseMinute: new Float64Array(days).fill(345),
    sunsetMinute: new Float64Array(days).fill(1110),
    roadState: Int8Array.from({ length: days }, (_, day) => spec.roadState?.(day) ?? 0),
    workday: Uint8Array.from({ length: days }, (_, day) => (spec.workday?.(day) === false ? 0 : 1)),
  });
}
