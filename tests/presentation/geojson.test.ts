import { describe, expect, it } from 'vitest';
import type { MultiPolygon, Position } from '../../src/engine/index.ts';
import { routesGeojson } from '../../src/presentation/exports/routes-geojson.ts';
import { zonesGeojson } from '../../src/presentation/exports/zones-geojson.ts';
import { recordSmallPlan } from '../engine/record/record-small-plan.ts';
import { smallPlan } from '../engine/stages/7-outcomes/small-plan.ts';

const plan = recordSmallPlan();

/** Clockwise exterior, counter-clockwise hole: the wrong way round. */
const WRONG_WAY: MultiPolygon = [
  [
    [
      [28, -14],
      [28, -13],
      [29, -13],
      [29, -14],
      [28, -14],
    ],
    [
      [28.4, -13.6],
      [28.6, -13.6],
      [28.6, -13.4],
      [28.4, -13.4],
      [28.4, -13.6],
    ],
  ],
];

/** Twice the signed area in the plane: positive where a ring runs counter-clockwise. */
function turn(ring: readonly Position[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] as Position;
    return sum + x * nextY - nextX * y;
  }, 0);
}

describe('zones as GeoJSON', () => {
  it('winds exterior rings counter-clockwise and holes clockwise (RFC 7946 section 3.1.6)', () => {
    const { type, features } = JSON.parse(zonesGeojson(plan, [WRONG_WAY]));
    expect(type).toBe('FeatureCollection');
    const [exterior, hole] = features[0].geometry.coordinates[0];
    expect(turn(exterior)).toBeGreaterThan(0);
    expect(turn(hole)).toBeLessThan(0);
    expect(exterior[0]).toEqual(exterior.at(-1));
  });

  it('carries the columns of zones.csv', () => {
    const { features } = JSON.parse(zonesGeojson(plan, [WRONG_WAY]));
    expect(features[0].properties).toMatchObject({ zone_id: 'Z1', planned_ha: 10, hectares_reached: 2 });
  });

  it('has no geometry for a zone that is a point (RFC 7946 section 3.2)', () => {
    expect(JSON.parse(zonesGeojson(plan, [null])).features[0].geometry).toBeNull();
  });
});

describe('routes as GeoJSON', () => {
  const { roads, depots } = smallPlan().scenario;
  const write = (of: typeof plan) =>
    JSON.parse(
      routesGeojson(
        of,
        roads,
        depots.map(({ position }) => position),
      ),
    );

  it('draws a trip along its roads, there and back, and its stops', () => {
    const { features } = write(plan);
    expect(features.map(({ geometry }: { geometry: { type: string } }) => geometry.type)).toEqual([
      'LineString',
      'Point',
    ]);
    expect(features[0].geometry.coordinates).toEqual([
      [28.4, -13.5],
      [28.45, -13.49],
      [28.5, -13.5],
      [28.45, -13.49],
      [28.4, -13.5],
    ]);
    expect(features[0].properties).toMatchObject({
      vehicle_id: 'V1',
      leaves: '06:40',
      returns: '08:20',
      load_kg: 361.2,
    });
    expect(features[1].properties).toMatchObject({ stop: 1, place_id: 'C1', arrives: '07:10' });
  });

  it('cuts a road where a leg joins it between two vertices', () => {
    const [leg, back] = plan.delivery.legs;
    if (!leg || !back) throw new Error('the small plan drives two legs');
    const half = {
      ...plan,
      delivery: { ...plan.delivery, legs: [{ ...leg, pieces: [[0, 0.5, 1.5] as const] }, back] },
    };
    expect(write(half).features[0].geometry.coordinates.slice(0, 5)).toEqual([
      [28.4, -13.5],
      [28.425, -13.495],
      [28.45, -13.49],
      [28.475, -13.495],
      [28.5, -13.5],
    ]);
  });
});
