import type { LinearSolver } from '../../numerics/linear-solver.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Policy, Scenario } from '../../vocabulary/scenario.ts';
import type { FairShareProof } from '../../vocabulary/stage-results/allocation.ts';
import type { Product } from '../../vocabulary/supply.ts';
import type { Ask } from './ask.ts';
import type { DemandRows } from './demand-rows.ts';
import { formPools, type MinutesTo, type Pool } from './form-pools.ts';
import { makeWholePacks } from './make-whole-packs.ts';
import { meetLeastAmounts } from './meet-least-amounts.ts';
import { packExactly } from './pack-exactly.ts';
import { pickLots } from './pick-lots.ts';
import { provePool } from './prove-pool.ts';
import { isPriorityFirst, priorityOf, shareOut } from './share-out.ts';
import { growersOf, setTerms } from './share-terms.ts';
import type { StockGroup } from './stock-groups.ts';

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
    proofs: parts.flatMap(({ proofs }) => proofs),
    problems: parts.flatMap(({ problems }) => problems),
  };
}

interface PoolResult {
  readonly picks: readonly Pick[];
  readonly proofs: readonly FairShareProof[];
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
      proofs: [],
      problems: [...problems, problem('E5022', { facts: { commodity: ask.commodity } })],
    };
  }
  const sizes = pool.groups.map((g) => (groups[g] as StockGroup).sizes);
  const rounded = makeWholePacks(pool, arcKg, sizes, {
    keptKg: terms.keptKg,
    askedKg: Float64Array.from(pool.rows, (row) => ask.askedKg[row] as number),
    highKg: terms.highKg,
    rank: Int32Array.from(pool.rows, (row) => (isPriorityFirst(scenario.policy) ? priorityOf(input, row) : 0)),
  });
  const packs = floor ? packExactly({ terms, floor, arcKg, sizes, rounded, solver: input.solver }) : rounded;
  const picks = pickLots(pool, groups, packs);
  const isProven = floor !== null && (ask.commodity === 'seed' || ask.commodity === 'inoculant');
  return { picks, proofs: isProven ? provePool(input, terms, floor, arcKg) : [], problems };
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
