import type { Consignment } from '../../vocabulary/stage-results/allocation.ts';
import type { Load } from '../../vocabulary/stage-results/delivery.ts';
import { DEAREST_JOURNEYS_UNSERVED, HECTARES_PER_DEAREST_DAY, OFF_MARKET_SHARE } from './assumptions.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** What loads are worth to the search, in the scenario's currency. */
export interface LoadWorth {
  /** Lost in proportion to what does not reach the field in time and alive. */
  readonly worth: Float64Array;
  /** Cost of leaving the load behind, a broken promise not counted. */
  readonly unserved: Float64Array;
  /** The dearest journey to one place and back on an otherwise empty day. */
  readonly dearestJourney: number;
}

/** A load's part of what its consignment's packs cost; by hectares where a price is missing. */
export function weighLoads(
  loads: readonly Load[],
  consignments: readonly Consignment[],
  slots: readonly Slot[],
): LoadWorth {
  const dearestJourney = Math.max(1, ...slotKinds(slots).map(dearestJourneyOf));
  const priced = consignments.filter((c) => c.worth !== null && c.hectares > 0 && c.group !== 'fertiliser');
  const hectares = priced.reduce((sum, c) => sum + c.hectares, 0);
  const perHectare =
    hectares > 0
      ? priced.reduce((sum, c) => sum + (c.worth ?? 0), 0) / hectares
      : dearestJourney / HECTARES_PER_DEAREST_DAY.value;
  const worth = Float64Array.from(loads, (load) => {
    const consignment = consignments[load.consignment] as Consignment;
    const share = consignment.hectares > 0 ? load.hectares / consignment.hectares : load.kg / consignment.kg;
    return consignment.worth !== null ? consignment.worth * (share || 0) : load.hectares * perHectare;
  });
  const unserved = worth.map(
    (value) => (1 + OFF_MARKET_SHARE.value) * value + DEAREST_JOURNEYS_UNSERVED.value * dearestJourney,
  );
  return { worth, unserved, dearestJourney };
}

/** One slot for each vehicle group and set of legs: all that a journey's price depends on. */
function slotKinds(slots: readonly Slot[]): Slot[] {
  const kinds = new Map<object, Map<number, Slot>>();
  for (const slot of slots) {
    const byGroup = kinds.get(slot.legs) ?? new Map<number, Slot>();
    byGroup.set(slot.group, slot);
    kinds.set(slot.legs, byGroup);
  }
  return [...kinds.values()].flatMap((byGroup) => [...byGroup.values()]);
}

function dearestJourneyOf(slot: Slot): number {
  const { at, size, kilometres } = slot.legs;
  let farthest = 0;
  for (let place = 1; place < size; place++) {
    const out = at[place] as number;
    const home = at[place * size] as number;
    if (out >= 0 && home >= 0)
      farthest = Math.max(farthest, (kilometres[out] as number) + (kilometres[home] as number));
  }
  return slot.dayCost + farthest * slot.kmCost + slot.boxIceKg * slot.icePerKg;
}
