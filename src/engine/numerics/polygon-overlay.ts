/** Planar overlay of polygons in longitude and latitude; what an adapter must offer. Coordinates as in GeoJSON MultiPolygon. */
type Ring = readonly (readonly [number, number])[];
export type OverlayPolygons = readonly (readonly Ring[])[];

export interface PreparedPolygon {
  /** True where the other lies wholly within this one. */
  covers(other: OverlayPolygons): boolean;
  /** Common part; an empty list where there is none. */
  intersection(other: OverlayPolygons): OverlayPolygons;
  /** Frees what the tool holds outside the garbage collector's reach. */
  release(): void;
}

export interface PolygonOverlay {
  readonly name: string;
  readonly version: string;
  readonly options: string;
  /** Rings closed and numbers finite are the caller's care. */
  isValid(polygons: OverlayPolygons): boolean;
  /** Valid polygons that cover the same ground (structure method: holes stay holes); null where nothing is left. */
  makeValid(polygons: OverlayPolygons): OverlayPolygons | null;
  prepare(polygons: OverlayPolygons): PreparedPolygon;
}
