import { parseIsoDate } from '../../../vocabulary/calendar.ts';
import type { Decision, Decisions } from '../../../vocabulary/decisions.ts';
import type { Scenario } from '../../../vocabulary/scenario.ts';
import type { Consignment } from '../../../vocabulary/stage-results/allocation.ts';

/** What planners decided about a consignment. */
export interface LoadDecisions {
  /** Vehicle and planning day that its loads are held to; null where none. A vehicle of -1 does not exist: nothing may be served. */
  readonly lock: { readonly vehicle: number; readonly day: number } | null;
  /** Planning day that the community was told; null where none. */
  readonly promisedDay: number | null;
}

/** The last lock and the last promise that name each consignment's community and goods. */
export function decisionsOnConsignments(
  scenario: Scenario,
  decisions: Decisions,
  consignments: readonly Consignment[],
): LoadDecisions[] {
  const vehicleIndex = new Map(scenario.vehicles.map((vehicle, i) => [vehicle.id, i]));
  const planningDay = (date: string) => (parseIsoDate(date) ?? Number.NaN) - scenario.planning.from;
  return consignments.map((consignment) => {
    const communityId = scenario.communities[consignment.community]?.id;
    let lock: LoadDecisions['lock'] = null;
    let promisedDay: number | null = null;
    for (const decision of decisions.decisions) {
      if (!names(decision, communityId, consignment)) continue;
      if (decision.kind === 'lock') {
        lock = { vehicle: vehicleIndex.get(decision.vehicleId) ?? -1, day: planningDay(decision.date) };
      } else promisedDay = planningDay(decision.date);
    }
    return { lock, promisedDay };
  });
}

function names(
  decision: Decision,
  communityId: string | undefined,
  consignment: Consignment,
): decision is Extract<Decision, { kind: 'lock' | 'promise' }> {
  if (decision.kind !== 'lock' && decision.kind !== 'promise') return false;
  if (decision.communityId !== communityId) return false;
  // Fertiliser is told to nobody: it comes where there is room.
  if (consignment.group === 'fertiliser') return false;
  return consignment.group === 'both' || (consignment.group === 'dry') === (decision.commodity === 'seed');
}
