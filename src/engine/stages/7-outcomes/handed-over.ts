import type { Handover, Scenario } from '../../vocabulary/index.ts';
import type { PlayParts } from './prepare-play.ts';

/** Hectares that the packs of inoculant signed for coat, by row of the allocation's shares. */
export interface HandedOver {
  readonly signedForHa: Float64Array;
  /** Of them, hectares reported sown. */
  readonly sownHa: Float64Array;
}

/**
 * Turns the packs signed for into hectares: what is kept of them, at their dose, over the seed that a hectare needs, at most the
 * hectares planned. Packs that suit several crops of a community are divided as those crops need inoculant.
 */
export function countHandedOver({ scenario, allocation }: PlayParts): HandedOver {
  const { shares } = allocation;
  const signed = new Float64Array(shares.community.length);
  const sown = new Float64Array(shares.community.length);
  const communities = new Map(scenario.communities.map(({ id }, index) => [id, index]));
  for (const handover of scenario.handovers) {
    const coats = coatedSeed(scenario, handover);
    const rows = coats === null ? [] : rowsOf(communities.get(handover.communityId) ?? -1, coats.crops);
    const needKg = rows.reduce((sum, row) => sum + (shares.inoculantNeedSeedKg[row] as number), 0);
    for (const row of rows) {
      const seedKg = (coats?.seedKg ?? 0) * ((shares.inoculantNeedSeedKg[row] as number) / needKg);
      const ha = (seedKg / (shares.seedNeedKg[row] as number)) * (shares.plannedHa[row] as number);
      signed[row] = (signed[row] as number) + ha;
      if (handover.sownOn !== null) sown[row] = (sown[row] as number) + ha;
    }
  }
  const atMostPlanned = (ha: number, row: number) => Math.min(ha, shares.plannedHa[row] as number);
  return { signedForHa: signed.map(atMostPlanned), sownHa: sown.map(atMostPlanned) };

  function rowsOf(community: number, crops: readonly string[]): number[] {
    return Array.from(shares.community.keys()).filter(
      (row) =>
        shares.community[row] === community &&
        crops.includes(scenario.crops[shares.crop[row] as number] ?? '') &&
        (shares.inoculantNeedSeedKg[row] as number) > 0 &&
        (shares.seedNeedKg[row] as number) > 0,
    );
  }
}

/** Seed in kg that the packs kept coat, and the crops they suit; null for goods other than inoculant with a dose. */
function coatedSeed({ lots, products }: Scenario, { lotId, packs, returnedPacks }: Handover) {
  const product = products.find(({ id }) => id === lots.find((lot) => lot.id === lotId)?.productId);
  if (product?.kind !== 'inoculant' || !product.doseGPerKg) return null;
  const kept = Math.max(0, packs - returnedPacks);
  return { seedKg: (kept * product.packG) / product.doseGPerKg, crops: product.crops };
}
