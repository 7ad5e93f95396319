// Makes the offline base map from the world-atlas package while the app is built. Nothing of it is committed.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { feature, mesh } from 'topojson-client';

/** Two decimals of a degree are about a kilometre: the sheet's own scale, 1:50 million, shows no more. */
const DECIMALS = 100;

const rounded = (value) => (Array.isArray(value) ? value.map(rounded) : Math.round(value * DECIMALS) / DECIMALS);

const atlas = (name) => {
  const path = createRequire(import.meta.url).resolve(`world-atlas/${name}.json`);
  return JSON.parse(readFileSync(path, 'utf8'));
};

const featureText = (geometry) =>
  JSON.stringify({
    type: 'Feature',
    properties: {},
    geometry: { type: geometry.type, coordinates: rounded(geometry.coordinates) },
  });

/** Texts of the base map's files by their names: land as polygons, borders between countries as lines (GeoJSON). */
export function makeBaseMap() {
  const land = atlas('land-50m');
  const countries = atlas('countries-50m');
  const [first] = feature(land, land.objects.land).features;
  const borders = mesh(countries, countries.objects.countries, (a, b) => a !== b);
  return { 'land.geojson': featureText(first.geometry), 'borders.geojson': featureText(borders) };
}
