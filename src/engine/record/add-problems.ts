import type { Plan, Problem } from '../vocabulary/index.ts';
import { orderProblems } from './order-problems.ts';

/** The same plan with further problems, such as those met while its scenario was read. */
export function addProblems(plan: Plan, problems: readonly Problem[]): Plan {
  return { ...plan, problems: orderProblems([...problems, ...plan.problems]) };
}
