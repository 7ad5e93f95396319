import type { Decision } from '../../engine/index.ts';
import type { SeasonState } from './season-state.ts';

type Inputs = Pick<SeasonState, 'plan' | 'plannedFrom' | 'decisions' | 'files'>;

/** Stages that hold whatever is decided about stock and days; a replaced reference value reaches them all. */
const UNTOUCHED_BY_ORDERS = ['needs', 'season'];

/** How many inputs differ from those of the plan: decisions added or taken back, and files replaced. */
export function changedInputs(state: Inputs): number {
  if (state.plan === null) return 0;
  const changed = changedDecisions(state);
  const steps = new Set(changed.flatMap((decision) => stepOf(decision) ?? []));
  return changedFiles(state) + steps.size + changed.filter((decision) => stepOf(decision) === null).length;
}

/** What decisions made in one go have in common: one cell of the allocation, one stop that is moved; null for a decision that stands by itself. */
export function stepOf(decision: Decision): string | null {
  // Of the sharing rule only the last word counts, however often it was moved on the way there.
  if (decision.kind === 'sharing') return decision.kind;
  if (decision.kind === 'lock') return ['lock', decision.communityId, decision.vehicleId, decision.date].join(' ');
  if (decision.kind === 'forbid' && decision.lotId === undefined)
    return ['forbid', decision.crop, decision.commodity].join(' ');
  if (decision.kind !== 'fix' && decision.kind !== 'floor' && decision.kind !== 'cap') return null;
  return [decision.kind, decision.crop, decision.commodity, decision.share].join(' ');
}

/** Whether an input that a figure rests on has changed since it was planned. */
export function isStale(state: Inputs, path: string): boolean {
  if (state.plan === null) return false;
  if (changedFiles(state) > 0) return true;
  const changed = changedDecisions(state);
  const reachesAll = changed.some(({ kind }) => kind === 'assume');
  return changed.length > 0 && (reachesAll || !UNTOUCHED_BY_ORDERS.includes(path.split('.')[0] ?? ''));
}

function changedFiles({ plannedFrom, files }: Inputs): number {
  const before = plannedFrom?.files ?? files;
  const paths = new Set([...before.keys(), ...files.keys()]);
  return [...paths].filter((path) => before.get(path) !== files.get(path)).length;
}

/** Those the plan knows and the list no longer holds, and those it does not know yet. */
function changedDecisions({ plannedFrom, decisions }: Inputs): readonly Decision[] {
  const before = plannedFrom?.decisions ?? decisions;
  let same = 0;
  while (same < before.length && same < decisions.length && isSame(before[same], decisions[same])) same += 1;
  return [...before.slice(same), ...decisions.slice(same)];
}

const isSame = (a: Decision | undefined, b: Decision | undefined): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);
