import * as clipping from 'polygon-clipping';
import type { OverlayPolygons, PolygonOverlay, PreparedPolygon } from '../../engine/index.ts';
import { closeRings, type Ring } from './rings.ts';

/** Area may differ by this part through the arithmetic of the sweep alone. */
const SAME_AREA = 1e-12;

/** The library's functions stand in its default export where Node reads its CommonJS build. */
const { difference, intersection, union } =
  (clipping as unknown as { readonly default?: typeof clipping }).default ?? clipping;

/**
 * Overlay by polygon-clipping (MIT): a second implementation, some ten times slower than GEOS, pure JavaScript. Rings are
 * closed here; numbers must be finite. Polygons count as valid where they cover ground exactly once, so a ring that only
 * touches itself is left as it is.
 */
export function clippingOverlay(): PolygonOverlay {
  return {
    name: 'polygon-clipping',
    version: '0.15.7',
    options: 'non-zero rule',
    isValid(polygons) {
      const closed = closeRings(polygons);
      const covered = planarArea(union(writable(closed)));
      return covered > 0 && Math.abs(covered - planarArea(closed)) <= SAME_AREA * covered;
    },
    makeValid(polygons) {
      const merged = union(writable(closeRings(polygons)));
      return merged.length > 0 ? merged : null;
    },
    prepare: (polygons) => new ClippingPrepared(polygons),
  };
}

type Box = readonly [number, number, number, number];

class ClippingPrepared implements PreparedPolygon {
  private readonly polygons: OverlayPolygons;
  /** Boxes around the edges. */
  private readonly edges: readonly Box[];

  constructor(polygons: OverlayPolygons) {
    this.polygons = closeRings(polygons);
    this.edges = this.polygons.flat().flatMap((ring) => ring.slice(1).map((end, i) => boxOf([ring[i] ?? end, end])));
  }

  covers(other: OverlayPolygons): boolean {
    const closed = closeRings(other);
    return this.settle(closed) ?? difference(writable(closed), writable(this.polygons)).length === 0;
  }

  intersection(other: OverlayPolygons): OverlayPolygons {
    const closed = closeRings(other);
    const settled = this.settle(closed);
    if (settled !== null) return settled ? closed : [];
    return intersection(writable(this.polygons), writable(closed));
  }

  release(): void {}

  /** Where no edge of these polygons meets the other's box, one point decides all (true) or nothing (false). */
  private settle(other: OverlayPolygons): boolean | null {
    const positions = other.flat(2);
    const first = positions[0];
    if (!first) return false;
    const box = boxOf(positions);
    return this.edges.some((edge) => meet(edge, box)) ? null : standsInside(first, this.polygons);
  }
}

function meet([west, south, east, north]: Box, other: Box): boolean {
  return west <= other[2] && east >= other[0] && south <= other[3] && north >= other[1];
}

function boxOf(positions: Ring): Box {
  let [west, south, east, north] = [1 / 0, 1 / 0, -1 / 0, -1 / 0];
  for (const [x, y] of positions) {
    west = Math.min(west, x);
    south = Math.min(south, y);
    east = Math.max(east, x);
    north = Math.max(north, y);
  }
  return [west, south, east, north];
}

/** Even-odd rule over all rings at once, for a position that no edge comes near. */
function standsInside([x, y]: Ring[number], polygons: OverlayPolygons): boolean {
  let inside = false;
  for (const ring of polygons.flat()) {
    for (let i = 1; i < ring.length; i++) {
      const [x1, y1] = ring[i - 1] as Ring[number];
      const [x2, y2] = ring[i] as Ring[number];
      if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
    }
  }
  return inside;
}

/** Square degrees: only for comparing an area with itself. */
function planarArea(polygons: OverlayPolygons): number {
  let sum = 0;
  for (const rings of polygons) {
    for (const [i, ring] of rings.entries()) sum += i === 0 ? ringArea(ring) : -ringArea(ring);
  }
  return sum;
}

function ringArea(ring: Ring): number {
  const [x0, y0] = ring[0] as Ring[number];
  let doubled = 0;
  for (let i = 1; i < ring.length; i++) {
    const [x1, y1] = ring[i - 1] as Ring[number];
    const [x2, y2] = ring[i] as Ring[number];
    doubled += (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
  }
  return Math.abs(doubled) / 2;
}

/** The library's types ask for arrays that may be written; it does not write them. */
function writable(polygons: OverlayPolygons): clipping.MultiPolygon {
  return polygons as clipping.MultiPolygon;
}
