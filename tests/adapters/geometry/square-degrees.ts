import type { OverlayPolygons } from '../../../src/engine/index.ts';

/** Planar area in square degrees, by the shoelace rule. */
export function squareDegrees(polygons: OverlayPolygons): number {
  let sum = 0;
  for (const rings of polygons) {
    for (const [i, ring] of rings.entries()) {
      let doubled = 0;
      for (const [k, [x1, y1]] of ring.entries()) {
        const [x2, y2] = ring[(k + 1) % ring.length] ?? [x1, y1];
        doubled += x1 * y2 - x2 * y1;
      }
      sum += ((i === 0 ? 1 : -1) * Math.abs(doubled)) / 2;
    }
  }
  return sum;
}

/** A closed ring around a box. */
export function boxRing(west: number, south: number, width: number, height = width): OverlayPolygons[number][number] {
  const [east, north] = [west + width, south + height];
  return [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
    [west, south],
  ];
}
