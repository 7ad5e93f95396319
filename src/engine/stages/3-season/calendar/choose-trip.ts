import { BOX_LITRES_PER_KG } from '../../../reference/boxes.ts';
import { boxUaWPerK } from '../../../science/box.ts';
import type { Vehicle } from '../../../vocabulary/fleet.ts';
import type { Scenario } from '../../../vocabulary/scenario.ts';
import type { ReferenceTrip, TripWish } from '../../../vocabulary/stage-results/calendar.ts';
import type { Places } from '../../../vocabulary/stage-results/places.ts';

/** Packs of the reference trip: a carton or small box (assumed). */
const PACKS_KG = 5;

/**
 * The trip that days are compared with: the vehicle asked for, else of those with a box (of all, where none has one) the
 * first whose class leaves fewest places without a way; its box and ice, 5 kg of packs or what the box holds.
 */
export function chooseTrip(scenario: Scenario, places: Places, wish: TripWish): ReferenceTrip {
  const index = wish.vehicle ?? usualVehicle(scenario, places);
  const vehicle = scenario.vehicles[index];
  const boxed = (vehicle?.coolLitres ?? 0) > 0;
  const own: ReferenceTrip = {
    vehicle: vehicle ? index : -1,
    leaveMinute: null,
    carriage: vehicle?.carriage ?? 'open_bed',
    coolantC: vehicle?.coolantC ?? 0,
    parksInShade: vehicle?.parksInShade ?? false,
    uaWPerK: vehicle && boxed ? boxUaWPerK(vehicle.coolLitres, vehicle.coolUaWPerK) : null,
    iceKg: vehicle && boxed ? vehicle.iceKg : 0,
    packsKg: vehicle && boxed ? Math.min(PACKS_KG, vehicle.coolLitres / BOX_LITRES_PER_KG.value) : PACKS_KG,
  };
  const trip = { ...own, ...wish, vehicle: own.vehicle };
  return trip.uaWPerK === null ? { ...trip, iceKg: 0 } : trip;
}

function usualVehicle({ vehicles }: Scenario, { travel, unreachable }: Places): number {
  const boxed = vehicles.flatMap(({ coolLitres }, v) => (coolLitres > 0 ? [v] : []));
  const candidates = boxed.length > 0 ? boxed : [...vehicles.keys()];
  const missed = (v: number) => unreachable.filter((row) => row.vehicleClass === travel.vehicleClass[v]).length;
  return candidates.reduce((best, v) => (best < 0 || missed(v) < missed(best) ? v : best), -1);
}

export const vehicleOf = ({ vehicles }: Scenario, { vehicle }: ReferenceTrip): Vehicle | null =>
  vehicles[vehicle] ?? null;
