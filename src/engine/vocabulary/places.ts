/** [longitude, latitude] in decimal degrees, WGS 84 (RFC 7946). */
export type Position = readonly [number, number];
/** Closed ring: first position equals last. */
export type Ring = readonly Position[];
/** Exterior ring, then holes. */
export type PolygonRings = readonly Ring[];
/** One or more polygons, as the coordinates of a GeoJSON MultiPolygon. */
export type MultiPolygon = readonly PolygonRings[];

export type PlaceGeometry =
  | { readonly kind: 'point'; readonly position: Position }
  | { readonly kind: 'area'; readonly polygons: MultiPolygon };

export const ROAD_CLASSES = ['trunk', 'primary', 'secondary', 'tertiary', 'unclassified', 'track', 'path'] as const;
export type RoadClass = (typeof ROAD_CLASSES)[number];

export const SURFACES = ['paved', 'gravel', 'earth'] as const;
export type Surface = (typeof SURFACES)[number];

/** What rain leaves of the roads on one day. The index of the word is what tables use. */
export const ROAD_STATES = ['passable', 'difficult', 'closed'] as const;
export type RoadState = (typeof ROAD_STATES)[number];
