import { describe, expect, it } from 'vitest';
import { type Decisions, dayFromCivil, type Position } from '../../../../src/engine/index.ts';
import { traceLeg } from '../../../../src/engine/stages/2-places/trace-legs.ts';
import {
  community,
  depot,
  FIRST_DAY,
  ground,
  leg,
  located,
  NO_DECISIONS,
  point,
  referenceKm,
  road,
  table,
  vehicle,
} from './small-ground.ts';

/** km/h of the world default row of OpenStreetMapSpeeds (MIT, read): primary 51, tertiary 33; track 15 (memory). */
const PRIMARY = 51;
const TERTIARY = 33;
const TRACK = 15;
const minutes = (km: number, kmPerHour: number) => (km / kmPerHour) * 60;

const A: Position = [34, -14];
const B: Position = [34.2, -14];
const C: Position = [34.1, -13.9];
const DEPOT = depot('D', A);
const LORRY = vehicle('L', 'D', 'truck');

describe('a triangle with a one-way road', () => {
  const triangle = {
    depots: [DEPOT],
    vehicles: [LORRY],
    communities: [community('B', point(...B)), community('C', point(...C))],
    roads: [
      road([A, B], { oneway: 'forward' }),
      road([B, C], { roadClass: 'tertiary', surface: 'gravel' }),
      road([C, A]),
    ],
  };
  const { result, problems } = located(triangle);
  const [AB, BC, CA] = [referenceKm(A, B), referenceKm(B, C), referenceKm(C, A)];

  it('is driven straight one way and round the other', () => {
    expect(problems).toEqual([]);
    const there = leg(table(result), 0, 1);
    expect(there?.km).toBeCloseTo(AB, 9);
    expect(there?.minutes).toBeCloseTo(minutes(AB, PRIMARY), 9);
    const back = leg(table(result), 1, 0);
    expect(back?.km).toBeCloseTo(BC + CA, 9);
    expect(back?.minutes).toBeCloseTo(minutes(BC, TERTIARY) + minutes(CA, PRIMARY), 9);
  });

  it('against the line is the same, turned round', () => {
    const turned = located({ ...triangle, roads: [road([B, A], { oneway: 'backward' }), ...triangle.roads.slice(1)] });
    expect(leg(table(turned.result), 0, 1)?.km).toBeCloseTo(AB, 9);
    expect(leg(table(turned.result), 1, 0)?.km).toBeCloseTo(BC + CA, 9);
  });

  it('slows on difficult roads: paved 0.90, gravel 0.75 (assumed)', () => {
    expect(leg(table(result, 0, 0, 1), 0, 1)?.minutes).toBeCloseTo(minutes(AB, PRIMARY * 0.9), 9);
    const back = minutes(BC, TERTIARY * 0.75) + minutes(CA, PRIMARY * 0.9);
    expect(leg(table(result, 0, 0, 1), 1, 0)?.minutes).toBeCloseTo(back, 9);
    expect(table(result, 0, 0, 2)).toBe(table(result, 0, 0, 1));
  });

  it('holds each site as its own neighbour at no distance', () => {
    for (const site of [0, 1, 2]) expect(leg(table(result), site, site)).toEqual({ minutes: 0, km: 0 });
  });

  it('traces a leg as the road pieces that it follows', () => {
    const path = traceLeg(ground(triangle), result, 0, 0, 0, 1, 0);
    expect(path.pieces).toEqual([
      { road: 1, from: 0, to: 1 },
      { road: 2, from: 0, to: 1 },
    ]);
    expect(path.minutes).toBe(leg(table(result), 1, 0)?.minutes);
    expect(path.kilometres).toBe(leg(table(result), 1, 0)?.km);
    expect(traceLeg(ground(triangle), result, 0, 0, 0, 2, 2)).toMatchObject({ minutes: 0, kilometres: 0, pieces: [] });
  });
});

describe('a place beside the middle of a road', () => {
  // 0.009 degrees of latitude north of the road: 996 m.
  const beside: Position = [34.05, -13.991];
  const straight = {
    depots: [DEPOT],
    vehicles: [LORRY],
    communities: [community('X', point(...beside)), community('B', point(...B))],
    roads: [road([A, B])],
  };
  const { result } = located(straight);

  it('joins it at the nearest point and drives the rest at track speed', () => {
    const off = referenceKm([34.05, -14], beside);
    const along = referenceKm(A, B) / 4;
    expect(off).toBeCloseTo(0.996, 3);
    expect(result.travel.graph.siteAccessKm[0]?.[1]).toBeCloseTo(off, 6);
    expect(leg(table(result), 0, 1)?.km).toBeCloseTo(along + off, 5);
    expect(leg(table(result), 0, 1)?.minutes).toBeCloseTo(minutes(along, PRIMARY) + minutes(off, TRACK), 4);
    expect(leg(table(result), 0, 2)?.minutes).toBeCloseTo(minutes(4 * along, PRIMARY), 9);
    const wet = minutes(along, PRIMARY * 0.9) + minutes(off, TRACK * 0.5);
    expect(leg(table(result, 0, 0, 1), 0, 1)?.minutes).toBeCloseTo(wet, 4);
  });

  it('is a place along the line in the traced path, and legs past it are one piece', () => {
    const [piece] = traceLeg(ground(straight), result, 0, 0, 0, 1, 2).pieces;
    expect(piece?.from).toBeCloseTo(0.25, 6);
    expect(piece?.to).toBe(1);
    expect(traceLeg(ground(straight), result, 0, 0, 0, 2, 0).pieces).toEqual([{ road: 0, from: 1, to: 0 }]);
  });

  it('joins the same point for both classes that may use the road', () => {
    const both = located({ ...straight, vehicles: [LORRY, vehicle('M', 'D', 'motorcycle')] }).result;
    expect(both.travel.classes.map(({ motorcycle }) => motorcycle)).toEqual([false, true]);
    expect(both.travel.graph.siteNode[0]).toEqual(both.travel.graph.siteNode[1]);
    expect(both.travel.graph.nodeCount).toBe(3);
  });

  it('is out of reach beyond 2 km', () => {
    const far = located({ ...straight, communities: [community('far', point(34.05, -13.98))] });
    expect(far.result.unreachable).toEqual([{ place: 0, vehicleClass: 0, reason: 'no-road-within-reach' }]);
    expect(far.problems.map(({ code, facts }) => [code, facts['id'], facts['reason']])).toEqual([
      ['E2010', 'far', 'no-road-within-reach'],
    ]);
  });
});

describe('what cannot be reached', () => {
  const island = road([
    [34.1, -14.03],
    [34.2, -14.03],
  ]);

  it('passes a nearer road by when no depot stands on its piece', () => {
    // 0.6 km from the piece without a depot, 1.9 km from the main road.
    const between = community('between', point(34.15, -14.0175));
    const { result, problems } = located({
      depots: [DEPOT],
      vehicles: [LORRY],
      communities: [between],
      roads: [road([A, B]), island],
    });
    expect(leg(table(result), 0, 1)).not.toBeNull();
    expect(result.travel.graph.siteAccessKm[0]?.[1]).toBeCloseTo(referenceKm([34.15, -14], [34.15, -14.0175]), 4);
    expect(problems.map(({ code, facts }) => [code, facts['pieces']])).toEqual([['E2008', 2]]);
  });

  it('says which reason holds: another piece, no way back, no vehicle', () => {
    const communities = [community('piece', point(34.15, -14.03)), community('trap', point(34.3, -14))];
    const roads = [road([A, B]), road([B, [34.3, -14]], { oneway: 'forward' }), island];
    const { result, problems } = located({ depots: [DEPOT], vehicles: [LORRY], communities, roads });
    expect(result.unreachable).toEqual([
      { place: 0, vehicleClass: 0, reason: 'road-piece-without-depot' },
      { place: 1, vehicleClass: 0, reason: 'no-way-there-and-back' },
    ]);
    expect(problems.filter(({ code }) => code === 'E2010').map(({ facts }) => facts['reason'])).toEqual([
      'road-piece-without-depot',
      'no-way-there-and-back',
    ]);
    const without = located({ depots: [DEPOT], communities: [communities[0] ?? community('', point(0, 0))], roads });
    expect(without.problems.map(({ code, facts }) => [code, facts['reason']])).toContainEqual(['E2010', 'no-vehicle']);
  });

  it('differs by what a vehicle may use: the motorcycle alone takes the path', () => {
    const roads = [road([A, B]), road([B, [34.3, -14]], { roadClass: 'path', surface: 'earth' })];
    const vehicles = [LORRY, vehicle('M', 'D', 'Moto', ['primary', 'path'])];
    const { result, problems } = located({
      depots: [DEPOT],
      vehicles,
      communities: [community('X', point(34.3, -14))],
      roads,
    });
    expect(result.unreachable).toEqual([{ place: 0, vehicleClass: 0, reason: 'no-road-within-reach' }]);
    expect(problems).toEqual([]);
    const km = [referenceKm(A, B), referenceKm(B, [34.3, -14])] as const;
    expect(leg(table(result, 1), 0, 1)?.minutes).toBeCloseTo(minutes(km[0], PRIMARY) + minutes(km[1], 15), 9);
    // Closed by rain: the path stays open to the motorcycle, at half speed.
    const wet = minutes(km[0], PRIMARY * 0.9) + minutes(km[1], 7.5);
    expect(leg(table(result, 1, 0, 2), 0, 1)?.minutes).toBeCloseTo(wet, 9);
  });

  it('shuts earth roads to all but motorcycles in the state closed', () => {
    const roads = [road([A, B], { roadClass: 'tertiary', surface: 'earth' })];
    const vehicles = [LORRY, vehicle('M', 'D', 'motorcycle')];
    const { result } = located({ depots: [DEPOT], vehicles, communities: [community('B', point(...B))], roads });
    const slow = minutes(referenceKm(A, B), TERTIARY * 0.6);
    expect(leg(table(result, 0, 0, 1), 0, 1)?.minutes).toBeCloseTo(slow, 9);
    expect(leg(table(result, 0, 0, 2), 0, 1)).toBeNull();
    expect(leg(table(result, 1, 0, 2), 0, 1)?.minutes).toBeCloseTo(slow, 9);
    expect(result.unreachable).toEqual([]);
  });

  it('tells a depot in the sea, and a programme without roads', () => {
    const sea = {
      depots: [depot('S', [34, -15])],
      vehicles: [vehicle('L', 'S', 'truck')],
      communities: [community('B', point(...B))],
    };
    const { result, problems } = located({ ...sea, roads: [road([A, B])] });
    expect(problems.map(({ code, facts }) => [code, facts['id']])).toEqual([
      ['E2009', 'S'],
      ['E2010', 'B'],
    ]);
    expect(problems[0]?.facts['km']).toBeCloseTo(referenceKm([34, -15], A), 0);
    expect(result.unreachable[0]?.reason).toBe('no-vehicle');
    expect(located(sea).problems.map(({ code }) => code)).toEqual(['E2011', 'E2010']);
  });
});

describe('closures', () => {
  const detour: readonly Position[] = [A, C, B];
  const parts = {
    depots: [DEPOT],
    vehicles: [LORRY],
    communities: [community('B', point(...B))],
    roads: [
      road([A, B], { closedFrom: dayFromCivil(2026, 11, 4), closedTo: dayFromCivil(2026, 11, 5) }),
      road(detour, { roadClass: 'tertiary', surface: 'gravel' }),
    ],
  };

  it('make sets of closed roads, both days included, and a table for each', () => {
    const { travel } = located(parts).result;
    expect(travel.closureSets).toEqual([[], [0]]);
    expect([...travel.dayClosureSet]).toEqual([0, 0, 1, 1, 0, 0, 0, 0, 0, 0]);
    const open = located(parts).result;
    expect(leg(table(open, 0, 0), 0, 1)?.km).toBeCloseTo(referenceKm(A, B), 9);
    expect(leg(table(open, 0, 1), 0, 1)?.km).toBeCloseTo(referenceKm(...detour), 9);
    expect(traceLeg(ground(parts), open, 0, 1, 0, 0, 1).pieces).toEqual([{ road: 1, from: 0, to: 2 }]);
  });

  it('may be decided: the road line nearest to the point', () => {
    const decided: Decisions = {
      ...NO_DECISIONS,
      decisions: [
        { kind: 'road-closed', lon: 34.15, lat: -13.951, from: '2026-11-05', to: '2026-11-30' },
        { kind: 'road-closed', lon: 36, lat: -13.951, from: '2026-11-05', to: '2026-11-30' },
      ],
    };
    const { result, problems } = located(parts, decided);
    expect(result.travel.closureSets).toEqual([[], [0], [0, 1], [1]]);
    expect([...result.travel.dayClosureSet]).toEqual([0, 0, 1, 2, 3, 3, 3, 3, 3, 3]);
    expect(leg(table(result, 0, 2), 0, 1)).toBeNull();
    expect(problems.map(({ code, row, facts }) => [code, row, facts['lon']])).toEqual([['E2006', 2, 36]]);
    expect(() => traceLeg(ground(parts), result, 0, 2, 0, 0, 1)).toThrow(RangeError);
  });

  it('of every day leave no way there and back', () => {
    const roads = [road([A, B], { closedFrom: FIRST_DAY })];
    const { result } = located({ ...parts, roads });
    expect(result.travel.closureSets).toEqual([[0]]);
    expect(result.unreachable[0]?.reason).toBe('no-way-there-and-back');
  });
});

describe('many sites', () => {
  it('keep the legs to the nearest 64 and all legs to and from depots', () => {
    const communities = Array.from({ length: 720 }, (_, i) => community(`V${i}`, point(34 + i / 1000, -14)));
    const roads = [road(Array.from({ length: 721 }, (_, i): Position => [34 + i / 1000, -14]))];
    const { result } = located({ depots: [DEPOT], vehicles: [LORRY], communities, roads });
    const held = table(result);
    expect((held?.offsets[1] ?? 0) - (held?.offsets[0] ?? 0)).toBe(721);
    for (const site of [1, 300, 720]) {
      expect(leg(held, site, 0)?.km).toBeCloseTo(leg(held, 0, site)?.km ?? 0, 9);
      const row = [...(held?.destinations.slice(held.offsets[site], held.offsets[site + 1]) ?? [])];
      expect(row.length).toBeGreaterThanOrEqual(64);
      expect(row.length).toBeLessThanOrEqual(65);
      const reach = Math.max(...row.filter((to) => to > 0).map((to) => Math.abs(to - site)));
      expect(reach).toBeLessThanOrEqual(64);
    }
  });
});
