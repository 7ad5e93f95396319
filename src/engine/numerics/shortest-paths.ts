import FlatQueue from 'flatqueue';

/** Directed graph in compressed rows: arcs of node n stand at offsets[n] to offsets[n + 1]. */
export interface ArcRows {
  readonly offsets: Int32Array;
  readonly to: Int32Array;
}

/**
 * Dijkstra's algorithm, one node at a time, with its working memory kept between searches. Costs and lengths stand per
 * arc; an infinite cost shuts the arc. Among equal costs the path found first stays, so a search repeats itself exactly.
 */
export class ShortestPaths {
  readonly cost: Float64Array;
  readonly length: Float64Array;
  /** Arc by which the best path enters a node, -1 at the origin. */
  readonly arcInto: Int32Array;
  /** Node the best path comes from, -1 at the origin. */
  readonly nodeBefore: Int32Array;
  private readonly graph: ArcRows;
  private readonly settled: Uint8Array;
  private readonly touched: number[] = [];
  private readonly queue = new FlatQueue<number>();
  private arcCost: Float64Array = new Float64Array(0);
  private arcLength: Float64Array = new Float64Array(0);

  constructor(graph: ArcRows) {
    const nodes = graph.offsets.length - 1;
    this.graph = graph;
    this.cost = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY);
    this.length = new Float64Array(nodes);
    this.arcInto = new Int32Array(nodes).fill(-1);
    this.nodeBefore = new Int32Array(nodes).fill(-1);
    this.settled = new Uint8Array(nodes);
  }

  start(origin: number, arcCost: Float64Array, arcLength: Float64Array): void {
    for (const node of this.touched) {
      this.cost[node] = Number.POSITIVE_INFINITY;
      this.settled[node] = 0;
    }
    this.touched.length = 0;
    this.queue.clear();
    this.arcCost = arcCost;
    this.arcLength = arcLength;
    this.reach(origin, 0, 0, -1, -1);
  }

  /** Settles the next nearest node and returns it; -1 when no further node can be reached. */
  settleNext(): number {
    for (;;) {
      const node = this.queue.pop();
      if (node === undefined) return -1;
      if (this.settled[node]) continue;
      this.settled[node] = 1;
      this.relax(node);
      return node;
    }
  }

  private relax(node: number): void {
    const { offsets, to } = this.graph;
    const cost = this.cost[node] as number;
    const length = this.length[node] as number;
    for (let arc = offsets[node] as number; arc < (offsets[node + 1] as number); arc++) {
      const next = to[arc] as number;
      const costNext = cost + (this.arcCost[arc] as number);
      if (costNext < (this.cost[next] as number)) {
        this.reach(next, costNext, length + (this.arcLength[arc] as number), arc, node);
      }
    }
  }

  private reach(node: number, cost: number, length: number, arc: number, before: number): void {
    if (this.cost[node] === Number.POSITIVE_INFINITY) this.touched.push(node);
    this.cost[node] = cost;
    this.length[node] = length;
    this.arcInto[node] = arc;
    this.nodeBefore[node] = before;
    this.queue.push(node, cost);
  }
}
