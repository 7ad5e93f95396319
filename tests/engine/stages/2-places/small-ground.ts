import geographiclib from 'geographiclib-geodesic';
import { clippingOverlay } from '../../../../src/adapters/geometry/clipping-overlay.ts';
import {
  type Community,
  type Decisions,
  type Depot,
  dayFromCivil,
  type HandoverPoint,
  minuteOfDay,
  type PlaceGeometry,
  type Places,
  type Position,
  type RoadClass,
  type RoadLine,
  type Scenario,
  type TravelTable,
  type Vehicle,
  type Zone,
} from '../../../../src/engine/index.ts';
import { locatePlaces } from '../../../../src/engine/stages/2-places/locate-places.ts';

/** 2 November 2026, the first of ten planning days. */
export const FIRST_DAY = dayFromCivil(2026, 11, 2);

export const NO_DECISIONS: Decisions = { format: 'nodulary-decisions/1', decisions: [], sha256: '' };

export const point = (lon: number, lat: number): PlaceGeometry => ({ kind: 'point', position: [lon, lat] });

export const area = (...positions: readonly Position[]): PlaceGeometry => ({
  kind: 'area',
  polygons: [[[...positions, positions[0] as Position]]],
});

export const box = (west: number, south: number, width: number, height = width): PlaceGeometry =>
  area([west, south], [west + width, south], [west + width, south + height], [west, south + height]);

export function community(id: string, geometry: PlaceGeometry, more: Partial<Community> = {}): Community {
  return {
    id,
    name: `Village ${id}`,
    zoneId: null,
    farmers: null,
    farmersWomen: null,
    crops: [{ crop: 'soybean', plannedHa: 10, growers: null, ownSeedKg: 0, seedRateKgPerHa: null }],
    marketDay: null,
    priority: 1,
    lastInoculatedYear: null,
    store: 'room',
    closedFrom: null,
    closedTo: null,
    elevationM: null,
    geometry,
    ...more,
  };
}

export const zone = (id: string, geometry: PlaceGeometry): Zone => ({
  id,
  name: `Zone ${id}`,
  closedFrom: null,
  closedTo: null,
  geometry,
});

export const road = (positions: readonly Position[], more: Partial<RoadLine> = {}): RoadLine => ({
  positions,
  roadClass: 'primary',
  surface: 'paved',
  oneway: 'no',
  closedFrom: null,
  closedTo: null,
  ...more,
});

export const depot = (id: string, position: Position): Depot => ({
  id,
  name: `Depot ${id}`,
  position,
  kind: 'depot',
  opens: minuteOfDay(420),
  closes: minuteOfDay(1020),
  coolStoreLitres: 100,
  coolStoreC: 8,
  iceKgPerDay: 0,
  outageHours: 0,
  loadingMinutesPerT: 30,
  elevationM: null,
});

export const vehicle = (
  id: string,
  depotId: string,
  kind: string,
  roadsAllowed: readonly RoadClass[] = ['primary', 'tertiary'],
): Vehicle => ({
  id,
  kind,
  depotId,
  payloadKg: 1000,
  coolLitres: 0,
  coolUaWPerK: null,
  iceKg: 0,
  carriage: 'covered_bed',
  costPerKm: 0,
  costPerDay: 0,
  crew: 1,
  perDiem: 0,
  shiftStart: minuteOfDay(360),
  maxHours: 9,
  roadsAllowed,
  availableFrom: null,
  availableTo: null,
});

export const handoverPoint = (id: string, position: Position, communityIds: readonly string[]): HandoverPoint => ({
  id,
  name: `Point ${id}`,
  position,
  communityIds,
  opens: null,
  closes: null,
  store: null,
  contact: null,
});

type Ground = Partial<
  Pick<Scenario, 'communities' | 'zones' | 'depots' | 'vehicles' | 'roads' | 'handoverPoints' | 'planning'>
>;

/** A scenario whose ground is as given; all else is of no concern to this stage. */
export function ground(parts: Ground): Scenario {
  const day = FIRST_DAY;
  return {
    name: 'small ground',
    seasonYear: 2026,
    asOf: dayFromCivil(2026, 11, 1),
    forecastHorizonDays: 10,
    timeZone: 'Etc/GMT-2',
    utcOffsetMinutes: 120,
    currency: 'XXX',
    planning: { from: day, to: dayFromCivil(2026, 11, 11), workdays: [1, 2, 3, 4, 5], holidays: [], roadHours: null },
    seasons: [],
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
    prices: { nitrogenPerKg: null, grainPerT: {}, icePerKg: null, perDiem: null },
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
    defaults: [],
    origins: [],
    sha256: '',
    ...parts,
  };
}

export function located(parts: Ground, decisions: Decisions = NO_DECISIONS, overlay = clippingOverlay()) {
  return locatePlaces(ground(parts), decisions, overlay);
}

/** Kilometres by geographiclib-geodesic (Karney 2013, J. Geodesy 87:43-55) along positions. */
export function referenceKm(...positions: readonly Position[]): number {
  let metres = 0;
  for (const [i, [x2, y2]] of positions.entries()) {
    const [x1, y1] = positions[i - 1] ?? [x2, y2];
    metres += geographiclib.Geodesic.WGS84.Inverse(y1, x1, y2, x2).s12 ?? Number.NaN;
  }
  return metres / 1000;
}

/** Minutes and kilometres of a leg; null where the table holds none. */
export function leg(table: TravelTable | undefined, from: number, to: number): { minutes: number; km: number } | null {
  if (!table) return null;
  for (let k = table.offsets[from] as number; k < (table.offsets[from + 1] as number); k++) {
    if (table.destinations[k] === to) return { minutes: table.minutes[k] as number, km: table.kilometres[k] as number };
  }
  return null;
}

/** Table of a vehicle class on a closure set and a road state. */
export const table = (places: Places, vehicleClass = 0, closureSet = 0, roadState = 0): TravelTable | undefined =>
  places.travel.tables[vehicleClass]?.[closureSet]?.[roadState];
