import { sin } from './elementary.ts';
import { ECCENTRICITY2, RADIANS_PER_DEGREE, SEMI_MINOR_M } from './ellipsoid.ts';

type Ring = readonly (readonly [number, number])[];

/** Area between the equator and a latitude is a series in odd powers of its sine: (n+1)/(2n+1) e^2n, n = 0, 1, 2 … */
const BAND_SERIES = [0, 1, 2, 3, 4, 5, 6, 7].map((n) => {
  let coefficient = (n + 1) / (2 * n + 1);
  for (let k = 0; k < n; k++) coefficient *= ECCENTRICITY2;
  return coefficient;
});

/** Gauss-Legendre rule with three points on -1 to 1 (handbook values, exact in closed form). */
const GAUSS_NODE = Math.sqrt(3 / 5);
/** Degrees of latitude up to which the three points are right to the last bits of a double. */
const STEP_DEGREES = 1;

/**
 * Square metres of a ring on WGS 84, positive where it runs counter-clockwise. The measure is that of the equal-area
 * cylindrical projection EPSG:6933 (Snyder 1987, USGS PP 1395, eq. 3-12, by its power series); edges are straight in
 * longitude and latitude, and the band below each edge is integrated along it. Open or closed rings, in degrees.
 * Longitudes must not jump at the antimeridian, and the ring must not hold a pole.
 */
export function signedRingAreaM2(ring: Ring): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const [x1, y1] = ring[i] as Ring[number];
    const [x2, y2] = ring[(i + 1) % ring.length] as Ring[number];
    if (x1 !== x2) sum += (x1 - x2) * meanBand(y1, y2);
  }
  return sum * RADIANS_PER_DEGREE * SEMI_MINOR_M * SEMI_MINOR_M;
}

/** Square metres of a ring, whichever way it runs. */
export function ringAreaM2(ring: Ring): number {
  return Math.abs(signedRingAreaM2(ring));
}

/** Hectares of polygons given as in a GeoJSON MultiPolygon: exterior rings less their holes. */
export function polygonAreaHa(polygons: readonly (readonly Ring[])[]): number {
  let squareMetres = 0;
  for (const rings of polygons) {
    for (const [i, ring] of rings.entries()) squareMetres += i === 0 ? ringAreaM2(ring) : -ringAreaM2(ring);
  }
  return squareMetres / 10000;
}

/** Mean along a straight edge, from latitude y1 to y2, of the band area below it (in units of the semi-minor axis squared). */
function meanBand(y1: number, y2: number): number {
  const steps = Math.max(1, Math.ceil(Math.abs(y2 - y1) / STEP_DEGREES));
  const half = (y2 - y1) / (2 * steps);
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const middle = y1 + (2 * k + 1) * half;
    sum += 5 * band(middle - GAUSS_NODE * half) + 8 * band(middle) + 5 * band(middle + GAUSS_NODE * half);
  }
  return sum / (18 * steps);
}

function band(latitude: number): number {
  const s = sin(latitude * RADIANS_PER_DEGREE);
  const s2 = s * s;
  let series = 0;
  for (let n = BAND_SERIES.length - 1; n >= 0; n--) series = series * s2 + (BAND_SERIES[n] as number);
  return series * s;
}
