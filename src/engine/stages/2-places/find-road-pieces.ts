import { DisjointSets } from '../../numerics/disjoint-sets.ts';
import type { MeasuredRoads } from './measure-roads.ts';

/** Connected pieces of the network, one-way roads and closures left aside. */
export interface RoadNetworkPieces {
  /** Piece of each vertex, named by its lowest vertex; -1 where no road that counts passes. */
  readonly pieceOfVertex: Int32Array;
  readonly count: number;
  /** Length of all roads that count, and of the longest piece. */
  readonly totalKm: number;
  readonly longestKm: number;
}

/** Pieces of the roads that `counts` lets through; any shared vertex joins. */
export function findRoadPieces(measured: MeasuredRoads, counts: (road: number) => boolean): RoadNetworkPieces {
  const { roads, first, vertex, vertexCount, kmAlong } = measured;
  const sets = new DisjointSets(vertexCount);
  const used = new Uint8Array(vertexCount);
  const kmOfRoad = roads.map((_, road) => (kmAlong[(first[road + 1] as number) - 1] as number) ?? 0);
  for (const road of roads.keys()) {
    if (!counts(road)) continue;
    for (let i = first[road] as number; i < (first[road + 1] as number); i++) {
      used[vertex[i] as number] = 1;
      if (i > (first[road] as number)) sets.join(vertex[i - 1] as number, vertex[i] as number);
    }
  }
  const pieceOfVertex = Int32Array.from(used, (isUsed, v) => (isUsed ? sets.find(v) : -1));
  const kmOfPiece = new Map<number, number>();
  for (const [road, km] of kmOfRoad.entries()) {
    if (!counts(road)) continue;
    const piece = pieceOfVertex[vertex[first[road] as number] as number] as number;
    kmOfPiece.set(piece, (kmOfPiece.get(piece) ?? 0) + km);
  }
  const lengths = [...kmOfPiece.values()];
  return {
    pieceOfVertex,
    count: kmOfPiece.size,
    totalKm: lengths.reduce((sum, km) => sum + km, 0),
    longestKm: lengths.reduce((longest, km) => Math.max(longest, km), 0),
  };
}
