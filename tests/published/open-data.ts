import { readFileSync } from 'node:fs';
import type { MultiPolygon as GeoJsonMultiPolygon, Polygon as GeoJsonPolygon } from 'geojson';
import { feature } from 'topojson-client';
import type { MultiPolygon } from '../../src/engine/index.ts';

export interface County {
  readonly id: string;
  readonly name: string;
  readonly polygons: MultiPolygon;
}

/** Counties of us-atlas 3.0.1 (US Census Bureau, public domain; package ISC). */
export function readCounties(): readonly County[] {
  const topology = JSON.parse(readPackage('us-atlas/counties-10m.json'));
  return feature(topology, topology.objects.counties).features.map(({ id, properties, geometry }) => {
    const { type, coordinates } = geometry as GeoJsonPolygon | GeoJsonMultiPolygon;
    const polygons = type === 'Polygon' ? [coordinates] : coordinates;
    return { id: String(id), name: String(properties?.['name']), polygons: polygons as unknown as MultiPolygon };
  });
}

export function readPackage(file: string): string {
  return readFileSync(new URL(`../../node_modules/${file}`, import.meta.url), 'utf8');
}
