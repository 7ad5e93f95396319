import { describe, expect, it } from 'vitest';
import { clippingOverlay } from '../../../../src/adapters/geometry/clipping-overlay.ts';
import { loadGeosOverlay } from '../../../../src/adapters/geometry/geos-overlay.ts';
import type { Places, PolygonOverlay } from '../../../../src/engine/index.ts';
import { pointInPolygons } from '../../../../src/engine/numerics/point-in-polygon.ts';
import { area, box, community, handoverPoint, located, point, zone } from './small-ground.ts';

const geos = await loadGeosOverlay();

/** Two zones of one degree side by side on the plateau, sharing the meridian of 31 E. */
const WEST = zone('W', box(30, -15, 1));
const EAST = zone('E', box(31, -15, 1));

/** What is noted of land and zones; that these scenarios have no roads is not the question here. */
function onLand({ result, problems }: ReturnType<typeof located>) {
  return { result, problems: problems.filter(({ code }) => code !== 'E2010' && code !== 'E2011') };
}

function rows({ shares }: Places): readonly (readonly number[])[] {
  return [...shares.community].map((c, k) => [c, shares.zone[k] as number, shares.share[k] as number]);
}

describe.each([geos, clippingOverlay()])('communities and zones by $name', (overlay: PolygonOverlay) => {
  const place = (parts: Parameters<typeof located>[0]) => onLand(located(parts, undefined, overlay));

  it('weights by area: three quarters of the width in the west, one in the east', () => {
    const { result, problems } = place({ zones: [WEST, EAST], communities: [community('A', box(30.7, -14.6, 0.4))] });
    const [west, east] = rows(result);
    expect(west?.slice(0, 2)).toEqual([0, 0]);
    expect(west?.[2]).toBeCloseTo(0.75, 12);
    expect(east?.[2]).toBeCloseTo(0.25, 12);
    expect((west?.[2] ?? 0) + (east?.[2] ?? 0)).toBe(1);
    expect(problems).toEqual([]);
  });

  it('gives slivers to the largest part, and keeps what is more than a sliver', () => {
    const sliver = community('S', box(30.6, -14.9, 0.4004, 0.1));
    const more = community('M', box(30.6, -14.7, 0.4005, 0.1));
    expect(rows(place({ zones: [WEST, EAST], communities: [sliver] }).result)).toEqual([[0, 0, 1]]);
    const parts = rows(place({ zones: [WEST, EAST], communities: [more] }).result);
    expect(parts.map(([, share]) => share)).toEqual([0, 1]);
    expect(parts[1]?.[2]).toBeCloseTo(0.0005 / 0.4005, 9);
  });

  it('keeps what lies outside all zones, and says so', () => {
    const { result, problems } = place({ zones: [WEST], communities: [community('A', box(29.8, -14.6, 0.4))] });
    expect(rows(result).map(([, z]) => z)).toEqual([-1, 0]);
    expect(rows(result)[0]?.[2]).toBeCloseTo(0.5, 12);
    expect(problems.map(({ code, facts }) => [code, facts['outsidePercent']])).toEqual([['E2003', 50]]);
  });

  it('counts a point on the edge of two zones once, in the first; and one outside in none', () => {
    const communities = [point(31, -14.5), point(31, -14), point(31.5, -14.5), point(29, -14.5)].map((geometry, i) =>
      community(`P${i}`, geometry),
    );
    const { result, problems } = place({ zones: [WEST, EAST], communities });
    expect(rows(result)).toEqual([
      [0, 0, 1],
      [1, 0, 1],
      [2, 1, 1],
      [3, -1, 1],
    ]);
    expect(problems.map(({ code, facts }) => [code, facts['id']])).toEqual([['E2003', 'P3']]);
    expect(result.communityAreaHa.every(Number.isNaN)).toBe(true);
  });

  it('lets zone_id stand for the whole community, and notes it where less than half lies there', () => {
    const communities = [
      community('half', box(30.8, -14.6, 0.4), { zoneId: 'E' }),
      community('less', box(30.7, -14.5, 0.4), { zoneId: 'E' }),
      community('away', point(30.2, -14.2), { zoneId: 'E' }),
      community('right', point(30.2, -14.2), { zoneId: 'W' }),
      community('edge', point(31, -14.2), { zoneId: 'E' }),
    ];
    const { result, problems } = place({ zones: [WEST, EAST], communities });
    expect(rows(result)).toEqual([
      [0, 1, 1],
      [1, 1, 1],
      [2, 1, 1],
      [3, 0, 1],
      [4, 1, 1],
    ]);
    expect(problems.map(({ code, value, facts }) => [code, value, facts['id'], facts['sharePercent']])).toEqual([
      ['E2004', 'E', 'less', 25],
      ['E2004', 'E', 'away', 0],
    ]);
  });

  it('scales parts of zones that overlap, and says so', () => {
    const over = zone('O', box(30.5, -15, 1));
    const { result, problems } = place({ zones: [WEST, over], communities: [community('A', box(30.4, -14.6, 0.4))] });
    expect(rows(result).map(([, z]) => z)).toEqual([0]);
    expect(problems).toEqual([]);
    const across = place({ zones: [WEST, over], communities: [community('B', box(30.4, -14.6, 0.8, 0.4))] });
    // 0.6 of 0.8 lie in the west, 0.7 of 0.8 in the other: 162.5 percent.
    expect(rows(across.result)[0]?.[2]).toBeCloseTo(0.6 / 1.3, 9);
    expect(across.problems.map(({ code, facts }) => [code, facts['percent']])).toEqual([['E2007', 162.5]]);
  });

  it('repairs a bow-tie and tells the hectares before and after', () => {
    const tie = area([30, -15], [30.2, -14.8], [30.2, -15], [30, -14.8]);
    const { result, problems } = place({ zones: [WEST], communities: [community('tie', tie)] });
    const half = located({ communities: [community('t', area([30, -15], [30.1, -14.9], [30, -14.8]))] }).result;
    expect(result.communityAreaHa[0]).toBeCloseTo(2 * (half.communityAreaHa[0] as number), 6);
    expect(rows(result)).toEqual([[0, 0, 1]]);
    const [noted] = problems;
    expect([noted?.code, noted?.facts['id'], noted?.facts['kind']]).toEqual(['E2001', 'tie', 'community']);
    expect(noted?.facts['afterHa']).toBeGreaterThan(noted?.facts['beforeHa'] as number);
  });

  it('takes a polygon that covers nothing as a point', () => {
    const flat = area([30.1, -14.9], [30.1, -14.8], [30.1, -14.7]);
    const { result, problems } = place({ zones: [WEST], communities: [community('flat', flat)] });
    expect(problems.map(({ code }) => code)).toEqual(['E2002']);
    expect(result.communityPolygons).toEqual([null]);
    expect(rows(result)).toEqual([[0, 0, 1]]);
    expect(result.handoverPlaces[0]?.position[0]).toBe(30.1);
  });
});

describe('land', () => {
  it('notes more legume than land and leaves the plan as given', () => {
    const tiny = box(30.1, -14.9, 0.001);
    const { problems, result } = onLand(
      located({
        zones: [WEST],
        communities: [community('A', tiny), community('B', box(30, -15, 0.1))],
      }),
    );
    expect(problems.map(({ code, facts }) => [code, facts['id'], facts['plannedHa']])).toEqual([['E2005', 'A', 10]]);
    expect(problems[0]?.facts['areaHa']).toBeCloseTo(result.communityAreaHa[0] as number, 1);
    // 0.001 degrees at 14.9 S: 110.6 m by 107.6 m.
    expect(result.communityAreaHa[0]).toBeCloseTo(1.19, 2);
  });
});

describe('hand-over places', () => {
  it('are given points first, then a point inside each other community', () => {
    // A horseshoe: its middle is not in it.
    const horseshoe = area(
      [30, -15],
      [30.9, -15],
      [30.9, -14.1],
      [30.6, -14.1],
      [30.6, -14.8],
      [30.3, -14.8],
      [30.3, -14.1],
      [30, -14.1],
    );
    const communities = [
      community('A', horseshoe),
      community('B', point(30.5, -14.5)),
      community('C', point(30.6, -14.5), { store: 'clay_pot' }),
    ];
    const { result } = located({ communities, handoverPoints: [handoverPoint('P', [30.55, -14.5], ['B', 'C'])] });
    expect(result.handoverPlaces.map(({ pointId, status, communities: served }) => [pointId, status, served])).toEqual([
      ['P', 'given', [1, 2]],
      [null, 'assumed', [0]],
    ]);
    expect([...result.communityPlace]).toEqual([1, 0, 0]);
    expect(pointInPolygons(result.handoverPlaces[1]?.position ?? [0, 0], result.communityPolygons[0] ?? [])).toBe(true);
    expect(result.handoverPlaces[0]?.store).toBe('room');
    expect(result.sites.map(({ kind, index }) => [kind, index])).toEqual([
      ['handover', 0],
      ['handover', 1],
    ]);
  });
});
