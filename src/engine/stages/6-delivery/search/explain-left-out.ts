import type { UnservedReason } from '../../../vocabulary/reasons.ts';
import { couldBring, NEVER } from './find-place.ts';
import { newRouteState, type RouteState } from './route-state.ts';
import type { PlaceMatrix, RoutingProblem } from './routing-problem.ts';

/** In the order in which rules are tried: the one that the most able vehicle fails at is what binds. */
const RULES: readonly UnservedReason[] = [
  'no-vehicle-day-left',
  'not-reachable',
  'heavier-than-any-vehicle',
  'no-time-in-shift',
  'no-vehicle-day-left',
];

/** Why loads are left out: each is tried on every slot as if all stood idle. What no rule forbids finds no room beside the others. */
export function explainLeftOut(problem: RoutingProblem, visits: readonly number[]): UnservedReason[] {
  if (visits.length === 0) return [];
  const idle = newRouteState(problem, 2);
  return visits.map((visit) => {
    let furthest = 0;
    for (let slot = 0; slot < problem.slots.count; slot++) furthest = Math.max(furthest, failsAt(idle, visit, slot));
    return RULES[furthest] as UnservedReason;
  });
}

/** Number in RULES of what forbids a journey to one load alone; the last where nothing does. */
function failsAt(idle: RouteState, visit: number, slot: number): number {
  const { visits, slots, matrices, shelfStart } = idle.problem;
  const shelfCost = visits.shelfCost[visit * (shelfStart.length - 1) + (idle.shelfOf[slot] as number)] as number;
  const { kmFrom, kmTo } = matrices[slots.matrix[slot] as number] as PlaceMatrix;
  const place = visits.place[visit] as number;
  // Not a number counts as no way, too.
  if (shelfCost === NEVER || !((kmFrom[place] as number) + (kmTo[place] as number) < NEVER)) return 1;
  const holds =
    (visits.kg[visit] as number) <= (slots.payloadKg[slot] as number) &&
    (visits.litres[visit] as number) <= (slots.coolLitres[slot] as number);
  if (!holds) return 2;
  return couldBring(idle, visit, slot) ? 4 : 3;
}
