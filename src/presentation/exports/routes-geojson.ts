import { clockText, type Plan, type Position, type RoadLine } from '../../engine/index.ts';
import { alongRoad } from '../along-road.ts';
import { idAt } from './id-at.ts';

/**
 * Routes as GeoJSON (RFC 7946): one LineString per trip along the roads driven, from its depot and back, and one Point per
 * stop, both with what a driver asks for as properties.
 *
 * @param roads road lines in the plan's order (scenario order)
 * @param depots positions in the plan's order of depots
 */
export function routesGeojson(plan: Plan, roads: readonly RoadLine[], depots: readonly Position[]): string {
  const features = plan.delivery.trips.vehicle.flatMap((_, trip) => [
    tripFeature(plan, trip, roads, depots),
    ...stopFeatures(plan, trip),
  ]);
  return `${JSON.stringify({ type: 'FeatureCollection', features })}\n`;
}

function stopsOf({ delivery }: Plan, trip: number): number[] {
  return delivery.stops.trip.flatMap((of, stop) => (of === trip ? [stop] : []));
}

function tripFeature(plan: Plan, trip: number, roads: readonly RoadLine[], depots: readonly Position[]) {
  const { trips, stops } = plan.delivery;
  const stopRows = stopsOf(plan, trip);
  const legs = [...stopRows.map((stop) => stops.leg[stop] ?? -1), trips.returnLeg[trip] ?? -1];
  return {
    type: 'Feature',
    properties: {
      date: trips.date[trip] ?? null,
      vehicle_id: idAt(plan.ids.vehicles, trips.vehicle[trip]),
      trip: trips.trip[trip] ?? null,
      leaves: clockText(trips.leaveMinute[trip] ?? 0),
      returns: clockText(trips.returnMinute[trip] ?? 0),
      stops: stopRows.length,
      load_kg: trips.loadKg[trip] ?? null,
      ice_kg: trips.iceKg[trip] ?? null,
      kilometres: trips.kilometres[trip] ?? null,
    },
    geometry: { type: 'LineString', coordinates: alongLegs(plan, legs, roads, depots) },
  };
}

function stopFeatures(plan: Plan, trip: number) {
  const { trips, stops } = plan.delivery;
  return stopsOf(plan, trip).map((stop, i) => {
    const place = stops.place[stop] ?? -1;
    return {
      type: 'Feature',
      properties: {
        date: trips.date[trip] ?? null,
        vehicle_id: idAt(plan.ids.vehicles, trips.vehicle[trip]),
        trip: trips.trip[trip] ?? null,
        stop: i + 1,
        place_id: idAt(plan.ids.places, place),
        arrives: clockText(stops.arriveMinute[stop] ?? 0),
        departs: clockText(stops.departMinute[stop] ?? 0),
        load_kg: stops.loadKg[stop] ?? null,
        box_max_c: stops.packMaxC[stop] ?? null,
      },
      geometry: { type: 'Point', coordinates: placePosition(plan, place) },
    };
  });
}

function placePosition({ places }: Plan, place: number): Position {
  return [places.placeLon[place] ?? 0, places.placeLat[place] ?? 0];
}

/** Positions along legs: from site to road, along its pieces, to the next site; neighbours that are equal stand once. */
function alongLegs(
  plan: Plan,
  legs: readonly number[],
  roads: readonly RoadLine[],
  depots: readonly Position[],
): Position[] {
  const site = (index: number): Position => depots[index] ?? placePosition(plan, index - depots.length);
  const all = legs.flatMap((index) => {
    const leg = plan.delivery.legs[index];
    if (!leg) return [];
    const pieces = leg.pieces.flatMap(([road, from, to]) => alongRoad(roads[road]?.positions ?? [], from, to));
    return [site(leg.fromSite), ...pieces, site(leg.toSite)];
  });
  const line = all.filter((position, i) => {
    const before = all[i - 1];
    return before === undefined || before[0] !== position[0] || before[1] !== position[1];
  });
  // A LineString has two positions or more (RFC 7946 section 3.1.4).
  return line.length === 1 && line[0] ? [line[0], line[0]] : line;
}
