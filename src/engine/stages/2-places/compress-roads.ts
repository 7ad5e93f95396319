import type { RoadPiece } from '../../vocabulary/stage-results/places.ts';
import type { CutRoads, Stretch } from './cut-roads.ts';

/**
 * Leaves out what no way between two sites uses, and joins what only runs on: dead ends without a site are cut back, and
 * a node with two stretches and no site becomes the inside of one stretch. Closures and classes do not matter here: a
 * stretch whose inside is shut is shut as a whole, and nobody stops inside it.
 */
export function compressRoads({ stretches, joinNode }: CutRoads): readonly Stretch[] {
  const siteNodes = new Set(joinNode.flatMap((nodes) => [...nodes]));
  const web = new StretchWeb(stretches);
  const waiting = web.nodes().sort((a, b) => b - a);
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (siteNodes.has(node)) continue;
    const [one, two, more] = web.at(node);
    if (!one || more) continue;
    web.remove(one);
    if (two) {
      web.remove(two);
      web.add(runOn(towards(one, node), from(two, node)));
    }
    waiting.push(...[one, two].flatMap((stretch) => (stretch ? [stretch.a, stretch.b] : [])));
  }
  return web.all();
}

/** Stretches by the nodes they end at. */
class StretchWeb {
  private readonly atNode = new Map<number, Set<Stretch>>();

  constructor(stretches: readonly Stretch[]) {
    for (const stretch of stretches) this.add(stretch);
  }

  /** A stretch that returns to its own node leads nowhere. */
  add(stretch: Stretch): void {
    if (stretch.a === stretch.b) return;
    for (const node of [stretch.a, stretch.b]) {
      const held = this.atNode.get(node) ?? new Set();
      this.atNode.set(node, held.add(stretch));
    }
  }

  remove(stretch: Stretch): void {
    for (const node of [stretch.a, stretch.b]) this.atNode.get(node)?.delete(stretch);
  }

  at(node: number): Iterable<Stretch> {
    return this.atNode.get(node) ?? [];
  }

  nodes(): number[] {
    return [...this.atNode.keys()];
  }

  /** By the nodes they begin at. */
  all(): readonly Stretch[] {
    const nodes = this.nodes().sort((a, b) => a - b);
    return nodes.flatMap((node) => [...this.at(node)].filter((stretch) => stretch.a === node));
  }
}

function runOn(one: Stretch, two: Stretch): Stretch {
  return {
    a: one.a,
    b: two.b,
    pieces: [...one.pieces, ...two.pieces],
    ahead: one.ahead && two.ahead,
    back: one.back && two.back,
  };
}

function towards(stretch: Stretch, node: number): Stretch {
  return stretch.b === node ? stretch : turned(stretch);
}

function from(stretch: Stretch, node: number): Stretch {
  return stretch.a === node ? stretch : turned(stretch);
}

function turned({ a, b, pieces, ahead, back }: Stretch): Stretch {
  return { a: b, b: a, pieces: turnedPieces(pieces), ahead: back, back: ahead };
}

/** The same pieces driven the other way. */
export function turnedPieces(pieces: readonly RoadPiece[]): readonly RoadPiece[] {
  return pieces.map(({ road, from, to }) => ({ road, from: to, to: from })).reverse();
}
