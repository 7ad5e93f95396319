import type { Decision, Decisions } from '../../vocabulary/decisions.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Commodity } from '../../vocabulary/stage-results/allocation.ts';
import type { DemandRows } from './demand-rows.ts';

/** Least and most share that decisions leave a row, 0 to 1. */
export interface Hold {
  readonly low: number;
  readonly high: number;
}

/** What decisions hold by hand, by demand row. */
export interface Holds {
  readonly byRow: Readonly<Record<Commodity, ReadonlyMap<number, Hold>>>;
  /** Lots that must not go to a row, as `row lot`. */
  readonly forbiddenLots: ReadonlySet<string>;
  readonly namedLots: ReadonlySet<number>;
}

/** Reads the decisions in their order; where two speak of one cell, the later one has the last word. */
export function readHolds(
  scenario: Scenario,
  decisions: Decisions,
  demand: DemandRows,
): { readonly holds: Holds; readonly problems: readonly Problem[] } {
  const rowOf = rowFinder(scenario, demand);
  const lots = new Map(scenario.lots.map(({ id }, l) => [id, l]));
  const byRow = { seed: new Map<number, Hold>(), inoculant: new Map<number, Hold>() };
  const forbiddenLots = new Set<string>();
  const namedLots = new Set<number>();
  const problems: Problem[] = [];
  for (const decision of decisions.decisions) {
    if (!holdsACell(decision)) continue;
    const row = rowOf(decision.communityId, decision.crop);
    const lotId = decision.kind === 'forbid' ? decision.lotId : undefined;
    const lot = lotId === undefined ? undefined : lots.get(lotId);
    if (row === undefined || (lotId !== undefined && lot === undefined)) {
      problems.push(noteUnknownCell(decision, lotId));
    } else if (lot !== undefined) {
      forbiddenLots.add(`${row} ${lot}`);
      namedLots.add(lot);
    } else {
      const cells = byRow[decision.commodity];
      cells.set(row, narrow(cells.get(row) ?? { low: 0, high: Number.POSITIVE_INFINITY }, decision));
    }
  }
  return { holds: { byRow, forbiddenLots, namedLots }, problems };
}

type CellDecision = Extract<Decision, { kind: 'fix' | 'floor' | 'cap' | 'forbid' }>;

function holdsACell(decision: Decision): decision is CellDecision {
  return ['fix', 'floor', 'cap', 'forbid'].includes(decision.kind);
}

function narrow(hold: Hold, decision: CellDecision): Hold {
  if (decision.kind === 'forbid') return { low: 0, high: 0 };
  const { share } = decision;
  if (decision.kind === 'fix') return { low: share, high: share };
  if (decision.kind === 'floor') return { low: share, high: Math.max(share, hold.high) };
  return { low: Math.min(hold.low, share), high: share };
}

function rowFinder(scenario: Scenario, demand: DemandRows): (communityId: string, crop: string) => number | undefined {
  const rows = new Map<string, number>();
  for (let r = 0; r < demand.count; r++) {
    const community = scenario.communities[demand.community[r] as number];
    rows.set(`${scenario.crops[demand.crop[r] as number]} ${community?.id}`, r);
  }
  return (communityId, crop) => rows.get(`${crop} ${communityId}`);
}

function noteUnknownCell(decision: CellDecision, lotId: string | undefined): Problem {
  return problem('E5020', {
    file: 'decisions.json',
    column: 'communityId',
    value: decision.communityId,
    facts: { kind: decision.kind, crop: decision.crop, lot: lotId ?? '' },
  });
}
