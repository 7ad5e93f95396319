import type { OverlayPolygons } from '../../engine/index.ts';

export type Rings = OverlayPolygons[number];
export type Ring = Rings[number];

/** The ring with its first position repeated at the end. */
function closeRing(ring: Ring): Ring {
  const first = ring[0];
  const last = ring[ring.length - 1];
  return first && last && (first[0] !== last[0] || first[1] !== last[1]) ? [...ring, first] : ring;
}

/** Polygons with closed rings. Rings of fewer than three positions cover nothing and are left out, a polygon with its exterior ring. */
export function closeRings(polygons: OverlayPolygons): OverlayPolygons {
  const closed: Rings[] = [];
  for (const rings of polygons) {
    const [exterior, ...holes] = rings.map(closeRing);
    if (exterior && coversGround(exterior)) closed.push([exterior, ...holes.filter(coversGround)]);
  }
  return closed;
}

function coversGround(closed: Ring): boolean {
  return closed.length >= 4;
}
