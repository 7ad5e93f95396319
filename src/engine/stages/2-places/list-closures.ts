import { ROAD_REACH_KM } from '../../reference/speeds.ts';
import { parseIsoDate } from '../../vocabulary/calendar.ts';
import type { Decisions } from '../../vocabulary/decisions.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { RoadFinder } from './road-finder.ts';

/** Sets of roads closed at a time, in the order in which they first occur, and the set of each planning day. */
export interface Closures {
  readonly sets: readonly (readonly number[])[];
  readonly daySet: Int32Array;
  readonly problems: readonly Problem[];
}

interface Closure {
  readonly road: number;
  readonly from: number;
  readonly to: number;
}

/** Closures dated in the road file and closures decided (the line nearest to the point), both days included. */
export function listClosures(scenario: Scenario, decisions: Decisions, finder: RoadFinder): Closures {
  const { from, to } = scenario.planning;
  const decided = decideClosures(decisions, finder);
  const closures = [...dateClosures(scenario), ...decided.closures];
  const sets: number[][] = [];
  const setOfKey = new Map<string, number>();
  const daySet = Int32Array.from({ length: to - from + 1 }, (_, offset) => {
    const day = from + offset;
    const roads = closures.filter((closure) => closure.from <= day && day <= closure.to).map(({ road }) => road);
    const closed = [...new Set(roads)].sort((a, b) => a - b);
    const key = closed.join(' ');
    const known = setOfKey.get(key);
    if (known !== undefined) return known;
    setOfKey.set(key, sets.length);
    return sets.push(closed) - 1;
  });
  return { sets, daySet, problems: decided.problems };
}

/** A road with one date only is closed from it on, or up to it. */
function dateClosures({ roads }: Scenario): Closure[] {
  return roads.flatMap(({ closedFrom, closedTo }, road) =>
    closedFrom === null && closedTo === null
      ? []
      : [{ road, from: closedFrom ?? Number.NEGATIVE_INFINITY, to: closedTo ?? Number.POSITIVE_INFINITY }],
  );
}

function decideClosures({ decisions }: Decisions, finder: RoadFinder) {
  const closures: Closure[] = [];
  const problems: Problem[] = [];
  for (const [row, decision] of decisions.entries()) {
    if (decision.kind !== 'road-closed') continue;
    const nearest = finder.nearest([decision.lon, decision.lat], ROAD_REACH_KM.value, () => true);
    const [from, to] = [parseIsoDate(decision.from), parseIsoDate(decision.to)];
    if (nearest && from !== null && to !== null) closures.push({ road: nearest.road, from, to });
    else {
      const facts = { lon: decision.lon, lat: decision.lat, from: decision.from, to: decision.to };
      problems.push(problem('E2006', { row: row + 1, column: 'road-closed', facts }));
    }
  }
  return { closures, problems };
}
