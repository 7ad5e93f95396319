import type { Pick } from './allocate-commodity.ts';
import type { Pool } from './form-pools.ts';
import type { PacksOfArcs } from './make-whole-packs.ts';
import type { PackSize, StockGroup } from './stock-groups.ts';

/** Lots for the packs of each row, first expiring first. */
export function pickLots(pool: Pool, groups: readonly StockGroup[], packs: PacksOfArcs): Pick[] {
  const cursors = pool.groups.map((g) => (groups[g] as StockGroup).sizes.map(lotCursor));
  return packs.flatMap((own, a) =>
    Array.from(own).flatMap((count, s) => {
      const take = cursors[pool.arcGroup[a] as number]?.[s];
      const row = pool.rows[pool.arcRow[a] as number] as number;
      return take ? take(count).map((taken) => ({ row, ...taken })) : [];
    }),
  );
}

/** Takes packs of one size from its lots in their order. */
function lotCursor({ lots }: PackSize): (count: number) => { readonly lot: number; readonly packs: number }[] {
  let at = 0;
  let left = lots[0]?.packs ?? 0;
  return (count) => {
    const taken: { lot: number; packs: number }[] = [];
    let due = count;
    while (due > 0 && at < lots.length) {
      const packs = Math.min(due, left);
      if (packs > 0) taken.push({ lot: (lots[at] as { lot: number }).lot, packs });
      due -= packs;
      left -= packs;
      if (left === 0) left = lots[++at]?.packs ?? 0;
    }
    return taken;
  };
}
