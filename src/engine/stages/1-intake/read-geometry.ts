import type { MultiPolygon, PlaceGeometry, PolygonRings, Position, Ring } from '../../vocabulary/places.ts';
import type { ProblemCode } from '../../vocabulary/problems.ts';
import { cellText } from './open-records.ts';
import type { RowReader } from './row-reader.ts';

/** Stands in where the row is set aside. */
const NOWHERE: PlaceGeometry = { kind: 'point', position: [0, 0] };

/** Point, Polygon or MultiPolygon of RFC 7946. Whether rings cross is a question for the places stage. */
export function readPlaceGeometry(row: RowReader, sent: unknown): PlaceGeometry {
  const { type, coordinates } = members(sent);
  switch (type) {
    case 'Point': {
      const position = readPosition(row, coordinates);
      return position === null ? NOWHERE : { kind: 'point', position };
    }
    case 'Polygon':
      return area(row, [coordinates]);
    case 'MultiPolygon':
      return area(row, listOr(coordinates));
    default:
      return reject(row, 'E1400', type) ?? NOWHERE;
  }
}

/** LineString or MultiLineString of RFC 7946, one list of positions for each line that holds. */
export function readLines(row: RowReader, sent: unknown): readonly (readonly Position[])[] {
  const { type, coordinates } = members(sent);
  if (type !== 'LineString' && type !== 'MultiLineString') return reject(row, 'E1400', type) ?? [];
  const lines = type === 'LineString' ? [coordinates] : listOr(coordinates);
  if (lines.length === 0) return reject(row, 'E1406', '0') ?? [];
  if (lines.length > 1) row.note('E1407', { facts: { lines: lines.length } });
  return lines.map((line) => readLine(row, line)).filter((line) => line !== null);
}

function readLine(row: RowReader, sent: unknown): readonly Position[] | null {
  const positions = readPositions(row, sent);
  if (positions === null) return null;
  const first = positions[0];
  const goesSomewhere = positions.some((p) => first !== undefined && (p[0] !== first[0] || p[1] !== first[1]));
  return goesSomewhere ? positions : reject(row, 'E1406', String(positions.length));
}

function area(row: RowReader, sent: readonly unknown[]): PlaceGeometry {
  const polygons: PolygonRings[] = [];
  for (const rings of sent) {
    const read = listOr(rings).map((ring) => readRing(row, ring));
    if (read.length === 0) reject(row, 'E1405', '0');
    polygons.push(read.filter((ring) => ring !== null));
  }
  if (polygons.length === 0) reject(row, 'E1405', '0');
  return row.isRejected ? NOWHERE : { kind: 'area', polygons: polygons satisfies MultiPolygon };
}

/** RFC 7946 section 3.1.6: four or more positions, the last equal to the first. */
function readRing(row: RowReader, sent: unknown): Ring | null {
  const positions = readPositions(row, sent);
  if (positions === null) return null;
  const [first, last] = [positions[0], positions.at(-1)];
  const isClosed = first !== undefined && last !== undefined && first[0] === last[0] && first[1] === last[1];
  const ring = isClosed || first === undefined ? positions : [...positions, first];
  if (ring.length < 4) return reject(row, 'E1405', String(positions.length));
  if (!isClosed) row.note('E1404');
  return ring;
}

function readPositions(row: RowReader, sent: unknown): readonly Position[] | null {
  const positions: Position[] = [];
  for (const each of listOr(sent)) {
    const position = readPosition(row, each);
    if (position === null) return null;
    positions.push(position);
  }
  return positions;
}

/** RFC 7946 section 3.1.1: longitude, latitude; a third number (altitude) is left out. */
function readPosition(row: RowReader, sent: unknown): Position | null {
  const [lon, lat] = Array.isArray(sent) ? (sent as unknown[]) : [];
  if (typeof lon !== 'number' || typeof lat !== 'number' || !Number.isFinite(lon + lat)) {
    return reject(row, 'E1401', cellText(sent));
  }
  const fault = rangeFault(lon, lat);
  return fault === null ? [lon, lat] : reject(row, fault, `${lon};${lat}`);
}

/** Null for degrees on the globe; a latitude beyond 90 is told apart where the two could have been swapped. */
export function rangeFault(lon: number, lat: number): ProblemCode | null {
  const [east, north] = [Math.abs(lon), Math.abs(lat)];
  if (east <= 180 && north <= 90) return null;
  return north <= 180 && east <= 90 ? 'E1402' : 'E1408';
}

function reject(row: RowReader, code: ProblemCode, value: unknown): null {
  row.reject(code, { column: 'geometry', value: value === undefined ? null : cellText(value) });
  return null;
}

function members(sent: unknown): { readonly type?: unknown; readonly coordinates?: unknown } {
  return typeof sent === 'object' && sent !== null && !Array.isArray(sent) ? sent : {};
}

const listOr = (sent: unknown): readonly unknown[] => (Array.isArray(sent) ? sent : []);
