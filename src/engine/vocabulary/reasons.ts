/** Why something could not be had or done: codes with values; the words stand in presentation/wording. */

/** Why a lot is not given, or only in part. */
export type LotReason =
  | 'expired'
  | 'expires-before-sowing'
  | 'on-hold'
  | 'awaiting'
  | 'count-below-minimum'
  | 'germination-below-minimum'
  | 'treated-seed-not-for-inoculant'
  | 'available-too-late'
  | 'no-crop-planned'
  | 'unknown-depot';

/** Why a community gets less of a commodity than its planned need. */
export type ShortfallReason =
  | 'stock-short'
  | 'no-compatible-stock'
  | 'stock-elsewhere'
  | 'no-seed-to-inoculate'
  | 'handed-over-before'
  | 'not-reachable'
  | 'not-delivered'
  | 'window-missed'
  | 'decision'
  | 'pack-rounding';

/** Why a load is not served. */
export type UnservedReason =
  | 'not-reachable'
  | 'heavier-than-any-vehicle'
  | 'no-cold-box'
  | 'no-time-in-shift'
  | 'no-vehicle-day-left'
  | 'too-hot'
  | 'hours-above-storage'
  | 'window-missed'
  | 'seed-not-delivered'
  | 'market-day-only'
  | 'point-closed'
  | 'overnight-trip-needed'
  | 'decision'
  | 'costs-more-than-it-gives';

/** Why no vehicle reaches a point. */
export type UnreachableReason =
  | 'no-road-within-reach'
  | 'road-piece-without-depot'
  | 'no-way-there-and-back'
  | 'no-vehicle';

/**
 * What cost a past season most of its inoculated land: no onset at all; goods handed over after the window had closed, by closed
 * roads or by the plan; packs that may have reached 40 °C; rhizobia that died in the pack while growers waited for rain; packs
 * too weak from the start.
 */
export type SeasonCost = 'little' | 'no-onset' | 'late' | 'hot' | 'waiting' | 'weak';
