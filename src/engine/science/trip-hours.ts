import { COOL_STORE_CELSIUS } from '../reference/boxes.ts';
import { MOTORCYCLE_SERVICE_MINUTES, SERVICE_MINUTES } from '../reference/service-times.ts';
import type { Vehicle } from '../vocabulary/fleet.ts';
import type { Depot } from '../vocabulary/scenario.ts';

/** Hours that bound every trip of a vehicle-day, minutes of the local day. Loading before a trip comes on top. */
export interface TripHours {
  readonly earliestLeave: number;
  readonly latestBack: number;
}

/**
 * A vehicle leaves after its shift begins, after sunrise and when the roads open; it is back before its shift ends, the depot
 * closes, the sun sets and the roads close.
 */
export function tripHours(
  vehicle: Vehicle,
  depot: Depot,
  sunriseMinute: number,
  sunsetMinute: number,
  roadHours: { readonly opens: number; readonly closes: number } | null,
): TripHours {
  return {
    earliestLeave: Math.max(vehicle.shiftStart, depot.opens, sunriseMinute, roadHours?.opens ?? 0),
    latestBack: Math.min(
      vehicle.shiftStart + vehicle.maxHours * 60,
      depot.closes,
      sunsetMinute,
      roadHours?.closes ?? 1440,
    ),
  };
}

/** Minutes of a hand-over, unloading and training not counted. */
export function serviceMinutesOf(vehicle: Vehicle): number {
  const motorcycle = vehicle.kind.toLowerCase().includes('moto');
  return (motorcycle ? MOTORCYCLE_SERVICE_MINUTES : SERVICE_MINUTES).value;
}

/** Temperature of packs as they leave a depot, °C; NaN: as warm as the shade there. */
export function packStartCelsius({ coolStoreC, coolStoreLitres }: Depot): number {
  return coolStoreC ?? (coolStoreLitres > 0 ? COOL_STORE_CELSIUS.value : Number.NaN);
}
