import { ringAreaM2 } from './equal-area.ts';

type Position = readonly [number, number];
type Ring = readonly Position[];

/**
 * A position surely inside polygons: on the parallel through the middle of the part with the largest area, in the middle
 * of its widest span. The parallel is moved half way between the vertices next to the middle, so that it passes through
 * no vertex. A part without area gives its first position. Null for an empty list.
 */
export function pointOnSurface(polygons: readonly (readonly Ring[])[]): Position | null {
  let largest: readonly Ring[] | null = null;
  let largestM2 = -1;
  for (const rings of polygons) {
    const areaM2 = rings[0] ? ringAreaM2(rings[0]) : -1;
    if (areaM2 > largestM2) [largest, largestM2] = [rings, areaM2];
  }
  const exterior = largest?.[0];
  if (!largest || !exterior) return null;
  const latitude = clearLatitude(largest);
  const span = latitude === null ? null : widestSpan(largest, latitude);
  return span && latitude !== null ? [(span[0] + span[1]) / 2, latitude] : (exterior[0] ?? null);
}

/** Half way between the nearest vertices above and below the middle; null where all lie on one parallel. */
function clearLatitude(rings: readonly Ring[]): number | null {
  const latitudes = rings.flatMap((ring) => ring.map((position) => position[1]));
  const lowest = latitudes.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const highest = latitudes.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  if (!(lowest < highest)) return null;
  const middle = (lowest + highest) / 2;
  let below = lowest;
  let above = highest;
  for (const latitude of latitudes) {
    if (latitude <= middle && latitude > below) below = latitude;
    if (latitude > middle && latitude < above) above = latitude;
  }
  return (below + above) / 2;
}

function widestSpan(rings: readonly Ring[], latitude: number): readonly [number, number] | null {
  const crossings: number[] = [];
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i++) {
      const [x1, y1] = ring[i - 1] as Position;
      const [x2, y2] = ring[i] as Position;
      if (y1 < latitude !== y2 < latitude) crossings.push(x1 + ((latitude - y1) / (y2 - y1)) * (x2 - x1));
    }
  }
  crossings.sort((a, b) => a - b);
  let widest: readonly [number, number] | null = null;
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const span = [crossings[i] as number, crossings[i + 1] as number] as const;
    if (!widest || span[1] - span[0] > widest[1] - widest[0]) widest = span;
  }
  return widest;
}
