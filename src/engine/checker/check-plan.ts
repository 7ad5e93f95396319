import { type Decisions, withAssumptions } from '../vocabulary/decisions.ts';
import type { Plan } from '../vocabulary/plan.ts';
import type { Problem } from '../vocabulary/problems.ts';
import type { Scenario } from '../vocabulary/scenario.ts';
import { checkBalance } from './check-balance.ts';
import { checkDriving } from './check-driving.ts';
import { checkFairness } from './check-fairness.ts';
import { checkFertiliser } from './check-fertiliser.ts';
import { checkIdentity } from './check-identity.ts';
import { checkLatestLeave } from './check-latest-leave.ts';
import { checkLoads } from './check-loads.ts';
import { checkLots } from './check-lots.ts';
import { checkNeeds } from './check-needs.ts';
import { checkOrders } from './check-orders.ts';
import { checkOutcomes } from './check-outcomes.ts';
import { checkPaths } from './check-paths.ts';
import { checkPlaces } from './check-places.ts';
import { checkSeason } from './check-season.ts';
import { checkShape } from './check-shape.ts';
import { checkShares } from './check-shares.ts';
import { checkTemperatures } from './check-temperatures.ts';
import { checkTimes } from './check-times.ts';
import { checkUnserved } from './check-unserved.ts';
import { openCase } from './checked-case.ts';
import { cutLongRuns } from './finding.ts';
import { openAir } from './own-heat.ts';
import { openYard } from './own-idle.ts';
import { openReach } from './own-reach.ts';
import { openSeason } from './own-season.ts';
import { openVisits } from './own-visits.ts';

/**
 * Judges a plan from scenario, decisions and plan alone; shares no code with the stages and the science that made it.
 *
 * @param plan a plan document of any shape, as read from a file
 * @returns what does not hold, codes E8xxx; empty where the plan holds. Never throws because of the plan's shape.
 */
export function checkPlan(scenario: Scenario, decisions: Decisions, plan: unknown): readonly Problem[] {
  const shape = checkShape(scenario, plan);
  if (shape.length > 0) return cutLongRuns(shape);
  const document = plan as Plan;
  const identity = checkIdentity(scenario, decisions, document);
  // Indexes mean nothing where the lists they point into are others.
  if (identity.some(({ code }) => code === 'E8013' || code === 'E8014')) return cutLongRuns(identity);
  const c = openCase(withAssumptions(scenario, decisions), decisions, document);
  const season = openSeason(c);
  const reach = openReach(c);
  const air = openAir(c, season);
  return cutLongRuns([
    ...identity,
    ...checkPlaces(c, reach),
    ...checkSeason(c, season),
    ...checkNeeds(c),
    ...checkLots(c, air),
    ...checkShares(c),
    ...checkFairness(c, reach),
    ...checkFertiliser(c),
    ...checkOrders(c),
    ...checkBalance(c),
    ...checkLoads(c),
    ...checkTimes(c, season),
    ...checkDriving(c),
    ...checkLatestLeave(c, season, air),
    ...checkPaths(c, reach),
    ...checkTemperatures(c, air),
    ...checkUnserved(openYard(c, season, reach, air)),
    ...checkOutcomes(c, air, openVisits(c, season, reach, air)),
  ]);
}
