import type { LegPath, Plan, Problem } from '../../../src/engine/index.ts';
import { recordPlan } from '../../../src/engine/record/record-plan.ts';
import { weighOutcomes } from '../../../src/engine/stages/7-outcomes/weigh-outcomes.ts';
import { noDecisions } from '../blank-scenario.ts';
import { type SmallPlanChange, smallPlan } from '../stages/7-outcomes/small-plan.ts';

export interface SmallRecordChange extends SmallPlanChange {
  readonly cost?: number;
  readonly legs?: readonly LegPath[];
  readonly problems?: readonly Problem[];
}

/** The small plan, weighed and written down. */
export function recordSmallPlan(change: SmallRecordChange = {}): Plan {
  const small = smallPlan(change);
  const { scenario, places, season, needs, allocation } = small;
  const delivery = { ...small.delivery, cost: change.cost ?? small.delivery.cost };
  const outcomes = weighOutcomes(scenario, places, season, needs, allocation, small.delivery);
  return recordPlan({
    engineVersion: '0.0.0',
    scenario,
    decisions: noDecisions,
    settings: { seed: 1, iterations: 100, stop: null, progress: null },
    rounds: 1,
    tools: [{ name: 'none', version: '0', options: '' }],
    stageHashes: {},
    places,
    season,
    needs,
    allocation,
    delivery,
    outcomes: outcomes.result,
    legs: change.legs ?? small.legs,
    problems: [...(change.problems ?? []), ...outcomes.problems],
    provenance: outcomes.provenance,
  });
}
