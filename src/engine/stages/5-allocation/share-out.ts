import type { LinearSolver } from '../../numerics/linear-solver.ts';
import type { Policy } from '../../vocabulary/scenario.ts';
import type { CommodityInput } from './allocate-commodity.ts';
import { type FairFloor, raiseLeastShare } from './raise-least-share.ts';
import { raiseWithinZones } from './raise-within-zones.ts';
import type { ShareTerms } from './share-terms.ts';
import { spreadByHectares } from './spread-by-hectares.ts';

export interface SharedOut {
  /** kg per arc of the pool; null where the solver gave no optimum. */
  readonly arcKg: Float64Array | null;
  /** Of the equal share, where the policy asks for one. */
  readonly floor: FairFloor | null;
}

/** Shares a pool out by the rule of the policy. */
export function shareOut(terms: ShareTerms, input: CommodityInput): SharedOut {
  const { policy } = input.scenario;
  if (isPriorityFirst(policy)) return { arcKg: shareByPriority(terms, input), floor: null };
  if (policy.fairness === 'most-hectares') {
    const none = { rowKg: new Float64Array(terms.pool.rows.length), unitKg: null };
    return { arcKg: spreadByHectares(terms, terms.held, none, input.solver), floor: null };
  }
  return shareEqually(terms, input.solver);
}

/** Equal share, then most hectares of what is left. Zones are made equal first, then the communities within them. */
function shareEqually(terms: ShareTerms, solver: LinearSolver): SharedOut {
  const floor = raiseLeastShare(terms, solver);
  if (floor === null) return { floor, arcKg: null };
  const unitKg = terms.byZone ? floor.unitFloorKg : null;
  const rowKg = unitKg === null ? floor.unitFloorKg : raiseWithinZones(terms, floor, solver);
  return { floor, arcKg: spreadByHectares(terms, floor.held, { rowKg, unitKg }, solver) };
}

/** Each priority in turn, 1 first, shares equally what the ones before it left. */
function shareByPriority(terms: ShareTerms, input: CommodityInput): Float64Array | null {
  const priority = terms.pool.rows.map((row) => priorityOf(input, row));
  const arcKg = new Float64Array(terms.pool.arcRow.length);
  const stockKg = terms.stockKg.slice();
  for (const tier of [...new Set(priority)].sort((a, b) => a - b)) {
    const { tierTerms, arcs } = termsOfTier(terms, stockKg, priority, tier);
    const { arcKg: tierKg } = shareEqually(tierTerms, input.solver);
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

export const isPriorityFirst = ({ fairness }: Policy) => fairness === 'priority-first';

export function priorityOf({ scenario, demand }: CommodityInput, row: number): number {
  return scenario.communities[demand.community[row] as number]?.priority ?? 1;
}
