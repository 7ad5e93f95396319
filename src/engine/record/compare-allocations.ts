import type { Commodity, Plan } from '../vocabulary/index.ts';

/** What two allocations are compared by: a plan, or an allocation written down as plans write it. */
export type Told = Pick<Plan, 'ids'> & { readonly allocation: Pick<Plan['allocation'], Compared> };
type Compared = 'shares' | 'grants' | 'shortfalls';

/** A community's share of one crop and commodity that is not the same in both; shares 0 to 1 of all seed to sow. */
export interface CellDifference {
  readonly communityId: string;
  readonly crop: string;
  readonly commodity: Commodity;
  readonly shareBefore: number;
  readonly shareAfter: number;
  /** Land with the commodity, ha. */
  readonly hectaresBefore: number;
  readonly hectaresAfter: number;
}

export interface LotDifference {
  readonly lotId: string;
  readonly packsBefore: number;
  readonly packsAfter: number;
}

/** Sums over all communities, and the smallest share among those with planned land. */
export interface CommodityDifference {
  readonly crop: string;
  readonly commodity: Commodity;
  readonly hectaresBefore: number;
  readonly hectaresAfter: number;
  readonly leastBefore: number;
  readonly leastAfter: number;
}

export interface AllocationDifference {
  /** Largest change of land first. */
  readonly cells: readonly CellDifference[];
  readonly lots: readonly LotDifference[];
  /** Crops and commodities in which anything differs. */
  readonly commodities: readonly CommodityDifference[];
  /** Land with both seed and inoculant, ha: the smaller of the two in each cell. */
  readonly servedHaBefore: number;
  readonly servedHaAfter: number;
}

/** Differences smaller than this are rounding of the plan document. */
const NOISE_HA = 1e-3;

/** Two allocations of the same land side by side: what differs, by ids, so that lots may be added or taken away between them. */
export function compareAllocations(before: Told, after: Told): AllocationDifference {
  const [was, is] = [cellsOf(before), cellsOf(after)];
  const cells = [...new Set([...was.keys(), ...is.keys()])].flatMap((key) => {
    const [crop, commodity, communityId] = JSON.parse(key) as [string, Commodity, string];
    const [old, now] = [was.get(key) ?? NOTHING, is.get(key) ?? NOTHING];
    if (Math.abs(now.hectares - old.hectares) < NOISE_HA) return [];
    return [
      {
        communityId,
        crop,
        commodity,
        shareBefore: old.share,
        shareAfter: now.share,
        hectaresBefore: old.hectares,
        hectaresAfter: now.hectares,
      },
    ];
  });
  const moved = ({ hectaresBefore, hectaresAfter }: CellDifference) => Math.abs(hectaresAfter - hectaresBefore);
  return {
    cells: cells.sort((a, b) => moved(b) - moved(a)),
    lots: lotDifferences(before, after),
    commodities: commodityDifferences(was, is),
    servedHaBefore: servedHa(before),
    servedHaAfter: servedHa(after),
  };
}

interface CellShare {
  readonly share: number;
  readonly hectares: number;
}
const NOTHING: CellShare = { share: 0, hectares: 0 };

function cellsOf({ ids, allocation: { shares } }: Told): Map<string, CellShare> {
  const cells = new Map<string, CellShare>();
  shares.community.forEach((community, row) => {
    const [crop, communityId] = [ids.crops[shares.crop[row] ?? -1], ids.communities[community]];
    const hectares = shares.plannedHa[row] ?? 0;
    for (const commodity of ['seed', 'inoculant'] as const) {
      const share = (commodity === 'seed' ? shares.seedShare : shares.inoculantShare)[row] ?? 0;
      cells.set(JSON.stringify([crop, commodity, communityId]), { share, hectares: share * hectares });
    }
  });
  return cells;
}

function servedHa({ allocation: { shares } }: Told): number {
  return shares.community.reduce(
    (sum, _, row) =>
      sum + Math.min(shares.seedShare[row] ?? 0, shares.inoculantShare[row] ?? 0) * (shares.plannedHa[row] ?? 0),
    0,
  );
}

function commodityDifferences(
  was: ReadonlyMap<string, CellShare>,
  is: ReadonlyMap<string, CellShare>,
): CommodityDifference[] {
  const totals = new Map<string, CommodityDifference>();
  for (const [key, now] of is) {
    const [crop, commodity] = JSON.parse(key) as [string, Commodity];
    const old = was.get(key) ?? NOTHING;
    const sum = totals.get(`${crop} ${commodity}`);
    totals.set(`${crop} ${commodity}`, {
      crop,
      commodity,
      hectaresBefore: (sum?.hectaresBefore ?? 0) + old.hectares,
      hectaresAfter: (sum?.hectaresAfter ?? 0) + now.hectares,
      leastBefore: Math.min(sum?.leastBefore ?? 1, old.share),
      leastAfter: Math.min(sum?.leastAfter ?? 1, now.share),
    });
  }
  return [...totals.values()].filter(
    (one) =>
      Math.abs(one.hectaresAfter - one.hectaresBefore) >= NOISE_HA ||
      Math.abs(one.leastAfter - one.leastBefore) >= NOISE_HA,
  );
}

function lotDifferences(before: Told, after: Told): LotDifference[] {
  const [was, is] = [packsOf(before), packsOf(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((lotId) => {
    const [packsBefore, packsAfter] = [was.get(lotId) ?? 0, is.get(lotId) ?? 0];
    return packsBefore === packsAfter ? [] : [{ lotId, packsBefore, packsAfter }];
  });
}

function packsOf({ ids, allocation: { grants } }: Told): Map<string, number> {
  const packs = new Map<string, number>();
  grants.lot.forEach((lot, grant) => {
    const id = ids.lots[lot] ?? '';
    packs.set(id, (packs.get(id) ?? 0) + (grants.packs[grant] ?? 0));
  });
  return packs;
}
