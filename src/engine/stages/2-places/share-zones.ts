import type { PolygonOverlay } from '../../numerics/polygon-overlay.ts';
import type { MultiPolygon, Position } from '../../vocabulary/places.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Community, Scenario } from '../../vocabulary/scenario.ts';
import type { ZoneShares } from '../../vocabulary/stage-results/places.ts';
import type { MeasuredPolygons } from './repair-polygons.ts';
import { rounded } from './rounded.ts';
import { ZoneMap } from './zone-map.ts';

const OUTSIDE_ALL_ZONES = -1;
/** A part smaller than this share of its community comes from edges drawn twice, not from land in another zone (assumed). */
const SLIVER_SHARE = 0.001;
/** A given zone stands unless less than this share of the community lies in it: then it is noted (assumed). */
const AGREEING_SHARE = 0.5;

/** What part of a community lies in a zone. Parts of one community are in the order of the zones, outside first. */
interface Part {
  readonly zone: number;
  readonly share: number;
}

interface Settled {
  readonly parts: readonly Part[];
  readonly problems: readonly Problem[];
}

/**
 * Parts of communities in zones. A zone_id that names a zone holds for the whole community; without one, polygons are
 * weighted by area and points fall into the zone they lie in (on an edge of several: the first of them, once).
 */
export function shareZones(
  scenario: Scenario,
  communities: MeasuredPolygons,
  zones: MeasuredPolygons,
  overlay: PolygonOverlay,
): { readonly shares: ZoneShares; readonly problems: readonly Problem[] } {
  const zoneIndex = new Map(scenario.zones.map((zone, index) => [zone.id, index]));
  const map = new ZoneMap(zones.polygons, overlay);
  const settled = scenario.communities.map((community, index): Settled => {
    const given = zoneIndex.get(community.zoneId ?? '');
    const polygons = communities.polygons[index] ?? null;
    const areaHa = communities.areaHa[index] as number;
    if (given !== undefined) return keepGiven(community, given, polygons, areaHa, map);
    return polygons ? weighByArea(community, polygons, areaHa, map) : placePoint(community, map);
  });
  map.release();
  const rows = settled.flatMap(({ parts }, community) => parts.map((part) => ({ community, ...part })));
  return { shares: columns(rows), problems: settled.flatMap(({ problems }) => problems) };
}

function keepGiven(
  community: Community,
  zone: number,
  polygons: MultiPolygon | null,
  areaHa: number,
  map: ZoneMap,
): Settled {
  const parts = [{ zone, share: 1 }];
  if (!map.has(zone)) return { parts, problems: [] };
  const inPoint = map.holds(zone, anyPosition(community)) ? 1 : 0;
  const share = polygons ? map.commonHa(zone, polygons) / areaHa : inPoint;
  if (share >= AGREEING_SHARE) return { parts, problems: [] };
  const facts = { id: community.id, sharePercent: rounded(share * 100, 1) };
  return {
    parts,
    problems: [
      problem('E2004', {
        column: 'zone_id',
        value: community.zoneId,
        about: { part: 'communities', id: community.id },
        facts,
      }),
    ],
  };
}

function placePoint(community: Community, map: ZoneMap): Settled {
  const position = anyPosition(community);
  const zone = map.near([position]).find((near) => map.holds(near, position)) ?? OUTSIDE_ALL_ZONES;
  const parts = [{ zone, share: 1 }];
  return { parts, problems: noteOutside(community, parts, map) };
}

function weighByArea(community: Community, polygons: MultiPolygon, areaHa: number, map: ZoneMap): Settled {
  const near = map.near(polygons.flat(2));
  const covering = near.find((zone) => map.covers(zone, polygons));
  if (covering !== undefined) return { parts: [{ zone: covering, share: 1 }], problems: [] };
  const inside = near.map((zone) => ({ zone, share: map.commonHa(zone, polygons) / areaHa }));
  const inZones = inside.reduce((sum, { share }) => sum + share, 0);
  const all = [{ zone: OUTSIDE_ALL_ZONES, share: 1 - inZones }, ...inside];
  const parts = withoutSlivers(all.map(({ zone, share }) => ({ zone, share: share / Math.max(1, inZones) })));
  return { parts, problems: [...noteOverlap(community, inZones), ...noteOutside(community, parts, map)] };
}

/** Slivers go to the largest part, which takes whatever makes the parts sum to one. */
function withoutSlivers(parts: readonly Part[]): readonly Part[] {
  const largest = parts.reduce((a, b) => (b.share > a.share ? b : a));
  const kept = parts.filter((part) => part === largest || part.share > SLIVER_SHARE);
  const others = kept.reduce((sum, part) => sum + (part === largest ? 0 : part.share), 0);
  return kept.map((part) => (part === largest ? { zone: part.zone, share: 1 - others } : part));
}

function noteOverlap({ id }: Community, inZones: number): Problem[] {
  if (inZones <= 1 + SLIVER_SHARE) return [];
  return [
    problem('E2007', {
      column: 'geometry',
      about: { part: 'communities', id },
      facts: { id, percent: rounded(inZones * 100, 1) },
    }),
  ];
}

/** Where no zone is drawn at all, every community is outside, and that is known. */
function noteOutside({ id }: Community, parts: readonly Part[], map: ZoneMap): Problem[] {
  const outside = parts.find((part) => part.zone === OUTSIDE_ALL_ZONES);
  if (!outside || map.isEmpty) return [];
  const facts = { id, outsidePercent: rounded(outside.share * 100, 2) };
  return [problem('E2003', { column: 'geometry', about: { part: 'communities', id }, facts })];
}

function anyPosition({ geometry }: Community): Position {
  const position = geometry.kind === 'point' ? geometry.position : geometry.polygons[0]?.[0]?.[0];
  return position ?? [0, 0];
}

function columns(rows: readonly (Part & { readonly community: number })[]): ZoneShares {
  return {
    community: Int32Array.from(rows, (row) => row.community),
    zone: Int32Array.from(rows, (row) => row.zone),
    share: Float64Array.from(rows, (row) => row.share),
  };
}
