import type { Scenario } from '../../../vocabulary/scenario.ts';
import type { Allocation, Consignment } from '../../../vocabulary/stage-results/allocation.ts';
import type { Load } from '../../../vocabulary/stage-results/delivery.ts';
import { groupRows } from '../group-rows.ts';

/**
 * Inoculant is never handed over before the seed it is for (the same day is allowed), and not at all where none of that seed
 * comes, none came before, and the growers hold none of their own. Fertiliser is put in with the seed: it may come before its seed, but not
 * once the land is sown (`before-sowing`), and not at all without seed.
 */
export interface SeedLinks {
  /** Loads of seed of the same community and crops, from whatever depot, per load; empty for seed itself. */
  readonly dryOf: readonly (readonly number[])[];
  /** Loads of inoculant of the same community and crops, per load; empty for inoculant itself. For fertiliser, of seed where there is none. */
  readonly inoculantOf: readonly (readonly number[])[];
  /** 1 where the load may go although no linked load of seed is served. */
  readonly mayGoAlone: Uint8Array;
  /** 1 where the load may go before its seed. */
  readonly mayGoBefore: Uint8Array;
  /** Day up to which the load may come whatever comes before it; -Infinity but for fertiliser. */
  readonly unsownUntil: Float64Array;
}

export function linkSeed(
  scenario: Scenario,
  allocation: Allocation,
  loads: readonly Load[],
  unsownUntil: Float64Array,
): SeedLinks {
  const { consignments, grants } = allocation;
  const cropsOf = loads.map((load) => new Set(load.grants.map((row) => grants.crop[row] as number)));
  const communityOf = loads.map((load) => consignments[load.consignment]?.community ?? -1);
  const loadsOfCommunity = groupRows(communityOf, (community) => community);
  const groupOf = (load: number) => consignments[loads[load]?.consignment ?? -1]?.group;
  const linked = (load: number, groups: readonly Consignment['group'][]) => {
    const crops = cropsOf[load] as Set<number>;
    return (loadsOfCommunity.get(communityOf[load] as number) ?? []).filter((other) => {
      const group = groupOf(other);
      return group && groups.includes(group) && [...(cropsOf[other] as Set<number>)].some((crop) => crops.has(crop));
    });
  };
  const isFertiliser = (load: number) => groupOf(load) === 'fertiliser';
  const dryOf = loads.map((_, load) => {
    if (isFertiliser(load)) return linked(load, ['dry', 'both']);
    return groupOf(load) === 'inoculant' ? linked(load, ['dry']) : [];
  });
  const inoculantOf = loads.map((_, load) => {
    if (isFertiliser(load)) {
      const inoculant = linked(load, ['inoculant', 'both']);
      return inoculant.length > 0 ? inoculant : linked(load, ['dry']);
    }
    return groupOf(load) === 'dry' ? linked(load, ['inoculant']) : [];
  });
  const seeded = seedThere(scenario);
  const mayGoAlone = Uint8Array.from(loads, (_, load) => {
    if ((dryOf[load] as number[]).length === 0) return 1;
    const id = scenario.communities[communityOf[load] as number]?.id;
    if ([...(cropsOf[load] as Set<number>)].some((crop) => seeded.has(`${id} ${scenario.crops[crop]}`))) return 1;
    const own = scenario.communities[communityOf[load] as number]?.crops ?? [];
    const named = [...(cropsOf[load] as Set<number>)].map((crop) => scenario.crops[crop]);
    return own.some((plan) => plan.ownSeedKg > 0 && named.includes(plan.crop)) ? 1 : 0;
  });
  const mayGoBefore = Uint8Array.from(loads, (_, load) => (isFertiliser(load) ? 1 : 0));
  return { dryOf, inoculantOf, mayGoAlone, mayGoBefore, unsownUntil };
}

/** Communities and crops for which seed was handed over before today. */
function seedThere({ handovers, lots, products }: Scenario): Set<string> {
  return new Set(
    handovers.flatMap(({ communityId, lotId, packs, returnedPacks }) => {
      const product = products.find(({ id }) => id === lots.find((lot) => lot.id === lotId)?.productId);
      return product?.kind === 'seed' && packs > returnedPacks
        ? product.crops.map((crop) => `${communityId} ${crop}`)
        : [];
    }),
  );
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
  if (first < 0 && links.mayGoAlone[load] === 0) return Number.POSITIVE_INFINITY;
  return links.mayGoBefore[load] === 1 ? -1 : first;
}

/** Last day on which a dry load may still come: the first on which inoculant for it is handed over; fertiliser until its land is sown. */
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
  const unsown = links.unsownUntil[load] as number;
  return last === Number.POSITIVE_INFINITY && links.mayGoBefore[load] === 1 ? unsown : Math.max(last, unsown);
}
