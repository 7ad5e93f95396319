import type { LinearSolver } from '../../numerics/linear-solver.ts';
import { type FairFloor, raiseLevels } from './raise-least-share.ts';
import type { ShareTerms } from './share-terms.ts';

/**
 * With the floors of the zones held, the largest least share of the communities, level upon level: what a zone gets is equal among
 * its own as far as their depots allow. Rows become units of their own beside the zones, whose floors are closed.
 *
 * @returns floor of each row, kg with what it was promised; nought where the solver gives no optimum
 */
export function raiseWithinZones(terms: ShareTerms, zones: FairFloor, solver: LinearSolver): Float64Array {
  const rows = terms.pool.rows.length;
  const offsets = [0];
  const units: number[] = [];
  const fractions: number[] = [];
  for (let r = 0; r < rows; r++) {
    units.push(r);
    fractions.push(1);
    for (let k = terms.unitOffsets[r] as number; k < (terms.unitOffsets[r + 1] as number); k++) {
      units.push(rows + (terms.units[k] as number));
      fractions.push(terms.unitFraction[k] as number);
    }
    offsets.push(units.length);
  }
  const within: ShareTerms = {
    ...terms,
    unitCount: rows + terms.unitCount,
    unitOffsets: Int32Array.from(offsets),
    units: Int32Array.from(units),
    unitFraction: Float64Array.from(fractions),
  };
  const closedKg = new Float64Array(within.unitCount).fill(Number.NaN);
  closedKg.set(zones.unitFloorKg, rows);
  const floor = raiseLevels(within, zones.held, solver, closedKg);
  return floor ? floor.unitFloorKg.subarray(0, rows) : new Float64Array(rows);
}
