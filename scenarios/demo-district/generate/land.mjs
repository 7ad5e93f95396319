// Communities as shared-edge polygons, grouped into zones. Every edge is bent once, the same for both sides, so that
// neighbours share it to the last decimal and zones are made of whole communities.
import { Delaunay } from 'd3-delaunay';
import { draws, rounded } from './draws.mjs';

const EDGE_BENDS = 3;

/** Kilometres on a plane to [longitude, latitude]; the district is small enough for one scale (1 degree = 111.2 km). */
export const toLonLat = ([lon, lat]) => {
  const kmPerDegreeLon = 111.2 * 0.9703; // cosine of 14 degrees
  return ([x, y]) => [rounded(lon + x / kmPerDegreeLon, 6), rounded(lat + y / 111.2, 6)];
};

/** A blob of the given half-widths: the district's outline, as a test of what lies inside. */
function insideDistrict([x, y], [halfWidth, halfHeight]) {
  const angle = Math.atan2(y / halfHeight, x / halfWidth);
  const reach = 1 + 0.13 * Math.sin(3 * angle + 0.7) + 0.09 * Math.sin(5 * angle + 2.1) + 0.05 * Math.sin(8 * angle);
  return Math.hypot(x / halfWidth, y / halfHeight) < 0.86 * reach;
}

export function makeLand({ seed, communities, zones, halfKm }) {
  const random = draws(seed);
  const [halfWidth, halfHeight] = halfKm;
  const frame = [-halfWidth * 1.5, -halfHeight * 1.5, halfWidth * 1.5, halfHeight * 1.5];
  let points = [];
  const wanted = Math.round((communities * 9) / (Math.PI * 0.74));
  while (points.length < wanted) points.push([random.between(frame[0], frame[2]), random.between(frame[1], frame[3])]);
  for (let round = 0; round < 3; round++) {
    const cells = Delaunay.from(points).voronoi(frame);
    points = points.map((_, i) => middle(cells.cellPolygon(i)));
  }
  const mesh = Delaunay.from(points);
  const cells = mesh.voronoi(frame);
  // the communities are the cells nearest the middle of the district's shape
  const ranked = points
    .map((point, i) => ({ i, point, inside: insideDistrict(point, halfKm), far: Math.hypot(point[0] / halfWidth, point[1] / halfHeight) }))
    .sort((a, b) => Number(b.inside) - Number(a.inside) || a.far - b.far)
    .slice(0, communities)
    .map(({ i }) => i)
    .sort((a, b) => a - b);
  const number = new Map(ranked.map((cell, community) => [cell, community]));
  const bend = bendEdges(random);
  const homes = ranked.map((cell) => points[cell]);
  const rings = ranked.map((cell) => bendRing(cells.cellPolygon(cell), bend));
  const neighbours = ranked.map((cell) => [...cells.neighbors(cell)].filter((n) => number.has(n)).map((n) => number.get(n)));
  const zoneOf = growZones(random, homes, neighbours, zones);
  const zoneRings = Array.from({ length: zones }, (_, zone) => outline(rings.filter((_, i) => zoneOf[i] === zone)));
  return { homes, rings, neighbours, zoneOf, zoneRings };
}

function middle(polygon) {
  const open = polygon.slice(0, -1);
  return [0, 1].map((k) => open.reduce((sum, p) => sum + p[k], 0) / open.length);
}

const pointKey = ([x, y]) => `${x.toFixed(4)},${y.toFixed(4)}`;

/** Bends an edge by halving it again and again, each middle pushed sideways; remembered, so both sides get the same. */
function bendEdges(random) {
  const bent = new Map();
  const halve = (a, b, depth) => {
    if (depth === 0) return [];
    const push = random.normal() * 0.07;
    const m = [(a[0] + b[0]) / 2 - push * (b[1] - a[1]), (a[1] + b[1]) / 2 + push * (b[0] - a[0])];
    return [...halve(a, m, depth - 1), m, ...halve(m, b, depth - 1)];
  };
  return (a, b) => {
    const [ka, kb] = [pointKey(a), pointKey(b)];
    const forward = ka < kb;
    const key = forward ? `${ka}|${kb}` : `${kb}|${ka}`;
    if (!bent.has(key)) bent.set(key, forward ? halve(a, b, EDGE_BENDS) : halve(b, a, EDGE_BENDS));
    return forward ? bent.get(key) : [...bent.get(key)].reverse();
  };
}

/** Counter-clockwise ring with bent edges (RFC 7946 asks for that turn). */
function bendRing(polygon, bend) {
  const corners = polygon.slice(0, -1).filter((p, i, all) => pointKey(p) !== pointKey(all[(i + 1) % all.length]));
  const ring = corners.flatMap((corner, i) => [corner, ...bend(corner, corners[(i + 1) % corners.length])]);
  const turn = ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    return sum + x * ny - nx * y;
  }, 0);
  if (turn < 0) ring.reverse();
  return [...ring, ring[0]];
}

/** Zones grow from spread-out seeds, the smallest taking the nearest free neighbour each time. */
function growZones(random, homes, neighbours, zones) {
  const far = (a, b) => Math.hypot(homes[a][0] - homes[b][0], homes[a][1] - homes[b][1]);
  const seeds = [random.whole(0, homes.length - 1)];
  while (seeds.length < zones) {
    const gap = homes.map((_, i) => Math.min(...seeds.map((s) => far(i, s))));
    seeds.push(gap.indexOf(Math.max(...gap)));
  }
  const zoneOf = homes.map(() => -1);
  seeds.forEach((seed, zone) => {
    zoneOf[seed] = zone;
  });
  const size = seeds.map(() => 1);
  for (let taken = zones; taken < homes.length; ) {
    const order = seeds.map((_, zone) => zone).sort((a, b) => size[a] - size[b] || a - b);
    for (const zone of order) {
      const free = homes
        .map((_, i) => i)
        .filter((i) => zoneOf[i] === -1 && neighbours[i].some((n) => zoneOf[n] === zone))
        .sort((a, b) => far(a, seeds[zone]) - far(b, seeds[zone]));
      if (free.length === 0) continue;
      zoneOf[free[0]] = zone;
      size[zone]++;
      taken++;
      break;
    }
  }
  return zoneOf;
}

/** Outline of rings that share edges: the edges that stand in one ring only, walked around. Largest loop first. */
function outline(rings) {
  const edges = new Map();
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i++) {
      const back = `${pointKey(ring[i])}|${pointKey(ring[i - 1])}`;
      if (edges.has(back)) edges.delete(back);
      else edges.set(`${pointKey(ring[i - 1])}|${pointKey(ring[i])}`, [ring[i - 1], ring[i]]);
    }
  }
  const after = new Map([...edges.values()].map((edge) => [pointKey(edge[0]), edge]));
  const loops = [];
  while (after.size > 0) {
    const [start] = after.values();
    const loop = [start[0]];
    for (let edge = start; edge; edge = after.get(pointKey(edge[1]))) {
      after.delete(pointKey(edge[0]));
      loop.push(edge[1]);
    }
    loops.push(loop);
  }
  return loops.sort((a, b) => b.length - a.length);
}
