import { HOT_LIMIT_CELSIUS } from '../../reference/boxes.ts';
import type { Handover, Scenario } from '../../vocabulary/scenario.ts';
import type { Product } from '../../vocabulary/supply.ts';
import type { DemandRows } from './demand-rows.ts';

/** What was handed over and kept before today. */
export interface HandedBefore {
  /** Packs gone from each lot, returns taken off. */
  readonly packsOfLot: Int32Array;
  /** Seed that is there already, and seed for which there is inoculant, kg per row, not more than its need. */
  readonly seedKg: Float64Array;
  readonly inoculantKg: Float64Array;
  /** Land for which there is fertiliser, ha per row, not more than planned. */
  readonly fertiliserHa: Float64Array;
}

/**
 * Past hand-overs: lots are counted as received, so the stock falls by what went out and rises by what came back; and what a community
 * already has is not given again, unless it is inoculant from a hot box, which nobody is to use. Packs that suit several crops of a community go to the first that still needs them.
 *
 * @param packKg kg of seed that a pack of each lot is or coats, hectares that it serves
 */
export function countHandedBefore(
  scenario: Scenario,
  demand: DemandRows,
  products: readonly Product[],
  packKg: Float64Array,
): HandedBefore {
  const lots = new Map(scenario.lots.map(({ id }, l) => [id, l]));
  const communities = new Map(scenario.communities.map(({ id }, c) => [id, c]));
  const packsOfLot = new Int32Array(scenario.lots.length);
  const column = () => new Float64Array(demand.count);
  const kg = { seed: column(), inoculant: column(), fertiliser: column() };
  const rowsOf = new Map<number, number[]>();
  demand.community.forEach((community, row) => {
    rowsOf.set(community, [...(rowsOf.get(community) ?? []), row]);
  });
  for (const handover of scenario.handovers) {
    const { lotId, communityId, packs, returnedPacks } = handover;
    const lot = lots.get(lotId);
    const product = lot === undefined ? undefined : products[lot];
    if (lot === undefined || !product) continue;
    const left = (scenario.lots[lot]?.packs ?? 0) - (packsOfLot[lot] as number);
    const kept = Math.max(0, packs - returnedPacks);
    packsOfLot[lot] = (packsOfLot[lot] as number) + Math.min(left, kept);
    if (product.kind === 'sticker' || (product.kind === 'inoculant' && wasHot(handover))) continue;
    let open = kept * (packKg[lot] as number);
    for (const row of rowsOf.get(communities.get(communityId) ?? -1) ?? []) {
      if (!product.crops.some((crop) => crop === scenario.crops[demand.crop[row] as number])) continue;
      const column = kg[product.kind];
      const room = needOf(demand, product.kind, row) - (column[row] as number);
      const taken = Math.min(open, Math.max(0, room));
      column[row] = (column[row] as number) + taken;
      open -= taken;
    }
  }
  return { packsOfLot, seedKg: kg.seed, inoculantKg: kg.inoculant, fertiliserHa: kg.fertiliser };
}

function needOf(demand: DemandRows, kind: 'seed' | 'inoculant' | 'fertiliser', row: number): number {
  const need = { seed: demand.programmeSeedKg, inoculant: demand.seedNeedKg, fertiliser: demand.plannedHa };
  return need[kind][row] as number;
}

/** Whether the box was at or above the limit at which packs go on hold. */
export const wasHot = ({ boxC }: Handover): boolean => boxC !== null && boxC >= HOT_LIMIT_CELSIUS.value;
