import { type Sourced, sourced } from '../vocabulary/provenance.ts';

/** Time that a hand-over takes, beside driving. */

export const SERVICE_MINUTES: Sourced<number> = sourced(
  20,
  'assumed',
  'hand-over, count and signature: 15 to 30 min a stop',
);
export const MOTORCYCLE_SERVICE_MINUTES: Sourced<number> = sourced(10, 'assumed', 'hand-over from a motorcycle');
/** Dry goods carried from the vehicle into the store. */
export const UNLOADING_MINUTES_PER_T: Sourced<number> = sourced(
  10,
  'assumed',
  'two or three people carrying sacks of 25 to 50 kg',
);
