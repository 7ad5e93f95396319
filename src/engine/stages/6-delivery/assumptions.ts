import { type Sourced, sourced } from '../../vocabulary/provenance.ts';

/** What this stage assumes where neither the programme nor a source says. */

/** A visit on another day than market day, as a part of the load's worth, where the rule is `prefer`. */
export const OFF_MARKET_SHARE: Sourced<number> = sourced(
  0.01,
  'assumed',
  'enough to choose between equal days, never to lose a hectare',
);

/** Hectares whose goods are worth a dearest vehicle-day, where packs have no price. */
export const HECTARES_PER_DEAREST_DAY: Sourced<number> = sourced(
  10,
  'assumed',
  'no price of a hectare is given; makes timeliness weigh as much as a journey',
);

/**
 * A load left behind costs its worth and this many of the dearest journeys, so that money alone never leaves a load behind
 * that a vehicle standing idle could bring.
 */
export const DEAREST_JOURNEYS_UNSERVED: Sourced<number> = sourced(2, 'assumed', 'service before cost');

/** Most that one load of fertiliser weighs, kg, bags being whole: small enough to find room beside other goods. */
export const FERTILISER_LOAD_KG: Sourced<number> = sourced(250, 'assumed', 'five bags of 50 kg or ten of 25 kg');

/** A promise broken without a stated price, in dearest journeys. */
export const DEAREST_JOURNEYS_BROKEN_PROMISE: Sourced<number> = sourced(1, 'assumed', 'promisePrice is not stated');
