import { UNLOADING_MINUTES_PER_T } from '../../reference/service-times.ts';
import type { Consignment } from '../../vocabulary/stage-results/allocation.ts';
import { isDrivable, needsRest } from './rules/driving-rest.ts';
import { goesThereAndBack } from './rules/road-access.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Most that one load may weigh and fill. */
export interface LoadLimits {
  readonly kg: number;
  readonly litres: number;
}

/**
 * Largest load that a vehicle can bring on at least half of its days within the consignment's window. Where none can,
 * what the largest vehicle that ever gets there carries, so that the load is held up by hours or days and not by its weight.
 */
export function limitsOf(consignment: Consignment, slots: readonly Slot[], trainingMinutes: number): LoadLimits {
  let payloadKg = 0;
  const kgByGroup = new Map<number, { litres: number; kg: number[] }>();
  for (const slot of slots) {
    if (slot.depot !== consignment.depot) continue;
    const { legs, round } = slot;
    const getsThere = goesThereAndBack(legs, round.localOfPlace.get(consignment.place) as number);
    if (getsThere) payloadKg = Math.max(payloadKg, slot.payloadKg);
    if (slot.day < consignment.earliest || slot.day > consignment.latest) continue;
    const group = kgByGroup.get(slot.group) ?? { litres: slot.coolLitres, kg: [] };
    group.kg.push(largestLoneLoadKg(slot, consignment, trainingMinutes));
    kgByGroup.set(slot.group, group);
  }
  let kg = 0;
  let boxLitres = 0;
  for (const group of kgByGroup.values()) {
    const usual = group.kg.sort((a, b) => b - a)[Math.floor((group.kg.length - 1) / 2)] as number;
    const best = usual > 0 ? usual : (group.kg[0] as number);
    if (best <= 0) continue;
    kg = Math.max(kg, best);
    boxLitres = Math.max(boxLitres, group.litres);
  }
  return { kg: kg > 0 ? kg : payloadKg, litres: boxLitres > 0 ? boxLitres : Number.POSITIVE_INFINITY };
}

/** Most that a vehicle-day can bring to the place on a trip of its own, by payload and by time, kg; 0 where it cannot. */
function largestLoneLoadKg(slot: Slot, consignment: Consignment, trainingMinutes: number): number {
  const { legs, round } = slot;
  const place = round.localOfPlace.get(consignment.place) as number;
  if (!goesThereAndBack(legs, place)) return 0;
  const out = legs.minutes[legs.at[place] as number] as number;
  const home = legs.minutes[legs.at[place * legs.size] as number] as number;
  if (!isDrivable(slot.rest, out) || !isDrivable(slot.rest, home)) return 0;
  const ends = Math.min(slot.latestBack - home, round.closesMinute[place] as number);
  const rests = needsRest(slot.rest, out, home) ? slot.rest.minutes : 0;
  const service = slot.serviceMinutes + trainingMinutes + rests;
  const unloading = consignment.group === 'inoculant' ? 0 : UNLOADING_MINUTES_PER_T.value / 1000;
  const opened = Math.max(slot.earliestLeave + out, round.opensMinute[place] as number);
  const byService = (ends - opened - service) / unloading;
  const byLoading = (ends - slot.loadsFrom - out - service) / (unloading + slot.loadingMinutesPerKg);
  if (ends - opened < service || byLoading <= 0) return 0;
  return Math.min(slot.payloadKg, byLoading, unloading > 0 ? byService : Number.POSITIVE_INFINITY);
}
