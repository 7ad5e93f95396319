import type { LayerSpecification, StyleSpecification } from 'maplibre-gl';
import { NO_FEATURES } from './land-features.ts';

/** Glyphs are drawn from a font of the page: no address for glyphs is given, so none is fetched. The name says the weight. */
export const MAP_FACE = 'Nodulary Map Semibold';

export type ColourOf = (token: string) => string;

/** Sources that are filled with the district and with what a view says. */
export const DISTRICT_SOURCES = [
  'communities',
  'hatches',
  'roads',
  'borders',
  'lines',
  'chosen',
  'symbols',
  'labels',
] as const;
export type DistrictSource = (typeof DISTRICT_SOURCES)[number];

/** The style of the offline map: land and borders from the build, the district from the scenario, colours from tokens.css. */
export function baseStyle(colourOf: ColourOf): StyleSpecification {
  const own = DISTRICT_SOURCES.map((name) => [name, { type: 'geojson', data: NO_FEATURES }] as const);
  const base = (name: string) => new URL(`base-map/${name}.geojson`, document.baseURI).href;
  return {
    version: 8,
    sources: {
      land: { type: 'geojson', data: base('land') },
      countries: { type: 'geojson', data: base('borders') },
      ...Object.fromEntries(own),
    },
    layers: layers(colourOf),
  };
}

/** Part of a pattern of tokens.css in widths of the line. */
const DASHES = { b: [3.7, 1.3], c: [3.3, 1, 0.8, 1], d: [1.3, 1] } as const;

function layers(colourOf: ColourOf): LayerSpecification[] {
  const roadWidth = ['match', ['get', 'roadClass'], ['trunk', 'primary'], 2.2, 'secondary', 1.5, 'tertiary', 1, 0.7];
  const line = (id: string, source: string, paint: object, more: object = {}): LayerSpecification =>
    ({ id, type: 'line', source, paint, layout: { 'line-join': 'round' }, ...more }) as LayerSpecification;
  const tone = ['to-color', ['feature-state', 'colour'], colourOf('ground')];
  return [
    { id: 'water', type: 'background', paint: { 'background-color': colourOf('water') } },
    { id: 'land', type: 'fill', source: 'land', paint: { 'fill-color': colourOf('sheet'), 'fill-antialias': false } },
    line('countries', 'countries', { 'line-color': colourOf('rule-strong'), 'line-width': 1 }),
    {
      id: 'communities',
      type: 'fill',
      source: 'communities',
      filter: ['!=', ['geometry-type'], 'Point'],
      paint: { 'fill-color': tone, 'fill-outline-color': colourOf('sheet') },
    } as unknown as LayerSpecification,
    {
      id: 'hatches',
      type: 'fill',
      source: 'hatches',
      paint: { 'fill-pattern': ['concat', 'hatch-', ['get', 'hatch']] },
    },
    line('community-edges', 'communities', { 'line-color': colourOf('sheet'), 'line-width': 0.8 }),
    line('roads', 'roads', { 'line-color': colourOf('ink-faint'), 'line-opacity': 0.55, 'line-width': roadWidth }),
    line(
      'zone-borders',
      'borders',
      { 'line-color': colourOf('ink-soft'), 'line-width': 1, 'line-dasharray': [4, 2] },
      { filter: ['==', ['get', 'kind'], 'inner'] },
    ),
    line(
      'outline',
      'borders',
      { 'line-color': colourOf('ink'), 'line-width': 1.8 },
      { filter: ['==', ['get', 'kind'], 'outer'] },
    ),
    {
      id: 'community-points',
      type: 'circle',
      source: 'communities',
      filter: ['==', ['geometry-type'], 'Point'],
      paint: {
        'circle-radius': 5,
        'circle-color': tone,
        'circle-stroke-color': colourOf('ink-soft'),
        'circle-stroke-width': 1,
      },
    } as unknown as LayerSpecification,
    line('chosen', 'chosen', { 'line-color': colourOf('picked'), 'line-width': 2.5 }),
    line('line-casing', 'lines', { 'line-color': colourOf('sheet'), 'line-width': 6 }),
    line(
      'lines-a',
      'lines',
      { 'line-color': ['get', 'colour'], 'line-width': 3 },
      { filter: ['==', ['get', 'pattern'], 'a'] },
    ),
    ...(['b', 'c', 'd'] as const).map((pattern) =>
      line(
        `lines-${pattern}`,
        'lines',
        { 'line-color': ['get', 'colour'], 'line-width': 3, 'line-dasharray': DASHES[pattern] },
        { filter: ['==', ['get', 'pattern'], pattern] },
      ),
    ),
    {
      id: 'depots',
      type: 'symbol',
      source: 'symbols',
      filter: ['==', ['get', 'kind'], 'depot'],
      layout: { 'icon-image': 'depot', 'icon-size': ['get', 'scale'], 'icon-allow-overlap': true },
    },
    {
      id: 'labels',
      type: 'symbol',
      source: 'labels',
      layout: {
        'text-field': ['concat', ['get', 'text'], ['get', 'figure']],
        'text-font': [MAP_FACE],
        'text-size': 12,
        'text-line-height': 1.1,
        'text-padding': 1,
      },
      paint: { 'text-color': colourOf('ink'), 'text-halo-color': colourOf('sheet'), 'text-halo-width': 1.6 },
    },
  ];
}
