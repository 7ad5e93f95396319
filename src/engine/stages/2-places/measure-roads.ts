import { geodesicKm } from '../../numerics/geodesic-length.ts';
import type { Position } from '../../vocabulary/places.ts';
import type { RoadLine } from '../../vocabulary/scenario.ts';
import type { RoadPiece } from '../../vocabulary/stage-results/places.ts';

/** Positions that agree to 1e-7 degrees (a centimetre) are one vertex. */
const STEPS_PER_DEGREE = 1e7;

/** Road lines with their shared vertices found and their lengths measured. Vertices of all lines stand in one column. */
export interface MeasuredRoads {
  readonly roads: readonly RoadLine[];
  /** Vertices of road r: first[r] to first[r + 1]. */
  readonly first: Int32Array;
  /** Number of the vertex; lines that meet share it. Numbered from west to east, south to north. */
  readonly vertex: Int32Array;
  readonly vertexCount: number;
  /** Geodesic kilometres from the start of the line. */
  readonly kmAlong: Float64Array;
}

export function measureRoads(roads: readonly RoadLine[]): MeasuredRoads {
  const first = new Int32Array(roads.length + 1);
  for (const [r, road] of roads.entries()) first[r + 1] = (first[r] as number) + road.positions.length;
  const positions = roads.flatMap((road) => road.positions);
  return { roads, first, ...numberVertices(positions), kmAlong: measureAlong(roads, first) };
}

/** Kilometres of a part of a road line; a place between two vertices divides their distance evenly. */
export function pieceKm({ first, kmAlong }: MeasuredRoads, { road, from, to }: RoadPiece): number {
  const start = first[road] as number;
  const kmTo = (along: number) => {
    const whole = Math.floor(along);
    const km = kmAlong[start + whole] as number;
    return whole === along ? km : km + (along - whole) * ((kmAlong[start + whole + 1] as number) - km);
  };
  return Math.abs(kmTo(to) - kmTo(from));
}

function measureAlong(roads: readonly RoadLine[], first: Int32Array): Float64Array {
  const kmAlong = new Float64Array(first[roads.length] as number);
  for (const [r, { positions }] of roads.entries()) {
    const start = first[r] as number;
    for (let i = 1; i < positions.length; i++) {
      const km = geodesicKm(positions[i - 1] as Position, positions[i] as Position);
      kmAlong[start + i] = (kmAlong[start + i - 1] as number) + km;
    }
  }
  return kmAlong;
}

function numberVertices(positions: readonly Position[]): Pick<MeasuredRoads, 'vertex' | 'vertexCount'> {
  const x = Int32Array.from(positions, (position) => Math.round(position[0] * STEPS_PER_DEGREE));
  const y = Int32Array.from(positions, (position) => Math.round(position[1] * STEPS_PER_DEGREE));
  const order = Uint32Array.from(positions, (_, i) => i).sort(
    (a, b) => (x[a] as number) - (x[b] as number) || (y[a] as number) - (y[b] as number),
  );
  const vertex = new Int32Array(positions.length);
  let vertexCount = 0;
  for (let k = 0; k < order.length; k++) {
    const here = order[k] as number;
    const before = order[k - 1];
    if (before === undefined || x[before] !== x[here] || y[before] !== y[here]) vertexCount++;
    vertex[here] = vertexCount - 1;
  }
  return { vertex, vertexCount };
}
