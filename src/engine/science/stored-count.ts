import { tenTo } from '../numerics/elementary.ts';
import type { Depot } from '../vocabulary/scenario.ts';
import type { Lot, Product } from '../vocabulary/supply.ts';
import type { DayNumber } from '../vocabulary/units.ts';
import { depotCelsius } from './depot-store.ts';
import { packLog10PerDay, survivalSet } from './survival.ts';

/** Where a lot has stood since its test. */
export interface StoredLot {
  readonly lot: Lot;
  readonly product: Product;
  /** Null where nobody knows it: nothing is taken off. */
  readonly depot: Depot | null;
  /** Outside a full cool store. */
  readonly isOutside: boolean;
  /** Mean air at the depot on the days before `firstDay`, °C, the last one last. Days before its first are as its first. */
  readonly earlierMeanC: Float64Array;
  readonly firstDay: DayNumber;
}

/**
 * Rhizobia per gram, as tested, else as the label says; NaN where neither does, which meets no minimum.
 */
export function statedCountPerG({ testedCountPerG }: Lot, product: Product): number {
  return testedCountPerG ?? product.countPerG ?? Number.NaN;
}

/**
 * Rhizobia per gram on the first planning day: the count of the test less what the depot's store has cost in the days since, by the
 * strain among its crops that dies fastest. A label's count is what the maker answers for until the expiry date (common practice, no
 * source), so it is not brought forward; nor is a test without a date.
 */
export function countAtStart({ lot, product, depot, isOutside, earlierMeanC, firstDay }: StoredLot): number {
  const stated = statedCountPerG(lot, product);
  if (lot.testedCountPerG === null || lot.testedOn === null || !depot || earlierMeanC.length === 0) return stated;
  const sets = product.crops.map((crop) => survivalSet(product, crop));
  let lost = 0;
  for (let day = lot.testedOn; day < firstDay; day++) {
    const airMeanC = earlierMeanC[Math.max(0, earlierMeanC.length - (firstDay - day))] as number;
    const celsius = depotCelsius(depot, isOutside, airMeanC);
    lost += Math.max(...sets.map((set) => packLog10PerDay(celsius, set)));
  }
  return stated * tenTo(-lost);
}
