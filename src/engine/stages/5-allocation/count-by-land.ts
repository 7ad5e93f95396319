import type { DemandRows } from './demand-rows.ts';
import type { GrantLine } from './list-grants.ts';

/**
 * The same rows in land instead of seed: a hectare stands where a kilogram of seed stood. Fertiliser is shared out so, because a bag
 * serves packG / 1000 / rateKgPerHa hectares whoever gets it, but not the same seed: seed rates differ by crop and community. All else
 * of sharing out, orders and hand-overs before then holds as it is written, with "kg" read as hectares.
 */
export function countByLand(demand: DemandRows): DemandRows {
  return {
    ...demand,
    seedNeedKg: demand.plannedHa,
    ownSeedKg: new Float64Array(demand.count),
    programmeSeedKg: demand.plannedHa,
    kgPerHa: new Float64Array(demand.count).fill(1),
  };
}

/** Lines counted by land, told in the seed that is sown on it: what goods say they serve is of one kind throughout the plan. */
export function toldInSeed(demand: DemandRows, lines: readonly GrantLine[]): GrantLine[] {
  return lines.map((line) => ({ ...line, servesSeedKg: line.servesSeedKg * (demand.kgPerHa[line.row] as number) }));
}
