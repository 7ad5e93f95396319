import { type RoutingInstance, type SearchSettings, solveInstance } from '../engine/index.ts';

/** Share of the time given that goes into measuring the pace, and share of what is left that is planned for. */
const PACE_SHARE = 0.05;
const PLANNED_SHARE = 0.98;

export interface SearchLimits {
  /** Steps that the search cools down over. */
  readonly iterations: number;
  readonly stop: SearchSettings['stop'];
}

/**
 * Steps that fit a time, by the pace of short runs: a search cools down over its steps, so it must know how many there will be. The
 * clock has the last word.
 *
 * @param now a clock in milliseconds
 */
export function stepsInTime(instance: RoutingInstance, seed: number, seconds: number, now: () => number): SearchLimits {
  const begun = now();
  const stop = () => now() - begun > seconds * 1000;
  for (let iterations = 1000; ; iterations *= 4) {
    const from = now();
    solveInstance(instance, { seed, iterations, stop, progress: null });
    const took = now() - from;
    if (took <= seconds * 1000 * PACE_SHARE && !stop()) continue;
    const left = seconds * 1000 - (now() - begun);
    return { iterations: Math.max(1, Math.floor((iterations / took) * left * PLANNED_SHARE)), stop };
  }
}
