import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Position, RoadLine } from '../../../../src/engine/index.ts';
import { speedKmPerHour } from '../../../../src/engine/science/travel-time.ts';
import { openLegTracer } from '../../../../src/engine/stages/2-places/trace-legs.ts';
import { community, depot, ground, leg, located, point, referenceKm, road, table, vehicle } from './small-ground.ts';

const SIDE = 5;
const vertex = (n: number): Position => [34 + (n % SIDE) * 0.07, -14 + Math.floor(n / SIDE) * 0.05];

/** Roads along random walks over a grid of 25 vertices, some one-way, with sites on random vertices. */
const network = fc.record({
  walks: fc.array(
    fc.record({
      start: fc.nat(SIDE * SIDE - 1),
      steps: fc.array(fc.constantFrom([1, 0], [-1, 0], [0, 1], [0, -1]), { minLength: 1, maxLength: 6 }),
      oneway: fc.constantFrom<RoadLine['oneway'][]>('no', 'no', 'forward', 'backward'),
      roadClass: fc.constantFrom<RoadLine['roadClass'][]>('primary', 'tertiary', 'track'),
    }),
    { minLength: 4, maxLength: 16 },
  ),
  sites: fc.uniqueArray(fc.nat(SIDE * SIDE - 1), { minLength: 2, maxLength: 6 }),
});

function walk(start: number, steps: readonly (readonly number[])[]): number[] {
  const path = [start];
  let [x, y] = [start % SIDE, Math.floor(start / SIDE)];
  for (const [dx = 0, dy = 0] of steps) {
    [x, y] = [Math.min(SIDE - 1, Math.max(0, x + dx)), Math.min(SIDE - 1, Math.max(0, y + dy))];
    if (path.at(-1) !== y * SIDE + x) path.push(y * SIDE + x);
  }
  return path;
}

/** Quickest minutes between all vertices by Floyd 1962 on the network as drawn, nothing left out or joined. */
function allPairs(paths: readonly number[][], roads: readonly RoadLine[]): number[][] {
  const size = SIDE * SIDE;
  const best = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => (i === j ? 0 : 1 / 0)));
  const lower = (from: number, to: number, minutes: number) => {
    const row = best[from] as number[];
    row[to] = Math.min(row[to] as number, minutes);
  };
  for (const [r, path] of paths.entries()) {
    const { roadClass, surface, oneway } = roads[r] as RoadLine;
    for (let i = 1; i < path.length; i++) {
      const [a, b] = [path[i - 1] as number, path[i] as number];
      const minutes = (referenceKm(vertex(a), vertex(b)) / speedKmPerHour(roadClass, surface, 'passable', false)) * 60;
      if (oneway !== 'backward') lower(a, b, minutes);
      if (oneway !== 'forward') lower(b, a, minutes);
    }
  }
  for (let k = 0; k < size; k++) {
    for (const row of best) {
      for (let j = 0; j < size; j++) row[j] = Math.min(row[j] as number, (row[k] as number) + (best[k]?.[j] as number));
    }
  }
  return best;
}

describe('random road networks', () => {
  it('have the travel minutes of all pairs by another algorithm, and paths that follow the roads', () => {
    fc.assert(
      fc.property(network, ({ walks, sites }) => {
        const drawn = walks
          .map((one) => ({ ...one, path: walk(one.start, one.steps) }))
          .filter(({ path }) => path.length > 1);
        const roads = drawn.map(({ path, oneway, roadClass }) => road(path.map(vertex), { oneway, roadClass }));
        const expected = allPairs(
          drawn.map(({ path }) => path),
          roads,
        );
        const parts = {
          roads,
          depots: [depot('D', vertex(sites[0] as number))],
          vehicles: [vehicle('L', 'D', 'truck', ['primary', 'tertiary', 'track'])],
          communities: sites.slice(1).map((n, i) => community(`V${i}`, point(...vertex(n)))),
        };
        const { result } = located(parts);
        const trace = openLegTracer(ground(parts), result);
        const joined = result.travel.graph.siteNode[0] as Int32Array;
        for (const [i, a] of sites.entries()) {
          for (const [j, b] of sites.entries()) {
            const found = leg(table(result), i, j);
            const due = expected[a]?.[b] as number;
            if ((joined[i] as number) < 0 || (joined[j] as number) < 0) expect(found).toBeNull();
            else if (due === Number.POSITIVE_INFINITY) expect(found).toBeNull();
            else {
              expect(found?.minutes).toBeCloseTo(due, 6);
              const path = trace(0, 0, 0, i, j);
              expect(path.minutes).toBe(found?.minutes);
              expect(path.kilometres).toBe(found?.km);
              followed(path.pieces, roads, vertex(a), vertex(b), path.kilometres);
            }
          }
        }
      }),
      { seed: 5, numRuns: 120 },
    );
  });
});

/** Walks the pieces: each begins where the one before ends, keeps to its road's direction, and all together have the length. */
function followed(
  pieces: readonly { readonly road: number; readonly from: number; readonly to: number }[],
  roads: readonly RoadLine[],
  start: Position,
  end: Position,
  km: number,
): void {
  let here = start;
  let length = 0;
  for (const { road: r, from, to } of pieces) {
    const { positions, oneway } = roads[r] as RoadLine;
    expect(positions[from]).toEqual(here);
    expect(oneway === 'no' || (oneway === 'forward') === to > from).toBe(true);
    const passed = to > from ? positions.slice(from, to + 1) : positions.slice(to, from + 1);
    length += referenceKm(...passed);
    here = positions[to] as Position;
  }
  expect(here).toEqual(end);
  expect(length).toBeCloseTo(km, 6);
}
