import { geodesicKm } from '../../numerics/geodesic-length.ts';
import { pointOnSurface } from '../../numerics/point-on-surface.ts';
import { HEIGHT_STEP_M } from '../../reference/solar.ts';
import type { Position } from '../../vocabulary/places.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';

/**
 * Which weather each zone and site is taken to have. A weather place is a station that some zone or site is nearest to, at
 * the height of the places that take its air: a community far above its station is a weather place of its own.
 */
export interface WeatherPlaces {
  /** Index into scenario.weather per weather place, ascending; a single -1 where there is no station at all. */
  readonly stations: Int32Array;
  /** Height of the weather place above its station, m in steps of HEIGHT_STEP_M; 0 where either height is unknown. */
  readonly riseM: Float64Array;
  readonly positions: readonly Position[];
  /** Per zone and, last, for communities outside all zones: weather place, and km to it (NaN without a station). */
  readonly zoneStation: Int32Array;
  readonly zoneStationKm: Float64Array;
  readonly siteStation: Int32Array;
}

/**
 * Gives every zone and site its nearest station by the shortest line on the ellipsoid; the first in the scenario's
 * order where two are as near.
 *
 * @param eligible indexes of the stations that may be taken, ascending
 */
export function assignStations(scenario: Scenario, places: Places, eligible: readonly number[]): WeatherPlaces {
  const zonePositions = [
    ...scenario.zones.map((_, zone) => zonePosition(scenario, places, zone)),
    middleOfCommunities(places),
  ];
  const nearestTo = (position: Position) => nearestStation(scenario, eligible, position);
  const zones = zonePositions.map(nearestTo);
  const sites = places.sites.map((site, s) => {
    const { station } = nearestTo(site.position);
    return {
      station,
      riseM: riseAbove(scenario.weather[station]?.elevationM ?? null, heightOfSite(scenario, places, s)),
    };
  });
  const ofZones = zones.map(({ station }) => ({ station, riseM: 0 }));
  const used = [...ofZones, ...sites].sort((a, b) => a.station - b.station || a.riseM - b.riseM);
  const kinds = used.filter((kind, i) => i === 0 || !isSame(kind, used[i - 1] as WeatherPlace));
  const placeOf = (kind: WeatherPlace) => kinds.findIndex((known) => isSame(known, kind));
  return {
    stations: Int32Array.from(kinds, ({ station }) => station),
    riseM: Float64Array.from(kinds, ({ riseM }) => riseM),
    positions: kinds.map(({ station }) => scenario.weather[station]?.position ?? middleOfCommunities(places)),
    zoneStation: Int32Array.from(ofZones, placeOf),
    zoneStationKm: Float64Array.from(zones, ({ km }) => km),
    siteStation: Int32Array.from(sites, placeOf),
  };
}

interface WeatherPlace {
  readonly station: number;
  readonly riseM: number;
}

const isSame = (a: WeatherPlace, b: WeatherPlace): boolean => a.station === b.station && a.riseM === b.riseM;

function riseAbove(stationM: number | null, placeM: number | null): number {
  if (stationM === null || placeM === null) return 0;
  return Math.round((placeM - stationM) / HEIGHT_STEP_M) * HEIGHT_STEP_M + 0;
}

/** A depot's own height; of a hand-over place the mean of its communities' known ones. */
function heightOfSite({ depots, communities }: Scenario, places: Places, s: number): number | null {
  const site = places.sites[s];
  if (site?.kind === 'depot') return depots[site.index]?.elevationM ?? null;
  const known = (places.handoverPlaces[site?.index ?? -1]?.communities ?? []).flatMap(
    (community) => communities[community]?.elevationM ?? [],
  );
  return known.length > 0 ? known.reduce((sum, metres) => sum + metres, 0) / known.length : null;
}

interface NearestStation {
  readonly station: number;
  readonly km: number;
}

function nearestStation(scenario: Scenario, eligible: readonly number[], position: Position): NearestStation {
  let nearest: NearestStation = { station: -1, km: Number.NaN };
  for (const station of eligible) {
    const km = geodesicKm(position, (scenario.weather[station] as Scenario['weather'][number]).position);
    if (nearest.station < 0 || km < nearest.km) nearest = { station, km };
  }
  return nearest;
}

function zonePosition(scenario: Scenario, places: Places, zone: number): Position {
  const geometry = scenario.zones[zone]?.geometry;
  if (geometry?.kind === 'point') return geometry.position;
  return pointOnSurface(places.zonePolygons[zone] ?? []) ?? middleOfCommunities(places);
}

/** Mean longitude and latitude of the communities' hand-over places; good enough to choose a station by. */
function middleOfCommunities({ communityPlace, handoverPlaces }: Places): Position {
  let [lon, lat] = [0, 0];
  for (const place of communityPlace) {
    const position = handoverPlaces[place]?.position ?? [0, 0];
    lon += position[0];
    lat += position[1];
  }
  const count = Math.max(1, communityPlace.length);
  return [lon / count, lat / count];
}
