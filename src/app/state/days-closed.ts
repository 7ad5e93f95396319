import type { Decision } from '../../engine/index.ts';

/** Where hand-overs stand, as the command line reads them. */
export const HANDOVERS = 'handovers.csv';

/** The decisions that intake reads the files by: which days are over and what rain was measured. */
export const daysOf = (decisions: readonly Decision[]): string =>
  JSON.stringify(decisions.filter(({ kind }) => kind === 'day-closed' || kind === 'rain'));

export const movesTheDay = (decisions: readonly Decision[]): boolean => daysOf(decisions) !== '[]';
