import type { Plan } from '../../engine/index.ts';
import { csvText } from './csv-text.ts';
import { idAt } from './id-at.ts';

const HEADER = ['community_id', 'crop', 'lot_id', 'packs', 'kg', 'share_met'];

/**
 * Allocation as CSV: one row per community, crop and lot.
 *
 * @param lotKind kind of product in each lot, in the plan's order of lots: `share_met` is the share of the seed need for
 *   seed, of the land's inoculant need for everything else
 */
export function allocationCsv({ ids, allocation }: Plan, lotKind: readonly string[]): string {
  const { grants, shares } = allocation;
  const shareRow = new Map(shares.community.map((community, row) => [`${community} ${shares.crop[row]}`, row]));
  const rows = grants.community.map((community, row) => {
    const lot = grants.lot[row] ?? -1;
    const shareOf = lotKind[lot] === 'seed' ? shares.seedShare : shares.inoculantShare;
    const share = shareRow.get(`${community} ${grants.crop[row]}`);
    return [
      idAt(ids.communities, community),
      idAt(ids.crops, grants.crop[row]),
      idAt(ids.lots, lot),
      grants.packs[row] ?? null,
      grants.kg[row] ?? null,
      share === undefined ? null : (shareOf[share] ?? null),
    ];
  });
  return csvText(HEADER, rows);
}
