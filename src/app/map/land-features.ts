import type { Feature, FeatureCollection, Geometry } from 'geojson';
import type { PlaceGeometry, Position, Scenario } from '../../engine/index.ts';
import { borderLines, type MapLabel, type MapLine, type MapSymbol } from '../../presentation/views/map-view.ts';

const collection = (features: Feature[]): FeatureCollection => ({ type: 'FeatureCollection', features });

const feature = (geometry: Geometry, properties: Feature['properties'] = {}, id?: number): Feature => ({
  type: 'Feature',
  geometry,
  properties,
  ...(id === undefined ? {} : { id }),
});

export const NO_FEATURES = collection([]);

/** The map library's types ask for arrays that may be written; it does not write them. */
function geometryOf(place: PlaceGeometry): Geometry {
  return place.kind === 'point'
    ? { type: 'Point', coordinates: [...place.position] }
    : { type: 'MultiPolygon', coordinates: place.polygons as unknown as number[][][][] };
}

const linesOf = (lines: readonly (readonly Position[])[]): Geometry => ({
  type: 'MultiLineString',
  coordinates: lines as unknown as number[][][],
});

/** Communities under their index, by which they are coloured and chosen. */
export function communityFeatures({ communities }: Scenario): FeatureCollection {
  return collection(communities.map(({ geometry }, index) => feature(geometryOf(geometry), { index }, index)));
}

export function borderFeatures({ zones }: Scenario): FeatureCollection {
  const areas = zones.flatMap(({ geometry }) => (geometry.kind === 'area' ? [geometry.polygons] : []));
  const { outer, inner } = borderLines(areas);
  return collection([feature(linesOf(outer), { kind: 'outer' }), feature(linesOf(inner), { kind: 'inner' })]);
}

export function roadFeatures({ roads }: Scenario): FeatureCollection {
  return collection(
    roads.map(({ positions, roadClass }) =>
      feature({ type: 'LineString', coordinates: positions as unknown as number[][] }, { roadClass }),
    ),
  );
}

/** The chosen zone and community, to be framed. */
export function chosenFeatures(
  scenario: Scenario,
  zoneId: string | null,
  communityId: string | null,
): FeatureCollection {
  const zone = scenario.zones.find(({ id }) => id === zoneId);
  const community = scenario.communities.find(({ id }) => id === communityId);
  const places = [zone, community].filter((place) => place !== undefined);
  return collection(places.map(({ geometry }) => feature(geometryOf(geometry))));
}

export function hatchFeatures(scenario: Scenario, hatches: readonly (string | null)[]): FeatureCollection {
  const hatched = hatches.flatMap((hatch, index) => {
    const geometry = scenario.communities[index]?.geometry;
    return hatch === null || geometry === undefined ? [] : [feature(geometryOf(geometry), { hatch })];
  });
  return collection(hatched);
}

export const lineFeatures = (lines: readonly MapLine[], colourOf: (tone: string) => string): FeatureCollection =>
  collection(
    lines.map(({ positions, pattern, tone }) =>
      feature(
        { type: 'LineString', coordinates: positions as unknown as number[][] },
        { pattern, colour: colourOf(tone) },
      ),
    ),
  );

export const labelFeatures = (labels: readonly MapLabel[]): FeatureCollection =>
  collection(
    labels.map(({ position, text, figure }) =>
      feature({ type: 'Point', coordinates: [...position] }, { text, figure: figure === null ? '' : `\n${figure}` }),
    ),
  );

export const symbolFeatures = (symbols: readonly MapSymbol[]): FeatureCollection =>
  collection(
    symbols.map(({ kind, position, text, size }) =>
      feature({ type: 'Point', coordinates: [...position] }, { kind, text, scale: size / 18 }),
    ),
  );
