/** The same defaults as on the command line, so that both make the same plan. */
export const SEARCH = { seed: 1, iterations: 20_000 };
/** Few are enough where the search begins from a plan. */
export const REPLAN_ITERATIONS = 1_000;
