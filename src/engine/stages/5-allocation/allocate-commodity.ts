import type { LinearSolver } from '../../numerics/linear-solver.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Policy, Scenario } from '../../vocabulary/scenario.ts';
import type { FairShareProof } from '../../vocabulary/stage-results.ts';
import type { Product } from '../../vocabulary/supply.ts';
import type { Ask } from './ask.ts';
import type { DemandRows } from './demand-rows.ts';
import { formPools, type MinutesTo, type Pool } from './form-pools.ts';
import { makeWholePacks, type PacksOfArcs, roundingKg } from './make-whole-packs.ts';
import { proveFairShare } from './prove-fair-share.ts';
import { type FairFloor, raiseLeastShare, shareOfLeastAmounts, spreadByHectares } from './share-pool.ts';
import { growersOf, type ShareTerms, setTerms } from './share-terms.ts';
import { type PackSize, type StockGroup, seedKgPerPack } from './stock-groups.ts';

/** Whole packs of one lot for one row. */
export interface Pick {
  readonly row: number;
  readonly lot: number;
  readonly packs: number;
}

export interface CommodityResult {
  readonly picks: readonly Pick[];
  /** Rows that some offered stock may reach. */
  readonly reached: Uint8Array;
  readonly proofs: readonly FairShareProof[];
  readonly problems: readonly Problem[];
}

export interface CommodityInput {
  readonly scenario: Scenario;
  readonly demand: DemandRows;
  readonly ask: Ask;
  readonly groups: readonly StockGroup[];
  readonly minutesTo: MinutesTo;
  /** Packs that promises of the first round hold. */
  readonly kept: readonly Pick[];
  /** Product of each lot. */
  readonly products: readonly Product[];
  readonly solver: LinearSolver;
}

/** Shares one commodity out, pool by pool: equal share, most hectares, whole packs, lots. */
export function allocateCommodity(input: CommodityInput): CommodityResult {
  const { demand, ask, groups, minutesTo } = input;
  const reached = new Uint8Array(demand.count);
  const parts = formPools(demand, ask, groups, minutesTo).map((pool) => {
    for (const row of pool.rows) reached[row] = 1;
    return allocatePool(input, pool);
  });
  return {
    picks: parts.flatMap(({ picks }) => picks),
    reached,
    proofs: parts.flatMap(({ proof }) => (proof ? [proof] : [])),
    problems: parts.flatMap(({ problems }) => problems),
  };
}

interface PoolResult {
  readonly picks: readonly Pick[];
  readonly proof: FairShareProof | null;
  readonly problems: readonly Problem[];
}

function allocatePool(input: CommodityInput, pool: Pool): PoolResult {
  const { scenario, demand, ask, groups } = input;
  const problems: Problem[] = [];
  const equalOver = settleEqualOver(input, pool, problems);
  const terms = meetLeastAmounts(setTerms(scenario, demand, ask, pool, groups, equalOver), input, problems);
  const { arcKg, floor } = terms ? shareOut(terms, input) : { arcKg: null, floor: null };
  if (!terms || !arcKg) {
    return {
      picks: [],
      proof: null,
      problems: [...problems, problem('E5022', { facts: { commodity: ask.commodity } })],
    };
  }
  const sizes = pool.groups.map((g) => (groups[g] as StockGroup).sizes);
  const packs = makeWholePacks(pool, arcKg, sizes, {
    keptKg: terms.keptKg,
    askedKg: Float64Array.from(pool.rows, (row) => ask.askedKg[row] as number),
    highKg: terms.highKg,
    rank: Int32Array.from(pool.rows, (row) => (isPriorityFirst(scenario.policy) ? priorityOf(input, row) : 0)),
  });
  const proof =
    floor && ask.commodity !== 'sticker'
      ? proveFairShare(
          ask.commodity,
          demand,
          terms,
          floor,
          groups,
          offeredToOpenRows(input, pool, floor),
          roundingKg(pool, arcKg, sizes),
        )
      : null;
  return { picks: pickLots(pool, groups, packs), proof, problems };
}

const isPriorityFirst = ({ fairness }: Policy) => fairness === 'priority-first';

function priorityOf({ scenario, demand }: CommodityInput, row: number): number {
  return scenario.communities[demand.community[row] as number]?.priority ?? 1;
}

/** Equal amounts for each grower need everybody's growers; where a file leaves them out, communities count instead. */
function settleEqualOver(
  { scenario, demand, ask }: CommodityInput,
  pool: Pool,
  problems: Problem[],
): Policy['equalOver'] {
  const { equalOver } = scenario.policy;
  if (equalOver !== 'grower') return equalOver;
  const untold = pool.rows.filter(
    (row) => growersOf(scenario, demand.community[row] as number, demand.crop[row] as number) === null,
  ).length;
  if (untold === 0) return equalOver;
  problems.push(
    problem('E5023', {
      file: 'communities.geojson',
      column: 'farmers',
      facts: { rows: untold, commodity: ask.commodity },
    }),
  );
  return 'community';
}

/** Lowers floors and fixes of decisions, all by the same part, to what the stock can meet, and says so. */
function meetLeastAmounts(terms: ShareTerms, { ask, scenario, demand, solver }: CommodityInput, problems: Problem[]) {
  const met = shareOfLeastAmounts(terms, solver);
  if (met === null || met === 1) return met === null ? null : terms;
  const fixed = terms.lowKg.map((low, r) => (terms.held[r] === 1 && low === terms.highKg[r] ? 1 : 0));
  const lowKg = terms.lowKg.map((low, r) => Math.max(terms.keptKg[r] as number, low * met));
  const highKg = terms.highKg.map((high, r) => (fixed[r] === 1 ? (lowKg[r] as number) : high));
  terms.pool.rows.forEach((row, r) => {
    if ((terms.lowKg[r] as number) <= (lowKg[r] as number)) return;
    problems.push(
      problem('E5021', {
        file: 'decisions.json',
        column: 'share',
        facts: {
          community: scenario.communities[demand.community[row] as number]?.id ?? '',
          crop: scenario.crops[demand.crop[row] as number] ?? '',
          commodity: ask.commodity,
          askedKg: Math.round((terms.lowKg[r] as number) * 10) / 10,
          givenKg: Math.round((lowKg[r] as number) * 10) / 10,
        },
      }),
    );
  });
  return { ...terms, lowKg, highKg };
}

interface SharedOut {
  /** kg per arc of the pool; null where the solver gave no optimum. */
  readonly arcKg: Float64Array | null;
  /** Of the equal share, where the policy asks for one. */
  readonly floor: FairFloor | null;
}

function shareOut(terms: ShareTerms, input: CommodityInput): SharedOut {
  const { policy } = input.scenario;
  if (isPriorityFirst(policy)) return { arcKg: shareByPriority(terms, input), floor: null };
  if (policy.fairness === 'most-hectares') {
    return { arcKg: spreadByHectares(terms, terms.held, 0, input.solver), floor: null };
  }
  const floor = raiseLeastShare(terms, input.solver);
  return { floor, arcKg: floor && spreadByHectares(terms, floor.held, floor.share, input.solver) };
}

/** Each priority in turn, 1 first, shares equally what the ones before it left. */
function shareByPriority(terms: ShareTerms, input: CommodityInput): Float64Array | null {
  const priority = terms.pool.rows.map((row) => priorityOf(input, row));
  const arcKg = new Float64Array(terms.pool.arcRow.length);
  const stockKg = terms.stockKg.slice();
  for (const tier of [...new Set(priority)].sort((a, b) => a - b)) {
    const { tierTerms, arcs } = termsOfTier(terms, stockKg, priority, tier);
    const floor = raiseLeastShare(tierTerms, input.solver);
    if (!floor) return null;
    const tierKg = spreadByHectares(tierTerms, floor.held, floor.share, input.solver);
    if (!tierKg) return null;
    arcs.forEach((a, i) => {
      const g = terms.pool.arcGroup[a] as number;
      arcKg[a] = tierKg[i] as number;
      stockKg[g] = Math.max(0, (stockKg[g] as number) - (tierKg[i] as number));
    });
  }
  return arcKg;
}

/** The same pool with the arcs of one tier only; rows of other tiers ask for nothing. */
function termsOfTier(terms: ShareTerms, stockKg: Float64Array, priority: readonly number[], tier: number) {
  const arcs = Array.from(terms.pool.arcRow, (_, a) => a).filter(
    (a) => priority[terms.pool.arcRow[a] as number] === tier,
  );
  const inTier = (column: Float64Array) => column.map((value, r) => (priority[r] === tier ? value : 0));
  const { pool } = terms;
  const tierTerms: ShareTerms = {
    ...terms,
    stockKg: stockKg.slice(),
    weightKg: inTier(terms.weightKg),
    lowKg: inTier(terms.lowKg),
    highKg: inTier(terms.highKg),
    keptKg: inTier(terms.keptKg),
    pool: {
      ...pool,
      arcRow: Int32Array.from(arcs, (a) => pool.arcRow[a] as number),
      arcGroup: Int32Array.from(arcs, (a) => pool.arcGroup[a] as number),
      arcMinutes: Float64Array.from(arcs, (a) => pool.arcMinutes[a] as number),
    },
  };
  return { tierTerms, arcs };
}

/** Kilograms that each lot offers the rows of the equal share: with their promises, without what other rows take. */
function offeredToOpenRows(
  { groups, kept, products }: CommodityInput,
  pool: Pool,
  floor: FairFloor,
): ReadonlyMap<number, number> {
  const offered = new Map<number, number>();
  pool.groups.forEach((group, g) => {
    let taken = floor.heldKg[g] as number;
    for (const { kg, lots } of (groups[group] as StockGroup).sizes) {
      for (const { lot, packs } of lots) {
        const off = Math.min(taken, packs * kg);
        taken -= off;
        offered.set(lot, packs * kg - off);
      }
    }
  });
  const position = new Map(pool.rows.map((row, r) => [row, r]));
  for (const { row, lot, packs } of kept) {
    const r = position.get(row);
    if (r === undefined || floor.held[r] === 1 || !offered.has(lot)) continue;
    offered.set(lot, (offered.get(lot) as number) + packs * seedKgPerPack(products[lot] as Product));
  }
  return offered;
}

/** Lots for the packs of each row, first expiring first. */
function pickLots(pool: Pool, groups: readonly StockGroup[], packs: PacksOfArcs): Pick[] {
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
