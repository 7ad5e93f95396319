import type { MultiPolygon, Position, RoadClass } from '../places.ts';
import type { Status } from '../provenance.ts';
import type { UnreachableReason } from '../reasons.ts';
import type { Store } from '../scenario.ts';

/** Parts of communities in zones. Row k: part of community[k] in zone[k]; sorted by community, then zone. */
export interface ZoneShares {
  readonly community: Int32Array;
  /** Index of the zone, -1 outside all zones. */
  readonly zone: Int32Array;
  /** Fraction of the community's area, 0 to 1; the rows of one community sum to 1. */
  readonly share: Float64Array;
}

/** Where vehicles go: the depots first (same order as scenario.depots), then the hand-over places. */
export interface Site {
  readonly kind: 'depot' | 'handover';
  /** Index among depots or among handover places. */
  readonly index: number;
  readonly position: Position;
}

export interface HandoverPlace {
  /** Null where the place was derived from the community's own geometry (status assumed). */
  readonly pointId: string | null;
  readonly name: string;
  readonly position: Position;
  readonly status: Status;
  /** Communities (indexes) that collect here. */
  readonly communities: readonly number[];
  readonly opensMinute: number | null;
  readonly closesMinute: number | null;
  readonly store: Store;
}

/** Vehicles that may use the same roads at the same speeds. */
export interface VehicleClass {
  readonly roadsAllowed: readonly RoadClass[];
  readonly motorcycle: boolean;
  /** Indexes into scenario.vehicles. */
  readonly vehicles: readonly number[];
}

/**
 * Travel between sites for one vehicle class, road state and set of closed roads. Sparse rows: legs of origin o stand at
 * offsets[o] to offsets[o+1], destinations ascending. A pair that is absent cannot be driven, or is farther than the
 * nearest legs kept.
 */
export interface TravelTable {
  readonly offsets: Int32Array;
  readonly destinations: Int32Array;
  readonly minutes: Float64Array;
  readonly kilometres: Float64Array;
}

/** The compressed road graph: junctions and sites joined by arcs that follow road lines. Kept to trace the path of a leg. */
export interface RoadGraph {
  readonly nodeCount: number;
  /** Arcs of node n: arcOffsets[n] to arcOffsets[n+1]. */
  readonly arcOffsets: Int32Array;
  readonly arcTo: Int32Array;
  readonly arcKm: Float64Array;
  /** Index into `arcPieces` of the road pieces an arc follows. */
  readonly arcPieces: readonly (readonly RoadPiece[])[];
  /** Index of the site's node per vehicle class and site: siteNode[class][site], -1 where it joins no road. */
  readonly siteNode: readonly Int32Array[];
  /** Kilometres from the site to its road, per class and site. */
  readonly siteAccessKm: readonly Float64Array[];
}

/**
 * Part of a road line: from one place along it to another, counted in vertices (2.5 is half way between the vertices 2
 * and 3). `from > to` runs against the order of the positions.
 */
export interface RoadPiece {
  readonly road: number;
  readonly from: number;
  readonly to: number;
}

export interface TravelTables {
  readonly classes: readonly VehicleClass[];
  /** Class of each vehicle. */
  readonly vehicleClass: Int32Array;
  /** Sets of roads closed at a time; set 0 comes first in time. Each lists road indexes, ascending. */
  readonly closureSets: readonly (readonly number[])[];
  /** Closure set of each planning day. */
  readonly dayClosureSet: Int32Array;
  /** tables[class][closureSet][roadState]; road states as in ROAD_STATES. */
  readonly tables: readonly (readonly (readonly TravelTable[])[])[];
  readonly graph: RoadGraph;
}

export interface Unreachable {
  readonly place: number;
  readonly vehicleClass: number;
  readonly reason: UnreachableReason;
}

export interface Places {
  /** Repaired polygons per community, null for a point. */
  readonly communityPolygons: readonly (MultiPolygon | null)[];
  readonly zonePolygons: readonly (MultiPolygon | null)[];
  /** Hectares on the ellipsoid, equal-area (EPSG:6933); NaN for points. */
  readonly communityAreaHa: Float64Array;
  readonly zoneAreaHa: Float64Array;
  readonly shares: ZoneShares;
  readonly handoverPlaces: readonly HandoverPlace[];
  /** Hand-over place of each community. */
  readonly communityPlace: Int32Array;
  readonly sites: readonly Site[];
  readonly travel: TravelTables;
  /** One row per place and vehicle class that no depot of that class reaches and returns from. */
  readonly unreachable: readonly Unreachable[];
}

/** A leg that a plan drives, with the road pieces it follows: the certificate that the checker walks. */
export interface LegPath {
  readonly fromSite: number;
  readonly toSite: number;
  readonly vehicleClass: number;
  readonly closureSet: number;
  readonly roadState: number;
  readonly minutes: number;
  readonly kilometres: number;
  readonly pieces: readonly RoadPiece[];
}
