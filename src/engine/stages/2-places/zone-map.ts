import Flatbush from 'flatbush';
import { boundingBox } from '../../numerics/bounding-box.ts';
import { polygonAreaHa } from '../../numerics/equal-area.ts';
import { locateInPolygons } from '../../numerics/point-in-polygon.ts';
import type { PolygonOverlay, PreparedPolygon } from '../../numerics/polygon-overlay.ts';
import type { MultiPolygon, Position } from '../../vocabulary/places.ts';

/** Zones that have polygons, found by their boxes and prepared for overlay once. Zones are named by their indexes. */
export class ZoneMap {
  private readonly polygons: readonly (MultiPolygon | null)[];
  private readonly overlay: PolygonOverlay;
  private readonly drawn: readonly number[];
  private readonly tree: Flatbush | null;
  private readonly prepared = new Map<number, PreparedPolygon>();

  constructor(polygons: readonly (MultiPolygon | null)[], overlay: PolygonOverlay) {
    this.polygons = polygons;
    this.overlay = overlay;
    this.drawn = polygons.flatMap((held, zone) => (held ? [zone] : []));
    this.tree = this.drawn.length > 0 ? new Flatbush(this.drawn.length) : null;
    for (const zone of this.drawn) this.tree?.add(...plainBox((polygons[zone] ?? []).flat(2)));
    this.tree?.finish();
  }

  get isEmpty(): boolean {
    return this.drawn.length === 0;
  }

  has(zone: number): boolean {
    return this.drawn.includes(zone);
  }

  /** True inside the zone and on its edge. */
  holds(zone: number, position: Position): boolean {
    return locateInPolygons(position, this.polygons[zone] ?? []) !== 'outside';
  }

  /** Zones whose boxes meet the box around the positions, ascending. */
  near(positions: readonly Position[]): readonly number[] {
    const items = this.tree?.search(...plainBox(positions)) ?? [];
    return items.map((item) => this.drawn[item] as number).sort((a, b) => a - b);
  }

  covers(zone: number, polygons: MultiPolygon): boolean {
    return this.prepare(zone).covers(polygons);
  }

  /** Hectares that the polygons have in common with the zone. */
  commonHa(zone: number, polygons: MultiPolygon): number {
    return polygonAreaHa(this.prepare(zone).intersection(polygons));
  }

  /** Frees what the overlay holds; the map is of no use afterwards. */
  release(): void {
    for (const held of this.prepared.values()) held.release();
  }

  private prepare(zone: number): PreparedPolygon {
    const held = this.prepared.get(zone) ?? this.overlay.prepare(this.polygons[zone] ?? []);
    this.prepared.set(zone, held);
    return held;
  }
}

/** Overlay does not look across the antimeridian, so neither do the boxes. */
function plainBox(positions: readonly Position[]): [number, number, number, number] {
  const [west, south, east, north] = boundingBox(positions) ?? [0, 0, 0, 0];
  return west <= east ? [west, south, east, north] : [-180, south, 180, north];
}
