type Position = readonly [number, number];
type Ring = readonly Position[];

export type Whereabouts = 'inside' | 'edge' | 'outside';

/**
 * Where a position stands to polygons (as in a GeoJSON MultiPolygon, rings closed): even-odd rule, planar in longitude
 * and latitude. Every edge is judged from its lower end, so two polygons that share an edge never both claim a position
 * beside it, nor both disown it.
 */
export function locateInPolygons(position: Position, polygons: readonly (readonly Ring[])[]): Whereabouts {
  for (const rings of polygons) {
    let inside = false;
    for (const [i, ring] of rings.entries()) {
      const found = locateInRing(position, ring);
      if (found === 'edge') return 'edge';
      if (i === 0) inside = found === 'inside';
      else if (found === 'inside') inside = false;
      if (!inside) break;
    }
    if (inside) return 'inside';
  }
  return 'outside';
}

/** True inside and on the edge. */
export function pointInPolygons(position: Position, polygons: readonly (readonly Ring[])[]): boolean {
  return locateInPolygons(position, polygons) !== 'outside';
}

function locateInRing([x, y]: Position, ring: Ring): Whereabouts {
  let inside = false;
  for (let i = 1; i < ring.length; i++) {
    const a = ring[i - 1] as Position;
    const b = ring[i] as Position;
    if ((y < a[1] && y < b[1]) || (y > a[1] && y > b[1])) continue;
    const low = a[1] <= b[1] ? a : b;
    const high = low === a ? b : a;
    // Above nought: the position lies to the left of the edge as it rises.
    const side = (high[0] - low[0]) * (y - low[1]) - (high[1] - low[1]) * (x - low[0]);
    const withinX = x >= Math.min(a[0], b[0]) && x <= Math.max(a[0], b[0]);
    if (side === 0 && withinX) return 'edge';
    // Half open, so that a vertex between two edges is crossed once.
    if (y < high[1] && side > 0) inside = !inside;
  }
  return inside ? 'inside' : 'outside';
}
