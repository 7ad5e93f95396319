import type { MultiPolygon, Position, Ring, Scenario } from '../../engine/index.ts';

/** A colour of tokens.css, without its dashes: `share-3` stands for `--share-3`. */
export type Tone = string;
/** Hatches of tokens.css: how much is missing, all of it, or not known. */
export type Hatch = 'some' | 'much' | 'nothing' | 'unknown';

export interface MapLine {
  readonly positions: readonly Position[];
  /** Line pattern of a vehicle (a solid, b long dash, c dash and dot, d short dash). */
  readonly pattern: 'a' | 'b' | 'c' | 'd';
  readonly tone: Tone;
}

export interface MapLabel {
  readonly position: Position;
  readonly text: string;
  /** A second line in plain weight, such as a percentage. */
  readonly figure: string | null;
}

export interface MapSymbol {
  readonly kind: 'depot' | 'station' | 'stop' | 'stop-done' | 'stop-now' | 'vehicle' | 'problem';
  readonly position: Position;
  readonly text: string;
  readonly tone: Tone;
  /** Pixels across. */
  readonly size: number;
}

/**
 * What a view puts on the map over the district's land. Fills and hatches are by community, in the scenario's order; null
 * leaves the paper bare.
 */
export interface MapPicture {
  readonly fills: readonly (Tone | null)[];
  readonly hatches: readonly (Hatch | null)[];
  readonly lines: readonly MapLine[];
  readonly labels: readonly MapLabel[];
  readonly symbols: readonly MapSymbol[];
}

export const EMPTY_PICTURE: MapPicture = { fills: [], hatches: [], lines: [], labels: [], symbols: [] };

/** The lowest share of each class of `--share-1` … `--share-6`, percent: below 50, 50, 70, 85, 95, all. */
export const SHARE_CLASSES = [0, 50, 70, 85, 95, 99.5] as const;

/** Token of a share between 0 and 1; null where it is not known. */
export function shareTone(share: number | null): Tone | null {
  if (share === null || !Number.isFinite(share)) return null;
  const reached = SHARE_CLASSES.filter((least) => share * 100 >= least).length;
  return `share-${Math.max(1, reached)}`;
}

/** Zone names at a place inside each zone, with the text that a view prints below. */
export function zoneLabels(scenario: Scenario, figureOf: (zone: number) => string | null): MapLabel[] {
  return scenario.zones.map((zone, index) => ({
    position: zone.geometry.kind === 'point' ? zone.geometry.position : middleOf(zone.geometry.polygons),
    text: zone.name,
    figure: figureOf(index),
  }));
}

export function depotSymbols(scenario: Scenario): MapSymbol[] {
  return scenario.depots.map(({ position, kind }) => ({
    kind: 'depot',
    position,
    text: '',
    tone: 'ink',
    size: kind === 'depot' ? 18 : 14,
  }));
}

/** West, south, east, north of all that the scenario places on the map. */
export function districtBounds(scenario: Scenario): readonly [number, number, number, number] | null {
  const geometries = [...scenario.zones, ...scenario.communities].map(({ geometry }) => geometry);
  const positions = geometries.flatMap((place) => (place.kind === 'point' ? [place.position] : place.polygons.flat(2)));
  if (positions.length === 0) return null;
  let [west, south, east, north] = [180, 90, -180, -90];
  for (const [lon, lat] of positions) {
    west = Math.min(west, lon);
    south = Math.min(south, lat);
    east = Math.max(east, lon);
    north = Math.max(north, lat);
  }
  return [west, south, east, north];
}

export interface BorderLines {
  /** Edges of one zone only: the district's outline. */
  readonly outer: readonly (readonly Position[])[];
  /** Edges that two zones share, each drawn once, so that a dash is not filled by its own way back. */
  readonly inner: readonly (readonly Position[])[];
}

/** Outline and inner borders of polygons that share their corners. */
export function borderLines(areas: readonly MultiPolygon[]): BorderLines {
  const rings = areas.flatMap((polygons) => polygons.flat());
  const uses = new Map<string, number>();
  for (const ring of rings) eachEdge(ring, (key) => uses.set(key, (uses.get(key) ?? 0) + 1));
  const outer: Position[][] = [];
  const inner: Position[][] = [];
  const drawn = new Set<string>();
  for (const ring of rings) {
    let line: Position[] = [];
    let list: Position[][] | null = null;
    eachEdge(ring, (key, from, to) => {
      const into = uses.get(key) === 1 ? outer : drawn.has(key) ? null : inner;
      drawn.add(key);
      if (into !== list || into === null) {
        line = [from];
        into?.push(line);
        list = into;
      }
      line.push(to);
    });
  }
  return { outer, inner };
}

function eachEdge(ring: Ring, visit: (key: string, from: Position, to: Position) => void): void {
  for (let i = 1; i < ring.length; i++) {
    const [from, to] = [ring[i - 1] as Position, ring[i] as Position];
    const [a, b] = [from.join(' '), to.join(' ')];
    visit(a < b ? `${a} ${b}` : `${b} ${a}`, from, to);
  }
}

/**
 * A place well inside the largest polygon: the middle of the widest stretch of land along its middle parallel, or near it.
 * For a label, not for reckoning.
 */
function middleOf(polygons: MultiPolygon): Position {
  const rings = polygons.reduce(
    (best, rings) => (spread(rings[0]) > spread(best[0]) ? rings : best),
    polygons[0] ?? [],
  );
  const shell = rings[0] ?? [];
  const [south, north] = [Math.min(...shell.map(([, lat]) => lat)), Math.max(...shell.map(([, lat]) => lat))];
  let best: { readonly width: number; readonly at: Position } | null = null;
  for (const part of [0.5, 0.42, 0.58, 0.35, 0.65]) {
    const lat = south + (north - south) * part;
    const found = widestStretch(rings, lat);
    // A lower stretch must be clearly wider to be preferred over the middle one.
    if (found && (best === null || found.width > best.width * 1.25))
      best = { width: found.width, at: [found.lon, lat] };
  }
  return best?.at ?? shell[0] ?? [0, 0];
}

const spread = (ring: Ring | undefined): number => {
  const [lons, lats] = [(ring ?? []).map(([lon]) => lon), (ring ?? []).map(([, lat]) => lat)];
  return lons.length === 0 ? 0 : (Math.max(...lons) - Math.min(...lons)) * (Math.max(...lats) - Math.min(...lats));
};

function widestStretch(rings: readonly Ring[], lat: number): { readonly width: number; readonly lon: number } | null {
  const crossings: number[] = [];
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i++) {
      const [[lon1, lat1], [lon2, lat2]] = [ring[i - 1] as Position, ring[i] as Position];
      if (lat1 > lat !== lat2 > lat) crossings.push(lon1 + ((lat - lat1) / (lat2 - lat1)) * (lon2 - lon1));
    }
  }
  crossings.sort((a, b) => a - b);
  let widest: { readonly width: number; readonly lon: number } | null = null;
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const [from, to] = [crossings[i] as number, crossings[i + 1] as number];
    if (widest === null || to - from > widest.width) widest = { width: to - from, lon: (from + to) / 2 };
  }
  return widest;
}
