import type { Community, Places, Position, Scenario, TravelTable, TravelTables } from '../../src/engine/index.ts';

/**
 * The places of a scenario without roads: every community is handed its goods at its own point, outside all zones, and
 * all vehicles are of one class. The test states the tables it travels by.
 */
export function blankPlaces(
  scenario: Scenario,
  { travel, ...parts }: Partial<Omit<Places, 'travel'>> & { readonly travel?: Partial<TravelTables> } = {},
): Places {
  const { communities, zones, depots } = scenario;
  return {
    communityPolygons: communities.map(() => null),
    zonePolygons: zones.map(() => null),
    communityAreaHa: new Float64Array(communities.length).fill(Number.NaN),
    zoneAreaHa: new Float64Array(zones.length).fill(Number.NaN),
    shares: zoneShares(communities.map((_, c) => [c, -1, 1])),
    handoverPlaces: communities.map((community, c) => ({
      pointId: null,
      name: community.name,
      position: pointOf(community),
      status: 'assumed',
      communities: [c],
      opensMinute: null,
      closesMinute: null,
      store: community.store,
    })),
    communityPlace: Int32Array.from(communities, (_, c) => c),
    sites: [
      ...depots.map(({ position }, index) => ({ kind: 'depot' as const, index, position })),
      ...communities.map((community, index) => ({ kind: 'handover' as const, index, position: pointOf(community) })),
    ],
    travel: { ...blankTravel(scenario), ...travel },
    unreachable: [],
    ...parts,
  };
}

function pointOf({ id, geometry }: Community): Position {
  if (geometry.kind === 'area') throw new Error(`community ${id} is no point`);
  return geometry.position;
}

function blankTravel({ vehicles, planning }: Scenario): TravelTables {
  const roadsAllowed = vehicles[0]?.roadsAllowed ?? [];
  return {
    classes: [{ roadsAllowed, motorcycle: false, vehicles: vehicles.map((_, v) => v) }],
    vehicleClass: new Int32Array(vehicles.length),
    closureSets: [[]],
    dayClosureSet: new Int32Array(planning.to - planning.from + 1),
    tables: [],
    graph: {
      nodeCount: 0,
      arcOffsets: new Int32Array(1),
      arcTo: new Int32Array(0),
      arcKm: new Float64Array(0),
      arcPieces: [],
      siteNode: [],
      siteAccessKm: [],
    },
  };
}

/** Rows as [community, zone or -1, share of the community's land]. */
export const zoneShares = (rows: readonly (readonly [number, number, number])[]): Places['shares'] => ({
  community: Int32Array.from(rows, ([community]) => community),
  zone: Int32Array.from(rows, ([, zone]) => zone),
  share: Float64Array.from(rows, ([, , share]) => share),
});

/** The legs between so many sites; null where there is no way. */
export function travelTable(
  sites: number,
  leg: (from: number, to: number) => { readonly minutes: number; readonly km: number } | null,
): TravelTable {
  const offsets = new Int32Array(sites + 1);
  const destinations: number[] = [];
  const minutes: number[] = [];
  const kilometres: number[] = [];
  for (let from = 0; from < sites; from++) {
    for (let to = 0; to < sites; to++) {
      const found = from === to ? null : leg(from, to);
      if (found === null) continue;
      destinations.push(to);
      minutes.push(found.minutes);
      kilometres.push(found.km);
    }
    offsets[from + 1] = destinations.length;
  }
  return {
    offsets,
    destinations: Int32Array.from(destinations),
    minutes: Float64Array.from(minutes),
    kilometres: Float64Array.from(kilometres),
  };
}
