import { signedRingAreaM2 } from './equal-area.ts';

type Position = readonly [number, number];
type Ring = readonly Position[];

/** The same polygons with exterior rings counter-clockwise and holes clockwise, as RFC 7946 section 3.1.6 asks of a writer. */
export function rewindPolygons(polygons: readonly (readonly Ring[])[]): readonly (readonly Ring[])[] {
  return polygons.map((rings) => rings.map((ring, i) => windRing(ring, i === 0)));
}

function windRing(ring: Ring, counterClockwise: boolean): Ring {
  return signedRingAreaM2(ring) > 0 === counterClockwise ? ring : [...ring].reverse();
}
