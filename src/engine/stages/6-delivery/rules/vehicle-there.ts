import { parseIsoDate } from '../../../vocabulary/calendar.ts';
import type { Decisions } from '../../../vocabulary/decisions.ts';
import type { Vehicle } from '../../../vocabulary/fleet.ts';

/** A vehicle runs on a day within its availability on which no decision sends it away. `dayNumber` counts as DayNumber does. */
export function isVehicleThere(vehicle: Vehicle, dayNumber: number, decisions: Decisions): boolean {
  if (vehicle.availableFrom !== null && dayNumber < vehicle.availableFrom) return false;
  if (vehicle.availableTo !== null && dayNumber > vehicle.availableTo) return false;
  return !decisions.decisions.some(
    (decision) =>
      decision.kind === 'vehicle-away' &&
      decision.vehicleId === vehicle.id &&
      dayNumber >= (parseIsoDate(decision.from) ?? Number.POSITIVE_INFINITY) &&
      dayNumber <= (parseIsoDate(decision.to) ?? Number.NEGATIVE_INFINITY),
  );
}
