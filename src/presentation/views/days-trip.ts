import { type Plan, parseIsoDate, type Scenario, type TripAtHour, type TripQuestion } from '../../engine/index.ts';
import type { HeatPoint } from './days-heat.ts';

/** The question how a trip of the plan would go if it left at another minute. */
export function tripQuestion(plan: Plan, scenario: Scenario, trip: number, leaveMinute: number): TripQuestion {
  const { trips, stops, legs, loads } = plan.delivery;
  const rows = stops.trip.flatMap((of, row) => (of === trip ? [row] : []));
  const limits = rows.flatMap((row) => (stops.loads[row] ?? []).map((load) => limitOf(plan, load)));
  const known = limits.filter((limit) => limit !== null);
  return {
    vehicle: trips.vehicle[trip] ?? -1,
    day: (parseIsoDate(trips.date[trip] ?? '') ?? 0) - (parseIsoDate(plan.scenario.planningFrom) ?? 0),
    iceKg: trips.iceKg[trip] ?? 0,
    leaveMinute,
    stops: rows.map((row) => ({
      site: scenario.depots.length + (stops.place[row] ?? 0),
      legMinutes: legs[stops.leg[row] ?? -1]?.minutes ?? 0,
      restMinutes: stops.restMinutes[row] ?? 0,
      serviceMinutes: (stops.departMinute[row] ?? 0) - (stops.startMinute[row] ?? 0),
      opensMinute: opensAt(plan, scenario, stops.place[row] ?? -1),
      inoculantKg: (stops.loads[row] ?? []).reduce((sum, load) => sum + (loads.inoculantKg[load] ?? 0), 0),
    })),
    returnLegMinutes: legs[trips.returnLeg[trip] ?? -1]?.minutes ?? 0,
    storageLimitC: known.length === 0 ? null : Math.min(...known),
  };
}

const limitOf = ({ delivery, allocation }: Plan, load: number): number | null =>
  allocation.consignments.maxStorageC[delivery.loads.consignment[load] ?? -1] ?? null;

function opensAt({ ids, places }: Plan, scenario: Scenario, place: number): number {
  if (places.placeGiven[place] !== 1) return 0;
  return scenario.handoverPoints.find(({ id }) => id === ids.places[place])?.opens ?? 0;
}

/** The packs' line of a trip at another hour. */
export const packsLine = ({ curve }: TripAtHour): readonly HeatPoint[] =>
  curve.minute.map((minute, i) => [minute, curve.packC[i] ?? 0]);
