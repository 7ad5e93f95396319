import { cos, log, sin } from '../numerics/elementary.ts';
import type { MultiPolygon, Position } from '../vocabulary/places.ts';

/** WGS 84 (defining constants; NIMA TR8350.2). */
const EQUATOR_KM = 6378.137;
const FLATTENING = 1 / 298.257223563;
const E2 = FLATTENING * (2 - FLATTENING);
const E = Math.sqrt(E2);
const RAD = Math.PI / 180;

/**
 * Distance by the radii of curvature at the middle latitude: right to 1e-6 over a road segment and to 2e-3 over some
 * hundred kilometres, which is all that the checker asks of it.
 */
export function segmentKm(a: Position, b: Position): number {
  const middle = ((a[1] + b[1]) / 2) * RAD;
  const s = sin(middle);
  const w = 1 - E2 * s * s;
  const north = (EQUATOR_KM * (1 - E2)) / (w * Math.sqrt(w));
  const east = (EQUATOR_KM / Math.sqrt(w)) * cos(middle);
  const dx = (b[0] - a[0]) * RAD * east;
  const dy = (b[1] - a[1]) * RAD * north;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Authalic q of a latitude: area between it and the equator is a^2 q / 2 per radian of longitude (Snyder 1987, eq 3-12). */
function authalicQ(latitude: number): number {
  const s = sin(latitude * RAD);
  return (1 - E2) * (s / (1 - E2 * s * s) - log((1 - E * s) / (1 + E * s)) / (2 * E));
}

/** Longitudes where the rings cross a latitude, ascending: inside lies between the first and second, third and fourth … */
export function crossings(polygons: MultiPolygon, latitude: number): number[] {
  const found: number[] = [];
  for (const rings of polygons)
    for (const ring of rings)
      for (let i = 1; i < ring.length; i++) {
        const a = ring[i - 1] as Position;
        const b = ring[i] as Position;
        if (a[1] > latitude !== b[1] > latitude) found.push(a[0] + ((latitude - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
      }
  return found.sort((x, y) => x - y);
}

/** Length of what two sets of intervals have in common. */
export function commonWidth(one: readonly number[], other: readonly number[]): number {
  let width = 0;
  let j = 0;
  for (let i = 0; i + 1 < one.length; i += 2) {
    const from = one[i] as number;
    const to = one[i + 1] as number;
    while (j + 1 < other.length && (other[j + 1] as number) < from) j += 2;
    for (let k = j; k + 1 < other.length && (other[k] as number) < to; k += 2)
      width += Math.max(0, Math.min(to, other[k + 1] as number) - Math.max(from, other[k] as number));
  }
  return width;
}

export function widthOf(intervals: readonly number[]): number {
  let width = 0;
  for (let i = 0; i + 1 < intervals.length; i += 2) width += (intervals[i + 1] as number) - (intervals[i] as number);
  return width;
}

export interface Box {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

export function boxOf(polygons: MultiPolygon): Box {
  let [west, south, east, north] = [180, 90, -180, -90];
  for (const rings of polygons)
    for (const [lon, lat] of rings[0] ?? []) {
      [west, east] = [Math.min(west, lon), Math.max(east, lon)];
      [south, north] = [Math.min(south, lat), Math.max(north, lat)];
    }
  return { west, south, east, north };
}

/** Middle latitudes of `lines` strips of equal height. */
export function scanLatitudes({ south, north }: Box, lines: number): number[] {
  return Array.from({ length: lines }, (_, i) => south + ((north - south) * (i + 0.5)) / lines);
}

/**
 * Hectares of rings whose edges are straight in longitude and latitude: the authalic q integrated along each edge by
 * Simpson's rule. Right for rings that do not cross themselves.
 */
export function areaByEdgesHa(polygons: MultiPolygon): number {
  let total = 0;
  for (const rings of polygons)
    rings.forEach((ring, r) => {
      let turn = 0;
      for (let i = 1; i < ring.length; i++) {
        const [lonA, latA] = ring[i - 1] as Position;
        const [lonB, latB] = ring[i] as Position;
        if (lonA === lonB) continue;
        turn += ((lonB - lonA) * (authalicQ(latA) + 4 * authalicQ((latA + latB) / 2) + authalicQ(latB))) / 6;
      }
      total += (r === 0 ? 1 : -1) * Math.abs(turn);
    });
  return total * RAD * 0.5 * EQUATOR_KM * EQUATOR_KM * 100;
}

/** Hectares by strips, a place being inside where an odd number of edges lie west of it: survives rings that cross themselves. */
export function areaByStripsHa(polygons: MultiPolygon, strips: number): number {
  const box = boxOf(polygons);
  const height = (box.north - box.south) / strips;
  let total = 0;
  for (const latitude of scanLatitudes(box, strips))
    total +=
      widthOf(crossings(polygons, latitude)) * (authalicQ(latitude + height / 2) - authalicQ(latitude - height / 2));
  return total * RAD * 0.5 * EQUATOR_KM * EQUATOR_KM * 100;
}

/** Is a place inside, by the number of edges to its west? On an edge either answer may come. */
export function isInside([lon, lat]: Position, polygons: MultiPolygon): boolean {
  return crossings(polygons, lat).filter((crossing) => crossing < lon).length % 2 === 1;
}

/** Distance to the nearest edge, km. */
export function kmToEdge(position: Position, polygons: MultiPolygon): number {
  let least = Number.POSITIVE_INFINITY;
  for (const rings of polygons)
    for (const ring of rings)
      for (let i = 1; i < ring.length; i++)
        least = Math.min(least, nearestOnSegment(position, ring[i - 1] as Position, ring[i] as Position).km);
  return least;
}

/** Nearest place on a segment: fraction along it and the distance. Flat at the latitude of the position. */
export function nearestOnSegment(p: Position, a: Position, b: Position): { readonly t: number; readonly km: number } {
  const shrink = cos(p[1] * RAD);
  const dx = (b[0] - a[0]) * shrink;
  const dy = b[1] - a[1];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((p[0] - a[0]) * shrink * dx + (p[1] - a[1]) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  return { t, km: segmentKm(p, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]) };
}
