// Roads: every home joined to the network through its neighbours, plus short cuts; the more ways lead over a road, the
// higher its class. One river; roads cross it at two bridges and at one drift, which floods.
import { draws } from './draws.mjs';

const length = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The river as a bent line through the district, west to east. */
export function makeRiver(seed, [halfWidth, halfHeight]) {
  const random = draws(seed);
  return Array.from({ length: 41 }, (_, i) => {
    const t = i / 40;
    return [-halfWidth * 1.05 + 2.1 * halfWidth * t, halfHeight * (0.42 - 0.75 * t + 0.1 * Math.sin(7 * t)) + random.normal() * 0.5];
  });
}

function crosses([a, b], [c, d]) {
  const side = (p, q, r) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

const crossesRiver = (edge, river) => river.some((p, i) => i > 0 && crosses(edge, [river[i - 1], p]));

export function makeRoads({ seed, homes, neighbours, depots, river }) {
  const random = draws(seed);
  const edges = [];
  neighbours.forEach((list, a) => {
    for (const b of list) if (a < b) edges.push({ a, b, km: length(homes[a], homes[b]), wet: crossesRiver([homes[a], homes[b]], river) });
  });
  // over the river only at the two crossings nearest a depot and at one far from both
  const wetByDepot = edges.filter((e) => e.wet).sort((x, y) => toDepot(x) - toDepot(y));
  function toDepot({ a, b }) {
    return Math.min(...depots.map((d) => length(homes[d], homes[a]) + length(homes[d], homes[b])));
  }
  const bridges = [wetByDepot[0], wetByDepot.find((e) => far(e, wetByDepot[0]) > 14)];
  const drift = wetByDepot.findLast((e) => bridges.every((bridge) => far(e, bridge) > 14));
  function far(x, y) {
    return length(homes[x.a], homes[y.a]);
  }
  const usable = edges.filter((e) => !e.wet || bridges.includes(e) || e === drift);
  const kept = keepRoads(usable, homes.length, (e) => e.wet);
  const ways = countWays(kept, homes.length, depots);
  const order = kept.map((_, i) => i).sort((x, y) => ways[y] - ways[x]);
  const classOf = new Map(order.map((edge, rank) => [edge, classByRank(rank / kept.length)]));
  return kept.map((edge, i) => {
    const isDrift = edge === drift;
    const roadClass = isDrift ? 'unclassified' : classOf.get(i);
    const line = wiggle(random, homes[edge.a], homes[edge.b]);
    return { line, roadClass, surface: surfaceOf(roadClass), isDrift, oneway: false };
  });
}

/** Shortest edges that join everything (Kruskal), and every edge that saves a long way round; crossings always. */
function keepRoads(edges, count, must) {
  const group = Array.from({ length: count }, (_, i) => i);
  const find = (i) => (group[i] === i ? i : (group[i] = find(group[i])));
  const kept = [];
  for (const edge of [...edges].sort((x, y) => Number(must(y)) - Number(must(x)) || x.km - y.km)) {
    const [a, b] = [find(edge.a), find(edge.b)];
    if (a === b && !must(edge) && around(kept, count, edge.a, edge.b) < 2.4 * edge.km) continue;
    group[a] = b;
    kept.push(edge);
  }
  return kept;
}

function around(edges, count, from, to) {
  return shortest(edges, count, from).km[to];
}

function shortest(edges, count, from) {
  const next = Array.from({ length: count }, () => []);
  edges.forEach((edge, i) => {
    next[edge.a].push([edge.b, edge.km, i]);
    next[edge.b].push([edge.a, edge.km, i]);
  });
  const km = Array(count).fill(Number.POSITIVE_INFINITY);
  const via = Array(count).fill(-1);
  const done = Array(count).fill(false);
  km[from] = 0;
  for (;;) {
    let best = -1;
    for (let i = 0; i < count; i++) if (!done[i] && km[i] < Number.POSITIVE_INFINITY && (best < 0 || km[i] < km[best])) best = i;
    if (best < 0) return { km, via };
    done[best] = true;
    for (const [to, more, edge] of next[best]) {
      if (km[best] + more < km[to]) [km[to], via[to]] = [km[best] + more, edge];
    }
  }
}

/** How many homes reach their nearest depot over each road. */
function countWays(edges, count, depots) {
  const ways = edges.map(() => 0);
  const trees = depots.map((depot) => ({ depot, ...shortest(edges, count, depot) }));
  for (let home = 0; home < count; home++) {
    for (const { depot, via } of trees) {
      for (let at = home; at !== depot && via[at] >= 0; ) {
        const edge = edges[via[at]];
        ways[via[at]]++;
        at = edge.a === at ? edge.b : edge.a;
      }
    }
  }
  return ways;
}

function classByRank(share) {
  if (share < 0.06) return 'primary';
  if (share < 0.18) return 'secondary';
  if (share < 0.42) return 'tertiary';
  return share < 0.75 ? 'unclassified' : 'track';
}

const surfaceOf = (roadClass) => (roadClass === 'primary' ? 'paved' : ['secondary', 'tertiary'].includes(roadClass) ? 'gravel' : 'earth');

function wiggle(random, a, b) {
  const bends = Math.max(2, Math.round(length(a, b) / 1.2));
  const push = Array.from({ length: bends - 1 }, () => random.normal() * 0.035 * length(a, b));
  const middle = push.map((p, i) => {
    const t = (i + 1) / bends;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const size = Math.hypot(dx, dy);
    return [a[0] + dx * t - (dy / size) * p, a[1] + dy * t + (dx / size) * p];
  });
  return [a, ...middle, b];
}
