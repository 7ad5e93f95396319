import { isoDate, parseIsoDate } from '../../vocabulary/calendar.ts';
import type { Decision, Decisions } from '../../vocabulary/decisions.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Consignment } from '../../vocabulary/stage-results/allocation.ts';
import { dayNumber } from '../../vocabulary/units.ts';
import { type DispatchState, dayOfLoad } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { decisionsOnConsignments } from './rules/decisions-on-loads.ts';

const FILE = 'decisions.json';

/** Decisions on vehicles and hand-overs that name nothing this scenario holds. */
export function judgeDecisions(scenario: Scenario, decisions: Decisions): Problem[] {
  const vehicles = new Set(scenario.vehicles.map(({ id }) => id));
  const communities = new Set(scenario.communities.map(({ id }) => id));
  const unknown = (decision: Decision): string | null => {
    if (decision.kind === 'vehicle-away') return vehicles.has(decision.vehicleId) ? null : decision.vehicleId;
    if (decision.kind !== 'lock' && decision.kind !== 'promise') return null;
    if (!communities.has(decision.communityId)) return decision.communityId;
    if (decision.kind === 'lock' && !vehicles.has(decision.vehicleId)) return decision.vehicleId;
    const day = parseIsoDate(decision.date);
    const inside = day !== null && day >= scenario.planning.from && day <= scenario.planning.to;
    return inside ? null : decision.date;
  };
  return decisions.decisions.flatMap((decision, i) => {
    const value = unknown(decision);
    return value === null ? [] : [problem('E6001', { file: FILE, row: i + 1, value, facts: { kind: decision.kind } })];
  });
}

/** Promises that the plan breaks: some load of the consignment comes on another day. */
export function judgePromises(
  scenario: Scenario,
  decisions: Decisions,
  consignments: readonly Consignment[],
  state: DispatchState,
): Problem[] {
  const decided = decisionsOnConsignments(scenario, decisions, consignments);
  const dateOf = (day: number) => isoDate(dayNumber(scenario.planning.from + day));
  return consignments.flatMap((consignment, index) => {
    const promised = decided[index]?.promisedDay;
    if (promised === null || promised === undefined) return [];
    const days = [...state.task.loads.keys()]
      .filter((load) => (state.task.loads[load] as TaskLoad).consignment === index)
      .map((load) => dayOfLoad(state, load));
    const other = days.find((day) => day !== promised);
    if (other === undefined) return [];
    const community = scenario.communities[consignment.community]?.id ?? '';
    const facts = { community, promised: dateOf(promised), planned: other < 0 ? '' : dateOf(other) };
    return [problem('E6002', { file: FILE, value: facts.promised, facts })];
  });
}
