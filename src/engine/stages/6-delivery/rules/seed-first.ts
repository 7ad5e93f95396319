import type { Scenario } from '../../../vocabulary/scenario.ts';
import type { Allocation } from '../../../vocabulary/stage-results/allocation.ts';
import type { Load } from '../../../vocabulary/stage-results/delivery.ts';
import { groupRows } from '../group-rows.ts';

/**
 * Inoculant is never handed over before the seed it is for (the same day is allowed), and not at all where none of that seed
 * comes and the growers hold none of their own.
 */
export interface SeedLinks {
  /** Dry loads of the same community and crops, from whatever depot, per load; empty for dry goods. */
  readonly dryOf: readonly (readonly number[])[];
  /** The same links from the dry side. */
  readonly inoculantOf: readonly (readonly number[])[];
  /** 1 where the load may go although no linked dry load is served. */
  readonly mayGoAlone: Uint8Array;
}

export function linkSeed(scenario: Scenario, allocation: Allocation, loads: readonly Load[]): SeedLinks {
  const { consignments, grants } = allocation;
  const cropsOf = loads.map((load) => new Set(load.grants.map((row) => grants.crop[row] as number)));
  const communityOf = loads.map((load) => consignments[load.consignment]?.community ?? -1);
  const loadsOfCommunity = groupRows(communityOf, (community) => community);
  const groupOf = (load: number) => consignments[loads[load]?.consignment ?? -1]?.group;
  const dryOf: number[][] = loads.map((_, load) => {
    if (groupOf(load) !== 'inoculant') return [];
    const crops = cropsOf[load] as Set<number>;
    return (loadsOfCommunity.get(communityOf[load] as number) ?? []).filter(
      (other) => groupOf(other) === 'dry' && [...(cropsOf[other] as Set<number>)].some((crop) => crops.has(crop)),
    );
  });
  const inoculantOf: number[][] = loads.map(() => []);
  dryOf.forEach((dry, load) => {
    for (const other of dry) inoculantOf[other]?.push(load);
  });
  const mayGoAlone = Uint8Array.from(loads, (_, load) => {
    if ((dryOf[load] as number[]).length === 0) return 1;
    const own = scenario.communities[communityOf[load] as number]?.crops ?? [];
    const named = [...(cropsOf[load] as Set<number>)].map((crop) => scenario.crops[crop]);
    return own.some((plan) => plan.ownSeedKg > 0 && named.includes(plan.crop)) ? 1 : 0;
  });
  return { dryOf, inoculantOf, mayGoAlone };
}

/**
 * First day on which a load may be handed over, given who is served: by slot (-1: not at all) and the day of each slot. Infinity: not
 * at all.
 */
export function firstDayAfterSeed(
  links: SeedLinks,
  load: number,
  slotOf: ArrayLike<number>,
  dayOfSlot: ArrayLike<number>,
): number {
  let first = -1;
  for (const dry of links.dryOf[load] as readonly number[]) {
    const slot = slotOf[dry] as number;
    if (slot >= 0) first = Math.max(first, dayOfSlot[slot] as number);
  }
  return first < 0 && links.mayGoAlone[load] === 0 ? Number.POSITIVE_INFINITY : first;
}

/** Last day on which a dry load may still come: the first day on which inoculant for it is handed over. */
export function lastDayBeforeInoculant(
  links: SeedLinks,
  load: number,
  slotOf: ArrayLike<number>,
  dayOfSlot: ArrayLike<number>,
): number {
  let last = Number.POSITIVE_INFINITY;
  for (const inoculant of links.inoculantOf[load] as readonly number[]) {
    const slot = slotOf[inoculant] as number;
    if (slot >= 0) last = Math.min(last, dayOfSlot[slot] as number);
  }
  return last;
}
