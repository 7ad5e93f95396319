import { describe, expect, it } from 'vitest';
import { clippingOverlay } from '../../src/adapters/geometry/clipping-overlay.ts';
import { loadGeosOverlay } from '../../src/adapters/geometry/geos-overlay.ts';
import type { OverlayPolygons } from '../../src/engine/index.ts';
import { boxRing, squareDegrees } from '../adapters/geometry/square-degrees.ts';

/** Areas by hand; PostGIS gives the same for these kinds of input after ST_MakeValid with method=structure (run). */
const NASTY: readonly { readonly name: string; readonly polygons: OverlayPolygons; readonly area: number }[] = [
  {
    name: 'bow-tie',
    polygons: [
      [
        [
          [0, 0],
          [2, 2],
          [2, 0],
          [0, 2],
          [0, 0],
        ],
      ],
    ],
    area: 2,
  },
  {
    name: 'bow-tie that meets in a vertex',
    polygons: [
      [
        [
          [0, 0],
          [1, 1],
          [2, 0],
          [2, 2],
          [1, 1],
          [0, 2],
          [0, 0],
        ],
      ],
    ],
    area: 2,
  },
  {
    name: 'spike edge',
    polygons: [
      [
        [
          [0, 0],
          [2, 0],
          [2, 1],
          [3, 1],
          [2, 1],
          [2, 2],
          [0, 2],
          [0, 0],
        ],
      ],
    ],
    area: 4,
  },
  {
    name: 'repeated position',
    polygons: [
      [
        [
          [0, 0],
          [2, 0],
          [2, 0],
          [2, 2],
          [0, 2],
          [0, 0],
        ],
      ],
    ],
    area: 4,
  },
  {
    name: 'hole touching its shell at a point',
    polygons: [
      [
        boxRing(0, 0, 2, 1),
        [
          [1, 0],
          [1.5, 0.5],
          [1, 1 - 1e-9],
          [0.5, 0.5],
          [1, 0],
        ],
      ],
    ],
    area: 1.5,
  },
  { name: 'two holes touching', polygons: [[boxRing(0, 0, 5), boxRing(0.5, 0.5, 2), boxRing(2.5, 2.5, 2)]], area: 17 },
  { name: 'hole sharing an edge with its shell', polygons: [[boxRing(0, 0, 4), boxRing(0, 1, 2)]], area: 12 },
  { name: 'hole overlapping its shell', polygons: [[boxRing(0, 0, 4), boxRing(3, 3, 3)]], area: 15 },
  { name: 'parts overlapping each other', polygons: [[boxRing(0, 0, 2)], [boxRing(1, 1, 2)]], area: 7 },
  {
    name: 'unclosed ring',
    polygons: [
      [
        [
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
        ],
      ],
    ],
    area: 4,
  },
];

const geos = await loadGeosOverlay();

describe.each([geos, clippingOverlay()])('$name on nasty input', (overlay) => {
  it.each(NASTY)('$name covers $area', ({ polygons, area }) => {
    const valid = overlay.makeValid(polygons) ?? [];
    expect(squareDegrees(valid)).toBeCloseTo(area, 7);
    expect(overlay.isValid(valid)).toBe(true);
    const wide = overlay.prepare([[boxRing(-10, -10, 30)]]);
    expect(squareDegrees(wide.intersection(valid))).toBeCloseTo(area, 7);
    expect(wide.covers(valid)).toBe(true);
    wide.release();
  });

  it('a triangle without area covers nothing', () => {
    const flat: OverlayPolygons = [
      [
        [
          [0, 0],
          [1, 1],
          [2, 2],
          [0, 0],
        ],
      ],
    ];
    expect(overlay.isValid(flat)).toBe(false);
    expect(overlay.makeValid(flat)).toBeNull();
    expect(
      overlay.makeValid([
        [
          [
            [0, 0],
            [1, 0],
            [0, 0],
          ],
        ],
      ]),
    ).toBeNull();
  });

  it.each([0, 1e-13, 1e-10])(
    'neighbours that share an edge, drawn %d degrees apart, have nothing in common',
    (noise) => {
      const one = overlay.prepare([[boxRing(30, -15, 1)]]);
      expect(squareDegrees(one.intersection([[boxRing(31 - noise, -15, 1)]]))).toBeLessThan(1e-9);
      expect(squareDegrees(one.intersection([[boxRing(30 + noise, -15, 1)]]))).toBeCloseTo(1, 9);
      one.release();
    },
  );

  it('does not wrap at the antimeridian: 181 east and 179 west are far apart', () => {
    const west = overlay.prepare([[boxRing(-180, 0, 2)]]);
    expect(west.intersection([[boxRing(180, 0, 2)]])).toEqual([]);
    west.release();
  });
});

describe('geos', () => {
  it('tells a polygon that only touches itself from a valid one', () => {
    expect(geos.isValid(NASTY[1]?.polygons ?? [])).toBe(false);
    expect(geos.isValid([[boxRing(0, 0, 4), boxRing(1, 1, 2)]])).toBe(true);
  });
});
