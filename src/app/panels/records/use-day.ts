import type { Plan, Scenario } from '../../../engine/index.ts';
import { useSeason } from '../../state/use-stores.ts';

export interface OpenDay {
  readonly plan: Plan;
  readonly scenario: Scenario;
  /** The day to be entered: the first that the plan still plans. */
  readonly today: string;
}

/** Null before there is a plan. */
export function useOpenDay(): OpenDay | null {
  const { plan, scenario } = useSeason();
  return plan && scenario ? { plan, scenario, today: plan.scenario.planningFrom } : null;
}
