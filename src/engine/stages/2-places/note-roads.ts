import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { UnreachableReason } from '../../vocabulary/reasons.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { HandoverPlace, TravelTables, Unreachable } from '../../vocabulary/stage-results/places.ts';
import { findRoadPieces } from './find-road-pieces.ts';
import type { MeasuredRoads } from './measure-roads.ts';
import type { RoadFinder } from './road-finder.ts';
import { rounded } from './rounded.ts';

/** The nearer a reason is to being served, the more it helps to know: the first of these that holds is told. */
const TELLING: readonly UnreachableReason[] = [
  'no-way-there-and-back',
  'road-piece-without-depot',
  'no-road-within-reach',
  'no-vehicle',
];
/** Far enough to find a road for any depot on land, and to say so for one at sea. */
const SEARCH_KM = 500;

/** What the road file and the sites on it ask to be told. */
export function noteRoads(
  scenario: Scenario,
  measured: MeasuredRoads,
  finder: RoadFinder,
  places: readonly HandoverPlace[],
  travel: TravelTables,
  unreachable: readonly Unreachable[],
): readonly Problem[] {
  return [
    ...noteNetwork(measured),
    ...noteDepots(scenario, measured, finder, travel),
    ...noteCommunities(scenario, places, travel, unreachable),
  ];
}

function noteNetwork(measured: MeasuredRoads): Problem[] {
  if (measured.roads.length === 0) return [problem('E2011', { column: 'roads' })];
  const { count, totalKm, longestKm } = findRoadPieces(measured, () => true);
  return count > 1
    ? [
        problem('E2008', {
          column: 'roads',
          facts: { pieces: count, totalKm: rounded(totalKm, 1), longestKm: rounded(longestKm, 1) },
        }),
      ]
    : [];
}

/** Depots that some vehicle class of theirs, or any class where they have none, cannot leave by road. */
function noteDepots(
  scenario: Scenario,
  measured: MeasuredRoads,
  finder: RoadFinder,
  { classes, vehicleClass, graph }: TravelTables,
): Problem[] {
  return scenario.depots.flatMap(({ id, position }, depot) => {
    const own = scenario.vehicles.flatMap((vehicle, v) => (vehicle.depotId === id ? [vehicleClass[v] as number] : []));
    const concerned = own.length > 0 ? [...new Set(own)] : [...classes.keys()];
    if (measured.roads.length === 0 || concerned.some((c) => (graph.siteNode[c]?.[depot] ?? -1) >= 0)) return [];
    const nearest = finder.nearest(position, SEARCH_KM, () => true);
    const facts = { id, lat: position[1], lon: position[0], km: rounded(nearest?.km ?? SEARCH_KM, 1) };
    return [problem('E2009', { column: 'lat', about: { part: 'depots', id }, facts })];
  });
}

/** Communities whose place no vehicle class serves. */
function noteCommunities(
  { communities }: Scenario,
  places: readonly HandoverPlace[],
  { classes }: TravelTables,
  unreachable: readonly Unreachable[],
): Problem[] {
  const reasonsOfPlace: UnreachableReason[][] = places.map(() => []);
  for (const { place, reason } of unreachable) reasonsOfPlace[place]?.push(reason);
  return places.flatMap((place, p) => {
    const reasons = reasonsOfPlace[p] ?? [];
    if (reasons.length < classes.length) return [];
    const reason = TELLING.find((told) => reasons.includes(told)) ?? 'no-vehicle';
    return place.communities.map((community) =>
      problem('E2010', {
        about: { part: 'communities', id: communities[community]?.id ?? '' },
        facts: { id: communities[community]?.id ?? '', reason },
      }),
    );
  });
}
