import Flatbush from 'flatbush';
import { cos, sin } from '../../numerics/elementary.ts';
import { ECCENTRICITY2, RADIANS_PER_DEGREE, SEMI_MAJOR_M } from '../../numerics/ellipsoid.ts';
import type { Position } from '../../vocabulary/places.ts';
import type { RoadLine } from '../../vocabulary/scenario.ts';

/** The nearest place on a road: `fraction` 0 at the first vertex of the segment, 1 at its second. */
export interface NearestPlace {
  readonly road: number;
  readonly segment: number;
  readonly fraction: number;
  readonly km: number;
}

/** Kilometres that a degree spans at one latitude, to the east and to the north. */
interface LocalScale {
  readonly eastKm: number;
  readonly northKm: number;
}

/** Most places lie close to a road: the box of the search begins this small and doubles. */
const FIRST_SEARCH_KM = 0.5;

/**
 * Finds the nearest place on the road lines. Distances are planar, in kilometres about the position asked for: right to
 * 1e-5 within a few km. It does not look across the antimeridian.
 */
export class RoadFinder {
  private readonly roads: readonly RoadLine[];
  private readonly tree: Flatbush | null;
  private readonly roadOf: Int32Array;
  private readonly segmentOf: Int32Array;

  constructor(roads: readonly RoadLine[]) {
    const count = roads.reduce((sum, road) => sum + road.positions.length - 1, 0);
    this.roads = roads;
    this.roadOf = new Int32Array(count);
    this.segmentOf = new Int32Array(count);
    this.tree = count > 0 ? new Flatbush(count) : null;
    let item = 0;
    for (const [road, { positions }] of roads.entries()) {
      for (let i = 1; i < positions.length; i++, item++) {
        const [x1, y1] = positions[i - 1] as Position;
        const [x2, y2] = positions[i] as Position;
        this.tree?.add(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
        this.roadOf[item] = road;
        this.segmentOf[item] = i - 1;
      }
    }
    this.tree?.finish();
  }

  /** Nearest place on an accepted road within `limitKm`, null where there is none. Of equal distances the first road, then segment. */
  nearest(position: Position, limitKm: number, accepts: (road: number) => boolean): NearestPlace | null {
    const scale = localScale(position);
    for (let radiusKm = Math.min(FIRST_SEARCH_KM, limitKm); ; radiusKm = Math.min(radiusKm * 2, limitKm)) {
      const best = this.nearestInBox(position, radiusKm, scale, accepts);
      if (best || radiusKm >= limitKm) return best;
    }
  }

  private nearestInBox(
    position: Position,
    radiusKm: number,
    scale: LocalScale,
    accepts: (road: number) => boolean,
  ): NearestPlace | null {
    const [x, y] = position;
    const [dx, dy] = [radiusKm / scale.eastKm, radiusKm / scale.northKm];
    let best: NearestPlace | null = null;
    for (const item of this.tree?.search(x - dx, y - dy, x + dx, y + dy) ?? []) {
      const road = this.roadOf[item] as number;
      if (!accepts(road)) continue;
      const place = this.project(position, road, this.segmentOf[item] as number, scale);
      if (place.km <= radiusKm && (!best || comesBefore(place, best))) best = place;
    }
    return best;
  }

  private project(position: Position, road: number, segment: number, scale: LocalScale): NearestPlace {
    const from = this.roads[road]?.positions[segment] as Position;
    const to = this.roads[road]?.positions[segment + 1] as Position;
    const [east, north] = offsetKm(from, to, scale);
    const [toEast, toNorth] = offsetKm(from, position, scale);
    const length2 = east * east + north * north;
    const along = length2 > 0 ? (toEast * east + toNorth * north) / length2 : 0;
    const fraction = Math.max(0, Math.min(1, along));
    const [missEast, missNorth] = [toEast - fraction * east, toNorth - fraction * north];
    return { road, segment, fraction, km: Math.sqrt(missEast * missEast + missNorth * missNorth) };
  }
}

function localScale([, latitude]: Position): LocalScale {
  const s = sin(latitude * RADIANS_PER_DEGREE);
  const w = 1 - ECCENTRICITY2 * s * s;
  const acrossKm = SEMI_MAJOR_M / Math.sqrt(w) / 1000;
  return {
    eastKm: acrossKm * cos(latitude * RADIANS_PER_DEGREE) * RADIANS_PER_DEGREE,
    northKm: ((acrossKm * (1 - ECCENTRICITY2)) / w) * RADIANS_PER_DEGREE,
  };
}

function offsetKm(from: Position, to: Position, scale: LocalScale): readonly [number, number] {
  return [(to[0] - from[0]) * scale.eastKm, (to[1] - from[1]) * scale.northKm];
}

function comesBefore(a: NearestPlace, b: NearestPlace): boolean {
  if (a.km !== b.km) return a.km < b.km;
  return a.road !== b.road ? a.road < b.road : a.segment < b.segment;
}
