import geographiclib from 'geographiclib-geodesic';
import { clippingOverlay } from '../../../../src/adapters/geometry/clipping-overlay.ts';
import type {
  Community,
  Decisions,
  Depot,
  HandoverPoint,
  PlaceGeometry,
  Places,
  Position,
  RoadClass,
  RoadLine,
  Scenario,
  TravelTable,
  Vehicle,
  Zone,
} from '../../../../src/engine/index.ts';
import { locatePlaces } from '../../../../src/engine/stages/2-places/locate-places.ts';
import {
  blankCommunity,
  blankDepot,
  blankHandoverPoint,
  blankRoad,
  blankScenario,
  blankVehicle,
  blankZone,
  noDecisions,
} from '../../blank-scenario.ts';

export { FIRST_DAY, noDecisions as NO_DECISIONS } from '../../blank-scenario.ts';

export const point = (lon: number, lat: number): PlaceGeometry => ({ kind: 'point', position: [lon, lat] });

export const area = (...positions: readonly Position[]): PlaceGeometry => ({
  kind: 'area',
  polygons: [[[...positions, positions[0] as Position]]],
});

export const box = (west: number, south: number, width: number, height = width): PlaceGeometry =>
  area([west, south], [west + width, south], [west + width, south + height], [west, south + height]);

export const community = (id: string, geometry: PlaceGeometry, more: Partial<Community> = {}): Community =>
  blankCommunity({ id, geometry, ...more });

export const zone = (id: string, geometry: PlaceGeometry): Zone => blankZone({ id, geometry });

export const road = (positions: readonly Position[], more: Partial<RoadLine> = {}): RoadLine =>
  blankRoad({ positions, ...more });

export const depot = (id: string, position: Position): Depot => blankDepot({ id, position });

export const vehicle = (
  id: string,
  depotId: string,
  kind: string,
  roadsAllowed: readonly RoadClass[] = ['primary', 'tertiary'],
): Vehicle => blankVehicle({ id, kind, depotId, roadsAllowed });

export const handoverPoint = (id: string, position: Position, communityIds: readonly string[]): HandoverPoint =>
  blankHandoverPoint({ id, position, communityIds });

type Ground = Partial<
  Pick<Scenario, 'communities' | 'zones' | 'depots' | 'vehicles' | 'roads' | 'handoverPoints' | 'planning'>
>;

/** A scenario whose ground is as given; all else is of no concern to this stage. */
export const ground = (parts: Ground): Scenario => blankScenario(parts);

export function located(parts: Ground, decisions: Decisions = noDecisions, overlay = clippingOverlay()) {
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
