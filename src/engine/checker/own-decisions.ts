import type { Decision } from '../vocabulary/decisions.ts';
import { at, type CheckedCase } from './checked-case.ts';

export interface OwnHold {
  readonly low: number;
  readonly high: number;
}

type CellDecision = Extract<Decision, { readonly kind: 'fix' | 'floor' | 'cap' | 'forbid' }>;

/** Decisions on a community, crop and commodity, in their order. */
function decisionsOn(c: CheckedCase, community: number, crop: number, commodity: string): readonly CellDecision[] {
  const { id } = at(c.scenario.communities, community);
  return c.decisions.decisions.filter(
    (d): d is CellDecision =>
      (d.kind === 'fix' || d.kind === 'floor' || d.kind === 'cap' || d.kind === 'forbid') &&
      d.communityId === id &&
      d.crop === c.scenario.crops[crop] &&
      d.commodity === commodity,
  );
}

/** Least and most share that the decisions leave; the later one has the last word. Null where none speaks of it. */
export function holdOn(c: CheckedCase, community: number, crop: number, commodity: string): OwnHold | null {
  let hold: OwnHold | null = null;
  for (const decision of decisionsOn(c, community, crop, commodity)) {
    const before: OwnHold = hold ?? { low: 0, high: Number.POSITIVE_INFINITY };
    if (decision.kind === 'forbid') {
      if (decision.lotId === undefined) hold = { low: 0, high: 0 };
    } else if (decision.kind === 'fix') hold = { low: decision.share, high: decision.share };
    else if (decision.kind === 'floor') hold = { low: decision.share, high: Math.max(decision.share, before.high) };
    else hold = { low: Math.min(before.low, decision.share), high: decision.share };
  }
  return hold;
}

/** Is this lot kept from a community and crop by a decision, by name or with everything else? */
export function isForbidden(c: CheckedCase, community: number, crop: number, commodity: string, lot: number): boolean {
  if (holdOn(c, community, crop, commodity)?.high === 0) return true;
  const { id } = at(c.scenario.lots, lot);
  return decisionsOn(c, community, crop, commodity).some((d) => d.kind === 'forbid' && d.lotId === id);
}
