import type { RoadGraph, RoadPiece } from '../../vocabulary/stage-results/places.ts';
import { compressRoads, turnedPieces } from './compress-roads.ts';
import { cutRoads, type Stretch } from './cut-roads.ts';
import { type MeasuredRoads, pieceKm } from './measure-roads.ts';
import type { SiteJoin } from './snap-sites.ts';

interface Arc {
  readonly from: number;
  readonly to: number;
  readonly pieces: readonly RoadPiece[];
}

/** The graph of junctions and sites, one for all vehicle classes. `joins[class][site]`: where the sites join the roads. */
export function buildRoadGraph(measured: MeasuredRoads, joins: readonly (readonly SiteJoin[])[]): RoadGraph {
  const cut = cutRoads(measured, joins);
  const stretches = compressRoads(cut);
  const { number, count } = renumber(stretches, cut.joinNode, cut.nodeCount);
  const arcs = stretches.flatMap((stretch) => arcsOf(stretch, number)).sort((x, y) => x.from - y.from);
  const arcOffsets = new Int32Array(count + 1);
  for (const { from } of arcs) arcOffsets[from + 1] = (arcOffsets[from + 1] as number) + 1;
  for (let n = 0; n < count; n++) arcOffsets[n + 1] = (arcOffsets[n + 1] as number) + (arcOffsets[n] as number);
  return {
    nodeCount: count,
    arcOffsets,
    arcTo: Int32Array.from(arcs, (arc) => arc.to),
    arcKm: Float64Array.from(arcs, ({ pieces }) => pieces.reduce((km, piece) => km + pieceKm(measured, piece), 0)),
    arcPieces: arcs.map((arc) => arc.pieces),
    siteNode: cut.joinNode.map((nodes) => nodes.map((node) => (node < 0 ? -1 : (number[node] as number)))),
    siteAccessKm: joins.map((sites) =>
      Float64Array.from(sites, (join) => (typeof join === 'string' ? Number.NaN : join.accessKm)),
    ),
  };
}

function arcsOf({ a, b, pieces, ahead, back }: Stretch, number: Int32Array): Arc[] {
  const [from, to] = [number[a] as number, number[b] as number];
  const arcs: Arc[] = [];
  if (ahead) arcs.push({ from, to, pieces });
  if (back) arcs.push({ from: to, to: from, pieces: turnedPieces(pieces) });
  return arcs;
}

/** Numbers the nodes that are left without gaps, in their old order. */
function renumber(stretches: readonly Stretch[], joinNode: readonly Int32Array[], nodeCount: number) {
  const number = new Int32Array(nodeCount).fill(-1);
  for (const { a, b } of stretches) number[a] = number[b] = 0;
  for (const nodes of joinNode) for (const node of nodes) if (node >= 0) number[node] = 0;
  let count = 0;
  for (let node = 0; node < nodeCount; node++) if (number[node] === 0) number[node] = count++;
  return { number, count };
}
