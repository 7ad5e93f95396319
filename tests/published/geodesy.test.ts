import geographiclib from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { boundingBox, boxWidthDegrees } from '../../src/engine/numerics/bounding-box.ts';
import { polygonAreaHa, ringAreaM2, signedRingAreaM2 } from '../../src/engine/numerics/equal-area.ts';
import { geodesicKm, lineKm } from '../../src/engine/numerics/geodesic-length.ts';
import { RandomStream } from '../../src/engine/numerics/random-stream.ts';
import { rewindPolygons } from '../../src/engine/numerics/ring-winding.ts';

const { WGS84 } = geographiclib.Geodesic;
type LatLon = readonly [number, number];
type LonLat = readonly [number, number];

/** Area and perimeter by the reference library, positions as latitude and longitude. */
function reference(corners: readonly LatLon[]): { area: number; perimeter: number } {
  const polygon = WGS84.Polygon(false);
  for (const [lat, lon] of corners) polygon.AddPoint(lat, lon);
  const { area = Number.NaN, perimeter } = polygon.Compute(false, true);
  return { area: Math.abs(area), perimeter };
}

function referenceKm([x1, y1]: LonLat, [x2, y2]: LonLat): number {
  return (WGS84.Inverse(y1, x1, y2, x2).s12 as number) / 1000;
}

const lonLat = (corners: readonly LatLon[]): LonLat[] => corners.map(([lat, lon]) => [lon, lat]);

const ANTARCTICA: readonly LatLon[] = [
  [-63.1, -58],
  [-72.9, -74],
  [-71.9, -102],
  [-74.9, -102],
  [-74.3, -131],
  [-77.5, -163],
  [-77.4, 163],
  [-71.7, 172],
  [-65.9, 140],
  [-65.7, 113],
  [-66.6, 88],
  [-66.9, 59],
  [-69.8, 25],
  [-70.0, -4],
  [-71.0, -14],
  [-77.3, -33],
  [-77.9, -46],
  [-74.7, -61],
];

describe('the reference library, geographiclib-geodesic (Karney 2013, J. Geodesy 87:43-55), on its published values', () => {
  it('Antarctica (GeographicLib documentation, read)', () => {
    const { area, perimeter } = reference(ANTARCTICA);
    expect(perimeter).toBeCloseTo(16831067.893, 3);
    expect(Math.abs(area - 13662703680020.1)).toBeLessThan(0.1);
  });

  it('Wellington to Salamanca (GeographicLib documentation, read)', () => {
    expect(referenceKm([174.81, -41.32], [-5.5, 40.96]) * 1000).toBeCloseTo(19959679.267, 3);
  });

  it('JFK to LHR (coordinates read, distance derived)', () => {
    expect(referenceKm([-73.8, 40.6], [-0.5, 51.6]) * 1000).toBeCloseTo(5551759.4, 3);
  });

  it('JFK to Singapore (GeodSolve manual, read)', () => {
    const jfk: LatLon = [40 + 38 / 60 + 23 / 3600, -(73 + 46 / 60 + 44 / 3600)];
    const singapore: LatLon = [1 + 21 / 60 + 33 / 3600, 103 + 59 / 60 + 22 / 3600];
    const { s12, azi1 } = WGS84.Inverse(...jfk, ...singapore);
    expect(Math.abs((s12 as number) - 15347628)).toBeLessThan(1);
    expect(azi1).toBeCloseTo(3.30831, 5);
  });

  it('polar cap at 89 degrees (GeographicLib tests, read)', () => {
    const cap = reference([0, 90, 180, 270].map((lon): LatLon => [89, lon]));
    expect(cap.perimeter).toBeCloseTo(631819.8745, 4);
    expect(Math.abs(cap.area - 24952305678)).toBeLessThan(1);
  });
});

describe('own equal-area measure', () => {
  it('triangle of 150 to 250 km edges (GeographicLib tests, read): within 1e-4 along geodesics', () => {
    const triangle: readonly LatLon[] = [
      [2, 1],
      [1, 2],
      [3, 3],
    ];
    expect(Math.abs(reference(triangle).area - 18454562325.45)).toBeLessThan(0.5);
    expect(Math.abs(ringAreaM2(lonLat(alongGeodesics(triangle, 8))) / 18454562325.45 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(ringAreaM2(lonLat(alongGeodesics(triangle, 2))) / 18454562325.45 - 1)).toBeLessThan(1e-4);
    // As the corners stand, edges are straight in longitude and latitude (RFC 7946) and the triangle is another one.
    expect(ringAreaM2(lonLat(triangle)) / 18454562325.45 - 1).toBeCloseTo(-1.277e-4, 6);
  });

  it('square of 1000 m from (0, 0) within 1e-5 (GeographicLib tests, read)', () => {
    const corners: LatLon[] = [[0, 0]];
    for (const azimuth of [90, 0, -90]) {
      const [lat, lon] = corners.at(-1) as LatLon;
      const { lat2, lon2 } = WGS84.Direct(lat, lon, azimuth, 1000);
      corners.push([lat2 as number, lon2 as number]);
    }
    expect(Math.abs(ringAreaM2(lonLat(corners)) / 1e6 - 1)).toBeLessThan(1e-5);
  });

  it('box of 0.1 degrees at 12 N 8 E within 1e-5 (derived)', () => {
    expect(Math.abs(ringAreaM2(box(8, 12, 0.1)) / 120448800.12 - 1)).toBeLessThan(1e-5);
  });

  it('a sphere of the authalic radius overstates a cell of 0.5 degrees at 13 N by 0.378 percent (derived)', () => {
    const radius = 6371007.18;
    const sine = (degrees: number) => Math.sin((degrees * Math.PI) / 180);
    const spherical = radius ** 2 * ((0.5 * Math.PI) / 180) * (sine(13.5) - sine(13));
    expect((spherical / ringAreaM2(box(8, 13, 0.5)) - 1) * 100).toBeCloseTo(0.378, 3);
  });

  it('the whole ellipsoid but for the poles (GeographicLib tests, read: 510065621724088.5 m2)', () => {
    expect(
      ringAreaM2([
        [-180, -90],
        [180, -90],
        [180, 90],
        [-180, 90],
      ]) / 510065621724088.5,
    ).toBeCloseTo(1, 12);
  });

  it('equals Snyder 1987 eq. 3-12 in closed form, with the EPSG:6933 edges replaced by short ones', () => {
    const stream = new RandomStream(7);
    for (let trial = 0; trial < 50; trial++) {
      const [x, y] = [stream.next() * 300 - 150, stream.next() * 130 - 65];
      const corners: LonLat[] = [0, 1, 2, 3, 4].map((k) => {
        const [turn, radius] = [(k * 2 * Math.PI) / 5, 0.2 + stream.next()];
        return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
      });
      const projected = planarM2(split(corners, 400).map(projectEqualArea));
      expect(ringAreaM2(corners) / projected).toBeCloseTo(1, 7);
    }
  });

  it('takes holes off, and the sign tells the winding', () => {
    const [outer, hole] = [closed(box(30, -15, 0.1)), closed(box(30.02, -14.98, 0.03))];
    expect(polygonAreaHa([[outer, hole]])).toBeCloseTo((ringAreaM2(outer) - ringAreaM2(hole)) / 1e4, 6);
    expect(signedRingAreaM2(outer)).toBeGreaterThan(0);
    expect(signedRingAreaM2([...outer].reverse())).toBe(-signedRingAreaM2(outer));
  });
});

describe('own geodesic length', () => {
  it.each([
    [0.1, 1e-10],
    [1, 1e-10],
    [10, 1e-10],
    [100, 1e-10],
    [300, 1e-8],
    [1000, 1e-7],
    [3000, 5e-6],
  ])('over %d km within %d of the reference library', (km, tolerance) => {
    const stream = new RandomStream(11);
    for (let trial = 0; trial < 500; trial++) {
      const from: LatLon = [stream.next() * 160 - 80, stream.next() * 360 - 180];
      const { lat2, lon2 } = WGS84.Direct(...from, stream.next() * 360, km * 1000);
      const own = geodesicKm([from[1], from[0]], [lon2 as number, lat2 as number]);
      expect(Math.abs(own / km - 1)).toBeLessThan(tolerance);
    }
  });

  it('a haversine of radius 6371008.77 overstates a degree of latitude at 10 N by 0.528 percent (derived)', () => {
    expect(geodesicKm([0, 10], [0, 11]) * 1000).toBeCloseTo(110611.187, 2);
    const haversine = (6371008.77 * Math.PI) / 180;
    expect((haversine / (geodesicKm([0, 10], [0, 11]) * 1000) - 1) * 100).toBeCloseTo(0.528, 3);
  });

  it('polyline (1,1) to (2,2) (GeographicLib tests, read: 156876.149 m)', () => {
    expect(
      lineKm([
        [1, 1],
        [1.5, 1.5],
        [2, 2],
      ]),
    ).toBeCloseTo(156.876, 3);
    expect(geodesicKm([1, 1], [2, 2]) * 1000).toBeCloseTo(156876.149, 3);
  });

  it('is nought from a position to itself', () => {
    expect(geodesicKm([34.5, -13.2], [34.5, -13.2])).toBe(0);
  });
});

describe('RFC 7946', () => {
  it('winds exterior rings counter-clockwise and holes clockwise (section 3.1.6; example of geojson-rewind, read)', () => {
    const clockwise = [
      [
        [100, 0],
        [100, 1],
        [101, 1],
        [101, 0],
        [100, 0],
      ],
    ] as const;
    const wound: LonLat[] = [
      [100, 0],
      [101, 0],
      [101, 1],
      [100, 1],
      [100, 0],
    ];
    expect(rewindPolygons([clockwise])).toEqual([[wound]]);
    expect(rewindPolygons([[wound]])).toEqual([[wound]]);
    const hole = closed(box(100.2, 0.2, 0.1));
    expect(rewindPolygons([[wound, hole]])[0]?.[1]).toEqual([...hole].reverse());
  });

  it('a box across the antimeridian spans 5 degrees (section 5.2, read: [177,-20,-178,-16])', () => {
    const fiji = boundingBox([
      [177, -20],
      [179.5, -16],
      [-178, -18],
    ]);
    expect(fiji).toEqual([177, -20, -178, -16]);
    expect(boxWidthDegrees(fiji ?? [0, 0, 0, 0])).toBe(5);
    expect(
      boundingBox([
        [33, -15],
        [35, -12],
      ]),
    ).toEqual([33, -15, 35, -12]);
    expect(boundingBox([])).toBeNull();
  });
});

function box(west: number, south: number, size: number): LonLat[] {
  return [
    [west, south],
    [west + size, south],
    [west + size, south + size],
    [west, south + size],
  ];
}

const closed = (ring: readonly LonLat[]): LonLat[] => [...ring, ring[0] as LonLat];

/** The same ring with positions put in along the geodesics between its corners. */
function alongGeodesics(corners: readonly LatLon[], parts: number): LatLon[] {
  return corners.flatMap((from, i) => {
    const line = WGS84.InverseLine(...from, ...(corners[(i + 1) % corners.length] as LatLon));
    return Array.from({ length: parts }, (_, k): LatLon => {
      const { lat2, lon2 } = line.Position((line.s13 * k) / parts);
      return [lat2 as number, lon2 as number];
    });
  });
}

/** The same ring with each edge cut into straight parts. */
function split(ring: readonly LonLat[], parts: number): LonLat[] {
  return ring.flatMap(([x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length] as LonLat;
    return Array.from(
      { length: parts },
      (_, k): LonLat => [x1 + ((x2 - x1) * k) / parts, y1 + ((y2 - y1) * k) / parts],
    );
  });
}

/** EPSG:6933 without its scale along the parallel, which cancels: x = a lon, y = a q / 2 (Snyder 1987, eq. 3-12). */
function projectEqualArea([lon, lat]: LonLat): LonLat {
  const [a, f] = [6378137, 1 / 298.257223563];
  const e2 = f * (2 - f);
  const e = Math.sqrt(e2);
  const s = Math.sin((lat * Math.PI) / 180);
  const q = (1 - e2) * (s / (1 - e2 * s * s) - Math.log((1 - e * s) / (1 + e * s)) / (2 * e));
  return [(a * lon * Math.PI) / 180, (a * q) / 2];
}

function planarM2(ring: readonly LonLat[]): number {
  let doubled = 0;
  for (const [i, [x1, y1]] of ring.entries()) {
    const [x2, y2] = ring[(i + 1) % ring.length] as LonLat;
    doubled += x1 * y2 - x2 * y1;
  }
  return Math.abs(doubled) / 2;
}
