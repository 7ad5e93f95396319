import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clippingOverlay } from '../../../src/adapters/geometry/clipping-overlay.ts';
import { loadGeosOverlay } from '../../../src/adapters/geometry/geos-overlay.ts';
import type { OverlayPolygons } from '../../../src/engine/index.ts';
import { boxRing, squareDegrees } from './square-degrees.ts';

const geos = await loadGeosOverlay();
const clipping = clippingOverlay();

/** Star-shaped polygons of 3 to 24 corners about a centre near 34 E 14 S, with a hole of the same shape in some. */
const star: fc.Arbitrary<OverlayPolygons> = fc
  .record({
    centre: fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 })),
    radii: fc.array(fc.integer({ min: 20, max: 100 }), { minLength: 3, maxLength: 24 }),
    hole: fc.boolean(),
  })
  .map(({ centre, radii, hole }) => {
    const ring = (scale: number) => {
      const corners = radii.map((radius, k): readonly [number, number] => {
        const turn = (2 * Math.PI * k) / radii.length;
        const reach = (radius / 100) * scale;
        return [34 + centre[0] / 50 + reach * Math.cos(turn), -14 + centre[1] / 50 + reach * Math.sin(turn)];
      });
      return [...corners, corners[0] ?? ([0, 0] as const)];
    };
    return [hole ? [ring(1), ring(0.4)] : [ring(1)]];
  });

/** Corners on a coarse grid, in any order: rings that cross, touch and repeat themselves. */
const tangle: fc.Arbitrary<OverlayPolygons> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 })), { minLength: 3, maxLength: 5 })
  .map((corners) => [[[...corners, corners[0] ?? [0, 0]]]]);

describe('two overlay libraries', () => {
  it('cut the same area out of random polygons', () => {
    fc.assert(
      fc.property(star, star, (a, b) => {
        const [byGeos, byClipping] = [geos.prepare(a), clipping.prepare(b)];
        const area = squareDegrees(byGeos.intersection(b));
        expect(Math.abs(squareDegrees(byClipping.intersection(a)) - area)).toBeLessThan(1e-9);
        byGeos.release();
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  it('agree on what a random polygon covers', () => {
    fc.assert(
      fc.property(star, fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 200 }), (a, x, y) => {
        const small: OverlayPolygons = [[boxRing(33 + x / 50, -15 + y / 50, 0.1)]];
        const [byGeos, byClipping] = [geos.prepare(a), clipping.prepare(a)];
        expect(byClipping.covers(small)).toBe(byGeos.covers(small));
        byGeos.release();
      }),
      { seed: 2, numRuns: 400 },
    );
  });

  it('find the same triangles, quadrangles and pentagons crossed, and repair those that only cross once to the same area', () => {
    fc.assert(
      fc.property(tangle, (polygons) => {
        const [a, b] = [geos.makeValid(polygons), clipping.makeValid(polygons)];
        expect(a === null).toBe(b === null);
        if (a) expect(geos.isValid(a)).toBe(true);
        if (geos.isValid(polygons)) expect(clipping.isValid(polygons)).toBe(true);
        if (polygons[0]?.[0]?.length === 4 && a && b) expect(squareDegrees(a)).toBeCloseTo(squareDegrees(b), 9);
      }),
      { seed: 3, numRuns: 400 },
    );
  });
});

describe('geos', () => {
  it('gives back the memory it takes: 10,000 overlays of a ring of 800 corners do not make its heap grow', async () => {
    const library = (await import('geos-wasm')) as unknown as {
      default(): Promise<{ Module: { HEAPU8: Uint8Array } }>;
    };
    const { Module } = await library.default();
    const corners = Array.from({ length: 800 }, (_, k): readonly [number, number] => {
      const turn = (2 * Math.PI * k) / 800;
      return [Math.cos(turn), Math.sin(turn)];
    });
    const round: OverlayPolygons = [[corners]];
    const prepared = geos.prepare([[boxRing(0, 0, 1)]]);
    geos.makeValid(prepared.intersection(round));
    const bytes = Module.HEAPU8.length;
    for (let i = 0; i < 10_000; i++) prepared.intersection(round);
    for (let i = 0; i < 1000; i++) geos.prepare(geos.makeValid(round) ?? []).release();
    prepared.release();
    expect(Module.HEAPU8.length).toBe(bytes);
  });
});
