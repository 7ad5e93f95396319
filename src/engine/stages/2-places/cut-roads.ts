import type { RoadPiece } from '../../vocabulary/stage-results/places.ts';
import type { MeasuredRoads } from './measure-roads.ts';
import type { RoadJoin, SiteJoin } from './snap-sites.ts';

/** A stretch between two nodes that can be driven ahead (from `a` to `b`), back, or both ways. */
export interface Stretch {
  readonly a: number;
  readonly b: number;
  /** Road pieces in the order from a to b. */
  readonly pieces: readonly RoadPiece[];
  readonly ahead: boolean;
  readonly back: boolean;
}

export interface CutRoads {
  readonly nodeCount: number;
  readonly stretches: readonly Stretch[];
  /** Node of each join: joinNode[class][site], -1 where the site joins no road. */
  readonly joinNode: readonly Int32Array[];
}

/**
 * Cuts the road lines where other lines meet them and where sites join them. Nodes are the shared vertices; a site that
 * joins between two vertices adds a node, and sites that join at the same place share it.
 */
export function cutRoads(measured: MeasuredRoads, joins: readonly (readonly SiteJoin[])[]): CutRoads {
  const { roads, first, vertex, vertexCount } = measured;
  const cutsOfRoad = new Map<number, Map<number, number>>();
  let nodeCount = vertexCount;
  const nodeOf = ({ road, along }: RoadJoin): number => {
    const cuts = cutsOfRoad.get(road) ?? new Map<number, number>();
    cutsOfRoad.set(road, cuts);
    const atVertex = Number.isInteger(along) ? vertex[(first[road] as number) + along] : undefined;
    const node = cuts.get(along) ?? atVertex ?? nodeCount++;
    cuts.set(along, node);
    return node;
  };
  const joinNode = joins.map((sites) =>
    Int32Array.from(sites, (join) => (typeof join === 'string' ? -1 : nodeOf(join))),
  );
  const isNode = markNodes(measured, joinNode);
  const stretches = roads.flatMap((_, road) => cutRoad(measured, road, isNode, cutsOfRoad.get(road)));
  return { nodeCount, stretches, joinNode };
}

/** Vertices where the network branches or ends, or where a site joins. */
function markNodes({ roads, first, vertex, vertexCount }: MeasuredRoads, joinNode: readonly Int32Array[]): Uint8Array {
  const ends = new Int32Array(vertexCount);
  for (const road of roads.keys()) {
    for (let i = (first[road] as number) + 1; i < (first[road + 1] as number); i++) {
      const [from, to] = [vertex[i - 1] as number, vertex[i] as number];
      if (from === to) continue;
      ends[from] = (ends[from] as number) + 1;
      ends[to] = (ends[to] as number) + 1;
    }
  }
  const isNode = Uint8Array.from(ends, (count) => (count === 2 ? 0 : 1));
  for (const nodes of joinNode) for (const node of nodes) if (node >= 0 && node < vertexCount) isNode[node] = 1;
  return isNode;
}

function cutRoad(
  { roads, first, vertex }: MeasuredRoads,
  road: number,
  isNode: Uint8Array,
  joined: ReadonlyMap<number, number> | undefined,
): Stretch[] {
  const start = first[road] as number;
  const last = (first[road + 1] as number) - start - 1;
  const cuts = new Map<number, number>(joined);
  for (let i = 0; i <= last; i++) {
    const node = vertex[start + i] as number;
    if (i === 0 || i === last || isNode[node]) cuts.set(i, node);
  }
  const oneway = roads[road]?.oneway;
  const inOrder = [...cuts].sort(([a], [b]) => a - b);
  return inOrder.slice(1).map(([to, b], k) => {
    const [from, a] = inOrder[k] as [number, number];
    return { a, b, pieces: [{ road, from, to }], ahead: oneway !== 'backward', back: oneway !== 'forward' };
  });
}
