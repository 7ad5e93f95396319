import geographiclib from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import type { MultiPolygon, Position, Ring } from '../../src/engine/index.ts';
import { boundingBox } from '../../src/engine/numerics/bounding-box.ts';
import { polygonAreaHa } from '../../src/engine/numerics/equal-area.ts';
import { pointInPolygons } from '../../src/engine/numerics/point-in-polygon.ts';
import { pointOnSurface } from '../../src/engine/numerics/point-on-surface.ts';
import { readCounties, readPackage } from './open-data.ts';

const counties = readCounties();

/** Degrees: so short that a geodesic and a line straight in longitude and latitude are the same. */
const STEP = 0.01;

/** Hectares by geographiclib-geodesic (Karney 2013, J. Geodesy 87:43-55). */
function referenceHa(polygons: MultiPolygon): number {
  let hectares = 0;
  for (const rings of polygons) {
    for (const [i, ring] of rings.entries()) hectares += (i === 0 ? 1 : -1) * referenceRingHa(ring);
  }
  return hectares;
}

function referenceRingHa(ring: Ring): number {
  const polygon = geographiclib.Geodesic.WGS84.Polygon(false);
  for (let i = 1; i < ring.length; i++) {
    const [x1, y1] = ring[i - 1] as Position;
    const [x2, y2] = ring[i] as Position;
    const parts = Math.max(1, Math.ceil(Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1)) / STEP));
    for (let k = 0; k < parts; k++) polygon.AddPoint(y1 + ((y2 - y1) * k) / parts, x1 + ((x2 - x1) * k) / parts);
  }
  return Math.abs(polygon.Compute(false, true).area ?? Number.NaN) / 1e4;
}

describe('counties of the United States (us-atlas 3.0.1, US Census Bureau, public domain)', () => {
  it('are all there', () => {
    expect(counties.length).toBe(3231);
  });

  it('have the area of the reference library within 1e-5, its edges made to follow ours', () => {
    const every16th = counties.filter((_, i) => i % 16 === 0);
    for (const { polygons } of every16th) {
      const own = polygonAreaHa(polygons);
      expect(Math.abs(own / referenceHa(polygons) - 1)).toBeLessThan(1e-5);
    }
  });

  it('hold their own point on the surface, and no other county does', () => {
    for (const { polygons } of counties.slice(0, 400)) {
      const point = pointOnSurface(polygons) as Position;
      expect(counties.filter((other) => other.polygons !== polygons && pointInPolygons(point, other.polygons))).toEqual(
        [],
      );
      expect(pointInPolygons(point, polygons)).toBe(true);
    }
  });

  it('hold the postal codes that name them (vega-datasets zipcodes.csv, GeoNames, CC BY 4.0): 98 in 100', () => {
    const boxed = counties.map((county) => ({ ...county, box: boundingBox(county.polygons.flat(2)) }));
    const rows = readPackage('vega-datasets/data/zipcodes.csv').trim().split('\n').slice(1);
    let [located, agreeing, inSeveral] = [0, 0, 0];
    for (const row of rows.filter((_, i) => i % 8 === 0)) {
      const [, lat, lon, , , named = ''] = row.split(',');
      const point: Position = [Number(lon), Number(lat)];
      const holding = boxed.filter(({ box, polygons }) => box && inBox(point, box) && pointInPolygons(point, polygons));
      if (holding.length > 0) located++;
      if (holding.length > 1) inSeveral++;
      if (holding.some(({ name }) => plainName(name) === plainName(named))) agreeing++;
    }
    expect(located).toBeGreaterThan(5100);
    expect(inSeveral).toBe(0);
    // The rest: postal codes placed at a city in the next county, counties renamed since, abbreviations.
    expect(agreeing / located).toBeGreaterThan(0.98);
  });
});

function inBox([x, y]: Position, [west, south, east, north]: readonly [number, number, number, number]): boolean {
  return y >= south && y <= north && (west <= east ? x >= west && x <= east : x >= west || x <= east);
}

/** Names without spaces, accents and the words for a kind of county. */
function plainName(name: string): string {
  return name
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z]/g, '')
    .replace(/^saint/, 'st')
    .replace(/(city|borough|censusarea|municipality|municipio|parish)$/, '');
}
