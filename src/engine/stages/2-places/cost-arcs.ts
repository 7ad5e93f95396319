import type { WetRoadRule } from '../../reference/speeds.ts';
import { speedKmPerHour } from '../../science/travel-time.ts';
import type { RoadState } from '../../vocabulary/places.ts';
import type { RoadGraph, VehicleClass } from '../../vocabulary/stage-results/places.ts';
import { type MeasuredRoads, pieceKm } from './measure-roads.ts';

/** Minutes of every arc for a vehicle class on closed roads and a road state; infinite where it may not or cannot pass. */
export type ArcCosting = (vehicleClass: VehicleClass, closed: readonly number[], roadState: RoadState) => Float64Array;

/** Lays the road pieces of all arcs side by side once, so that each costing is one pass over columns. */
export function openArcCosting(graph: RoadGraph, measured: MeasuredRoads, rule: WetRoadRule): ArcCosting {
  const pieces = graph.arcPieces.flat();
  const road = Int32Array.from(pieces, (piece) => piece.road);
  const km = Float64Array.from(pieces, (piece) => pieceKm(measured, piece));
  const end = new Int32Array(graph.arcPieces.length);
  for (const [arc, held] of graph.arcPieces.entries()) end[arc] = (end[arc - 1] ?? 0) + held.length;
  return (vehicleClass, closed, roadState) => {
    const minutesPerKm = paceOfRoads(measured, vehicleClass, closed, roadState, rule);
    let piece = 0;
    return Float64Array.from(end, (pieceEnd) => {
      let minutes = 0;
      for (; piece < pieceEnd; piece++)
        minutes += (km[piece] as number) * (minutesPerKm[road[piece] as number] as number);
      return minutes;
    });
  };
}

function paceOfRoads(
  { roads }: MeasuredRoads,
  { roadsAllowed, motorcycle }: VehicleClass,
  closed: readonly number[],
  roadState: RoadState,
  rule: WetRoadRule,
): Float64Array {
  const pace = Float64Array.from(roads, ({ roadClass, surface }) =>
    roadsAllowed.includes(roadClass) ? 60 / speedKmPerHour(roadClass, surface, roadState, motorcycle, rule) : 1 / 0,
  );
  for (const road of closed) pace[road] = Number.POSITIVE_INFINITY;
  return pace;
}
