import type { PolygonOverlay } from '../../numerics/polygon-overlay.ts';
import { wetRoadRule } from '../../reference/speeds.ts';
import type { Decisions } from '../../vocabulary/decisions.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { HandoverPlace, Places, Site, TravelTables } from '../../vocabulary/stage-results/places.ts';
import type { StageResult } from '../../vocabulary/stage-results/stage-result.ts';
import { buildRoadGraph } from './build-road-graph.ts';
import { openArcCosting } from './cost-arcs.ts';
import { describePlaces } from './describe-places.ts';
import { findHandoverPlaces } from './find-handover-places.ts';
import { findUnreachable } from './find-unreachable.ts';
import { groupVehicles } from './group-vehicles.ts';
import { listClosures } from './list-closures.ts';
import { measureRoads } from './measure-roads.ts';
import { noteLand } from './note-land.ts';
import { noteRoads } from './note-roads.ts';
import { repairPolygons } from './repair-polygons.ts';
import { RoadFinder } from './road-finder.ts';
import { shareZones } from './share-zones.ts';
import { snapSites } from './snap-sites.ts';
import { tabulateTravel } from './tabulate-travel.ts';

/**
 * Stage 2: which zone each community lies in, how much land it has, where it is handed over, and how far everything is by
 * road. Areas in hectares on the ellipsoid; travel in minutes and kilometres.
 */
export function locatePlaces(scenario: Scenario, decisions: Decisions, overlay: PolygonOverlay): StageResult<Places> {
  const communities = repairPolygons(scenario.communities, 'community', overlay);
  const zones = repairPolygons(scenario.zones, 'zone', overlay);
  const shared = shareZones(scenario, communities, zones, overlay);
  const handover = findHandoverPlaces(scenario, communities.polygons);
  const sites = listSites(scenario, handover.places);
  const roads = connectSites(scenario, decisions, handover.places, sites);
  return {
    result: {
      communityPolygons: communities.polygons,
      zonePolygons: zones.polygons,
      communityAreaHa: communities.areaHa,
      zoneAreaHa: zones.areaHa,
      shares: shared.shares,
      handoverPlaces: handover.places,
      communityPlace: handover.communityPlace,
      sites,
      travel: roads.travel,
      unreachable: roads.unreachable,
    },
    problems: [
      ...communities.problems,
      ...zones.problems,
      ...shared.problems,
      ...noteLand(scenario, communities.areaHa),
      ...roads.problems,
    ],
    provenance: describePlaces(),
  };
}

function listSites(scenario: Scenario, places: readonly HandoverPlace[]): readonly Site[] {
  return [
    ...scenario.depots.map((depot, index): Site => ({ kind: 'depot', index, position: depot.position })),
    ...places.map((place, index): Site => ({ kind: 'handover', index, position: place.position })),
  ];
}

function connectSites(
  scenario: Scenario,
  decisions: Decisions,
  places: readonly HandoverPlace[],
  sites: readonly Site[],
) {
  const measured = measureRoads(scenario.roads);
  const finder = new RoadFinder(scenario.roads);
  const { classes, vehicleClass } = groupVehicles(scenario);
  const closures = listClosures(scenario, decisions, finder);
  const joins = classes.map((one) => snapSites(scenario, sites, one, measured, finder));
  const graph = buildRoadGraph(measured, joins);
  const costing = openArcCosting(graph, measured, wetRoadRule(scenario.assumptions));
  const travel: TravelTables = {
    classes,
    vehicleClass,
    closureSets: closures.sets,
    dayClosureSet: closures.daySet,
    tables: tabulateTravel(graph, classes, closures.sets, scenario.depots.length, costing),
    graph,
  };
  const unreachable = findUnreachable(scenario, sites, travel, joins);
  const noted = noteRoads(scenario, measured, finder, places, travel, unreachable);
  return { travel, unreachable, problems: [...closures.problems, ...noted] };
}
