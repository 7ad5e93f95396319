import { HOT_LIMIT_CELSIUS } from '../reference/boxes.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';
import { seedKgOfLot } from './own-stock.ts';

/** Packs of a lot that left it before today, what came back taken off, at most what it held. */
export function packsGone(c: CheckedCase, lot: number): number {
  const { id, packs } = at(c.scenario.lots, lot);
  const gone = c.scenario.handovers
    .filter(({ lotId }) => lotId === id)
    .reduce((sum, one) => sum + Math.max(0, one.packs - one.returnedPacks), 0);
  return Math.min(gone, packs);
}

/**
 * Seed that a row of the shares has from earlier hand-overs, or has inoculant for, kg, at most its need. Packs that suit several crops of a
 * community may stand in any of them, so this is the most that the row can have.
 */
export function handedKg(c: CheckedCase, shareRow: number, kind: 'seed' | 'inoculant'): number {
  const { shares } = c.plan.allocation;
  if (c.scenario.handovers.length === 0) return 0;
  const { id } = at(c.scenario.communities, at(shares.community, shareRow));
  const crop = at(c.scenario.crops, at(shares.crop, shareRow));
  const kg = c.scenario.handovers.reduce((sum, { communityId, lotId, packs, returnedPacks, boxC }) => {
    const lot = communityId === id ? c.scenario.lots.findIndex((one) => one.id === lotId) : -1;
    const product = lot < 0 ? undefined : lotAndProduct(c, lot)?.product;
    if (product?.kind !== kind || !product.crops.includes(crop)) return sum;
    // Packs from a hot box are on hold, wherever they lie.
    if (kind === 'inoculant' && (boxC ?? 0) >= HOT_LIMIT_CELSIUS.value) return sum;
    return sum + Math.max(0, packs - returnedPacks) * seedKgOfLot(c, lot);
  }, 0);
  const own = kind === 'seed' ? at(shares.ownSeedKg, shareRow) : 0;
  return Math.min(kg, Math.max(0, at(shares.seedNeedKg, shareRow) - own));
}

/** What the plan itself says was handed over before, kg, told among the shortfalls. */
export function toldHandedKg(c: CheckedCase, shareRow: number, kind: 'seed' | 'inoculant'): number {
  const { shortfalls } = c.plan.allocation;
  return shortfalls.shareRow.reduce(
    (sum, row, i) =>
      row === shareRow && at(shortfalls.commodity, i) === kind && at(shortfalls.reason, i) === 'handed-over-before'
        ? sum + at(shortfalls.shortKg, i)
        : sum,
    0,
  );
}
