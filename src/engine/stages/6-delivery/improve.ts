import { RandomStream } from '../../numerics/random-stream.ts';
import type { SearchSettings } from '../../vocabulary/settings.ts';
import type { DispatchState } from './dispatch-state.ts';
import { absentLoads } from './fill-up.ts';
import { cool, type SearchEnd } from './search/anneal.ts';

/** Start and end temperature, as parts of the mean cost of a used vehicle-day: the programme's own unit. Measured, see the stage's README. */
const START_HEAT = 0.3;
const END_HEAT = 0.003;
/** The same where the search begins from a plan that is to be kept as far as it can. */
const START_HEAT_OF_PRESENT = 0.1;

/**
 * Betters a plan by the search over rows and leaves the best plan met in the state. The same seed and steps give the same plan.
 *
 * @param hopeful loads that some vehicle-day could bring on its own; no others are tried
 * @param disturbed where the state holds a plan that people have been told, the loads that found no place in it: the search stays
 *   around them, so that whoever they do not touch keeps day, vehicle and hour; null: a plan that nobody knows
 */
export function improve(
  state: DispatchState,
  hopeful: Uint8Array,
  settings: SearchSettings,
  disturbed: readonly number[] | null,
): Omit<SearchEnd, 'state'> {
  if (disturbed?.length === 0) return { iterationsDone: 0, stoppedBy: 'iterations' };
  const { search, rows, task } = state;
  const { ruins } = search;
  const moved = disturbed ?? [...task.loads.keys()].filter((load) => task.loads[load]?.ridesLast === false);
  ruins.centres = Int32Array.from(moved);
  ruins.staysAround = disturbed !== null;
  const absent = absentLoads(state, hopeful);
  ruins.absent.set(absent);
  ruins.count = absent.length;
  const days = rows.usedCount;
  const cost = rows.slotCost.reduce((sum, of) => sum + of, 0);
  const dayCost = days === 0 ? 1 : Math.max(cost / days, 1e-7);
  const start = disturbed ? START_HEAT_OF_PRESENT : START_HEAT;
  return cool({ ...search, random: new RandomStream(settings.seed) }, settings, start * dayCost, END_HEAT * dayCost);
}
