type Position = readonly [number, number];

/** [west, south, east, north] in degrees. West above east: the box crosses the antimeridian (RFC 7946 section 5.2). */
export type BoundingBox = readonly [number, number, number, number];

/** Narrowest box around positions: it crosses the antimeridian where that is the shorter way round. Null for none. */
export function boundingBox(positions: readonly Position[]): BoundingBox | null {
  if (positions.length === 0) return null;
  let south = Number.POSITIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (const [, y] of positions) {
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  const longitudes = positions.map(([x]) => x).sort((a, b) => a - b);
  let west = longitudes[0] as number;
  let east = longitudes[longitudes.length - 1] as number;
  let widestGap = 360 - (east - west);
  for (let i = 1; i < longitudes.length; i++) {
    const [left, right] = [longitudes[i - 1] as number, longitudes[i] as number];
    if (right - left > widestGap) [widestGap, west, east] = [right - left, right, left];
  }
  return [west, south, east, north];
}

/** Degrees of longitude that a box spans. */
export function boxWidthDegrees([west, , east]: BoundingBox): number {
  return west <= east ? east - west : east - west + 360;
}
