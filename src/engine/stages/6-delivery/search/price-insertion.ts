import { findPlace, found, most, NEVER } from './find-place.ts';
import type { RouteState } from './route-state.ts';
import type { RoutingProblem } from './routing-problem.ts';

/** In the place of a place: there is none that is cheaper than the price kept. */
export const AT_LEAST = -1;

/**
 * The one place where the price of serving a load with a slot is made: the cheapest place in the row by kilometres that keeps
 * weight, volume and every hour. Prices are kept per load and slot for as long as the row is the same.
 */
export interface PriceMemory {
  /** First entry of each load; then one entry for each slot that may serve it. */
  readonly base: Int32Array;
  /** What the price was made for: the row's version, and the work the load brings. */
  readonly stamp: Float64Array;
  readonly price: Float64Array;
  /**
   * Where, as `findPlace` tells it. AT_LEAST: the price is a bound, nothing cheaper was found when it was made.
   */
  readonly where: Int32Array;
  /** 1 where the price holds the rules of the caller as well and is no longer a bound. */
  readonly exact: Uint8Array;
  /** Slots on offer for the load that is being put back, each cheaper than those before it where nothing is judged. */
  readonly offers: Int32Array;
}

export function newPriceMemory({ visits, shelfStart, slots }: RoutingProblem): PriceMemory {
  const base = new Int32Array(visits.count);
  let size = 0;
  for (let visit = 0; visit < visits.count; visit++) {
    const first = shelfStart[visits.shelfFrom[visit] as number] as number;
    base[visit] = size - first;
    size += (shelfStart[visits.shelfTo[visit] as number] as number) - first;
  }
  return {
    base,
    stamp: new Float64Array(size).fill(-1),
    price: new Float64Array(size),
    where: new Int32Array(size),
    exact: new Uint8Array(size),
    offers: new Int32Array(slots.count),
  };
}

/**
 * Makes the price of a load and a slot anew; the caller has seen that the one kept is of another stamp or a bound too low.
 *
 * @param entry where it stands in the memory; its price holds the most that is of interest: from there on it becomes a bound
 */
export function renewPrice(
  state: RouteState,
  memory: PriceMemory,
  entry: number,
  visit: number,
  slot: number,
  stamp: number,
): void {
  memory.stamp[entry] = stamp;
  memory.exact[entry] = 0;
  most[0] = memory.price[entry] as number;
  const where = findPlace(state, visit, slot);
  const cheaper = (found[0] as number) < (most[0] as number);
  most[0] = NEVER;
  memory.where[entry] = cheaper ? where : AT_LEAST;
  if (cheaper) memory.price[entry] = found[0] as number;
}
