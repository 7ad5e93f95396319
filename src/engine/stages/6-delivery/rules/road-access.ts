import type { TravelTable } from '../../../vocabulary/stage-results/places.ts';

/**
 * Legs between a depot (0) and the places it serves, for one vehicle class, set of closed roads and road state. A pair without a
 * leg is never driven.
 */
export interface Legs {
  readonly size: number;
  /** Position in `minutes` and `kilometres` of the leg from a to b at [a * size + b]; -1 where there is none. */
  readonly at: Int32Array;
  readonly minutes: Float64Array;
  readonly kilometres: Float64Array;
}

/** Cuts one depot's legs out of a travel table. `sites` in the table's numbering, the depot first. */
export function legsBetween(table: TravelTable, sites: readonly number[]): Legs {
  const size = sites.length;
  const localOf = new Map(sites.map((site, local) => [site, local]));
  const at = new Int32Array(size * size).fill(-1);
  sites.forEach((site, from) => {
    for (let leg = table.offsets[site] as number; leg < (table.offsets[site + 1] as number); leg++) {
      const to = localOf.get(table.destinations[leg] as number);
      if (to !== undefined && to !== from) at[from * size + to] = leg;
    }
  });
  return { size, at, minutes: table.minutes, kilometres: table.kilometres };
}

/** Is there a way from the depot to the place and back? */
export function goesThereAndBack(legs: Legs, place: number): boolean {
  return (legs.at[place] as number) >= 0 && (legs.at[place * legs.size] as number) >= 0;
}
