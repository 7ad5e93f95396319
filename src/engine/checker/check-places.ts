import type { MultiPolygon, PlaceGeometry, Position } from '../vocabulary/places.ts';
import type { Problem } from '../vocabulary/problems.ts';
import { at, type CheckedCase } from './checked-case.ts';
import { finding } from './finding.ts';
import {
  areaByEdgesHa,
  areaByStripsHa,
  type Box,
  boxOf,
  commonWidth,
  crossings,
  isInside,
  kmToEdge,
  scanLatitudes,
  segmentKm,
  widthOf,
} from './own-earth.ts';
import type { OwnReach } from './own-reach.ts';
import { TOLERANCE } from './tolerances.ts';

/** Areas, zone shares, hand-over places and places said to be out of reach, from the polygons, points and roads as read. */
export function checkPlaces(c: CheckedCase, reach: OwnReach): readonly Problem[] {
  const { communityAreaHa, zoneAreaHa } = c.plan.places;
  return [
    ...checkAreas('places.communityAreaHa', communityAreaHa, c.scenario.communities),
    ...checkAreas('places.zoneAreaHa', zoneAreaHa, c.scenario.zones),
    ...checkShares(c),
    ...checkHandover(c),
    ...checkUnreachable(c, reach),
  ];
}

function checkAreas(
  column: string,
  told: readonly (number | null)[],
  owners: readonly { readonly geometry: PlaceGeometry }[],
): readonly Problem[] {
  return owners.flatMap(({ geometry }, i) => {
    const areaHa = told[i] ?? null;
    if (geometry.kind === 'point') return areaHa === null ? [] : [finding('E8101', column, i, areaHa, 'no')];
    const found = areaByEdgesHa(geometry.polygons);
    if (areaHa !== null && isWithin(areaHa, found, TOLERANCE.areaRelative)) return [];
    // Rings that cross themselves: their edges cancel, strips do not.
    const byStrips = areaByStripsHa(geometry.polygons, 400);
    if (areaHa !== null && isWithin(areaHa, byStrips, TOLERANCE.areaByStripsRelative)) {
      if (!isWithin(found, byStrips, TOLERANCE.areaByStripsRelative) || crossesItself(found, byStrips)) return [];
    }
    return [finding('E8101', column, i, areaHa, found)];
  });
}

const isWithin = (told: number, due: number, relative: number) =>
  Math.abs(told - due) <= relative * Math.abs(due) + TOLERANCE.hectares;

/** Strips of a sound polygon agree with its edges to 2e-4 at 400 strips; a crossing ring parts them. */
const crossesItself = (byEdges: number, byStrips: number) => !isWithin(byEdges, byStrips, 5e-4);

/** A zone named in the community's file holds for the whole community; else the geometry tells. */
function checkShares(c: CheckedCase): readonly Problem[] {
  const found: Problem[] = [];
  const zoneBoxes = c.scenario.zones.map(({ geometry }) =>
    geometry.kind === 'area' ? boxOf(geometry.polygons) : null,
  );
  c.zonesOf.forEach((rows, community) => {
    const sum = rows.reduce((total, { share }) => total + share, 0);
    if (Math.abs(sum - 1) > TOLERANCE.share * (rows.length + 1))
      found.push(finding('E8102', 'places.shares.share', community, sum));
    const { geometry } = at(c.scenario.communities, community);
    const index = c.scenario.zones.findIndex(({ id }) => id === at(c.scenario.communities, community).zoneId);
    const named = index < 0 ? null : { index };
    const due = geometry.kind === 'area' && !named ? sampleShares(c, geometry.polygons, zoneBoxes) : null;
    for (const { zone, share } of rows) {
      const expected = named
        ? Number(zone === named.index)
        : (due?.get(zone) ?? (geometry.kind === 'point' && mayLieIn(c, zone, geometry.position) ? share : 0));
      if (Math.abs(share - expected) > TOLERANCE.shareBySampling)
        found.push(finding('E8103', 'places.shares.share', community, share, expected));
    }
  });
  return found;
}

const SCAN_LINES = 40;

/** Part of the community in each zone, -1 outside all, measured along 40 parallels. */
function sampleShares(
  c: CheckedCase,
  community: MultiPolygon,
  zoneBoxes: readonly (Box | null)[],
): ReadonlyMap<number, number> {
  const box = boxOf(community);
  const near = c.scenario.zones.flatMap(({ geometry: zone }, z) => {
    const other = zoneBoxes[z];
    return zone.kind === 'area' && other && overlaps(box, other) ? [{ z, polygons: zone.polygons }] : [];
  });
  const width = new Map<number, number>();
  let whole = 0;
  for (const latitude of scanLatitudes(box, SCAN_LINES)) {
    const own = crossings(community, latitude);
    whole += widthOf(own);
    for (const { z, polygons } of near)
      width.set(z, (width.get(z) ?? 0) + commonWidth(own, crossings(polygons, latitude)));
  }
  const shares = new Map([...width].map(([zone, w]) => [zone, w / whole]));
  shares.set(-1, 1 - [...shares.values()].reduce((sum, share) => sum + share, 0));
  return shares;
}

const overlaps = (a: Box, b: Box) => a.west <= b.east && b.west <= a.east && a.south <= b.north && b.south <= a.north;

/** A point on a border may be counted to any one of the zones that meet there, or to none. */
function mayLieIn(c: CheckedCase, zone: number, position: Position): boolean {
  const geometry = c.scenario.zones[zone]?.geometry;
  if (geometry) return touches(geometry, position);
  return c.scenario.zones.every(
    (other) =>
      other.geometry.kind === 'point' ||
      !isInside(position, other.geometry.polygons) ||
      kmToEdge(position, other.geometry.polygons) < TOLERANCE.placeKm,
  );
}

function touches(geometry: PlaceGeometry, position: Position): boolean {
  return (
    geometry.kind === 'area' &&
    (isInside(position, geometry.polygons) || kmToEdge(position, geometry.polygons) < TOLERANCE.placeKm)
  );
}

function checkHandover(c: CheckedCase): readonly Problem[] {
  const { ids, places } = c.plan;
  const found: Problem[] = [];
  const points = new Map(c.scenario.handoverPoints.map((point) => [point.id, point]));
  ids.places.forEach((id, place) => {
    const position: Position = [at(places.placeLon, place), at(places.placeLat, place)];
    const point = at(places.placeGiven, place) === 1 ? points.get(id) : undefined;
    const community = c.scenario.communities[c.communityIndex.get(id) ?? -1];
    if (point) {
      const km = segmentKm(position, point.position);
      if (km > TOLERANCE.placeKm) found.push(finding('E8104', 'places.placeLon', place, `${km} km away`, 'as given'));
    } else if (!community || at(places.placeGiven, place) === 1) {
      found.push(finding('E8104', 'ids.places', place, 'at an unknown place', 'at a given point or a community'));
    } else if (!liesIn(community.geometry, position)) {
      found.push(finding('E8104', 'places.placeLon', place, position.join(' '), 'inside the community'));
    }
  });
  return [...found, ...checkCollecting(c)];
}

function liesIn(geometry: PlaceGeometry, position: Position): boolean {
  if (geometry.kind === 'point') return segmentKm(geometry.position, position) <= TOLERANCE.placeKm;
  const polygons: MultiPolygon = geometry.polygons;
  return isInside(position, polygons) || kmToEdge(position, polygons) <= TOLERANCE.placeKm;
}

/** Each community collects at the point that lists it, else at its own place. */
function checkCollecting(c: CheckedCase): readonly Problem[] {
  const { ids, places } = c.plan;
  return c.scenario.communities.flatMap((community, i) => {
    const listed = c.scenario.handoverPoints.filter(({ communityIds }) => communityIds.includes(community.id));
    const place = at(places.communityPlace, i);
    const id = at(ids.places, place);
    const given = at(places.placeGiven, place) === 1;
    const holds =
      listed.length === 0 ? !given && id === community.id : given && listed.some((point) => point.id === id);
    const due = listed.length === 0 ? community.id : listed.map((point) => point.id).join(' or ');
    return holds ? [] : [finding('E8105', 'places.communityPlace', i, id, due)];
  });
}

/** A place is out of reach of a vehicle's class only where no way there and back exists on any planning day. */
function checkUnreachable(c: CheckedCase, reach: OwnReach): readonly Problem[] {
  const { place, vehicle } = c.plan.places.unreachable;
  return place.flatMap((p, i) => {
    const minutes = reach.roundTripMinutes(at(vehicle, i), p);
    return minutes === Number.POSITIVE_INFINITY
      ? []
      : [finding('E8106', 'places.unreachable.place', i, at(c.plan.ids.places, p), `${minutes} minutes`)];
  });
}
