import type { LinearAnswer, LinearSolver } from '../../numerics/linear-solver.ts';
import { NOISE_KG } from './ask.ts';
import { bundleRows } from './bundle-rows.ts';
import { LinearModelBuilder } from './linear-model-builder.ts';
import { addArcs, boundsLeft, openUnits } from './pool-model.ts';
import type { ShareTerms } from './share-terms.ts';

/** The largest least share, and what one more kilogram asked by each row would cost it. */
export interface FairFloor {
  readonly share: number;
  /** 1 where the row stands outside the equal share: held by a decision, or capped below it. */
  readonly held: Uint8Array;
  /** Dual price per row of the pool, 0 where held. */
  readonly rowPrices: Float64Array;
}

/**
 * First step, "equal share": the largest share T that every open unit can have at once.
 *
 *   maximise T   so that   sum_{r in u} f_ur (kept_r + sum_g x_rg) >= T * weight_u,   sum_r x_rg <= stock_g,
 *   low_r <= kept_r + sum_g x_rg <= high_r,   0 <= T <= 1.
 *
 * A row that may not have as much as T is held at what it may have, and the rest is shared again: T only rises, so this ends.
 *
 * @returns null where the solver gives no optimum
 */
export function raiseLeastShare(terms: ShareTerms, solver: LinearSolver): FairFloor | null {
  const held = terms.held.slice();
  for (;;) {
    const floor = terms.byZone ? solveLeastShare(terms, held, solver) : solveByBundles(terms, held, solver);
    if (floor === null || terms.byZone) return floor;
    let capped = 0;
    terms.weightKg.forEach((weight, r) => {
      if (held[r] === 1 || floor.share * weight <= (terms.highKg[r] as number) + NOISE_KG) return;
      held[r] = 1;
      capped++;
    });
    if (capped === 0) return floor;
  }
}

function solveByBundles(terms: ShareTerms, held: Uint8Array, solver: LinearSolver): FairFloor | null {
  const bundles = bundleRows(terms, held);
  const floor = solveLeastShare(bundles.terms, bundles.held, solver);
  if (floor === null) return null;
  const rowPrices = Float64Array.from(bundles.bundleOf, (bundle) => floor.rowPrices[bundle] as number);
  return { ...floor, held: held.slice(), rowPrices };
}

function solveLeastShare(terms: ShareTerms, held: Uint8Array, solver: LinearSolver): FairFloor | null {
  const builder = new LinearModelBuilder();
  const open = openUnits(terms, held);
  const unitRow = open.weightKg.map((weight, u) =>
    weight > 0 ? builder.addRow(-(open.keptKg[u] as number), Number.POSITIVE_INFINITY) : -1,
  );
  const boundRow = terms.weightKg.map((_, r) => {
    const [low, high] = boundsLeft(terms, held, r);
    if (held[r] === 1 || terms.byZone) return builder.addRow(low, high);
    // No upper bound: it would hold everybody's share down to the lowest cap. Who is capped shows in the answer.
    return low > 0 ? builder.addRow(low, Number.POSITIVE_INFINITY) : -1;
  });
  addArcs(terms, builder, boundRow, held, unitRow, () => 0);
  open.weightKg.forEach((weight, u) => {
    if (weight > 0) builder.addEntry(unitRow[u] as number, -weight);
  });
  builder.closeColumn(1, 0, 1);
  const answer = solver.solve(builder.build(true));
  if (answer.status !== 'optimal') return null;
  return {
    share: Math.min(1, Math.max(0, answer.columnValues[terms.pool.arcRow.length] as number)),
    held: held.slice(),
    rowPrices: terms.weightKg.map((_, r) => (held[r] === 1 ? 0 : rowPrice(terms, answer, r, unitRow, boundRow))),
  };
}

/** Price of a row: those of its units, less that of its own upper bound. The dual of a lower bound is negative in a maximum. */
function rowPrice(
  terms: ShareTerms,
  { rowDuals }: LinearAnswer,
  r: number,
  unitRow: Float64Array,
  boundRow: Float64Array,
): number {
  let price = 0;
  for (let k = terms.unitOffsets[r] as number; k < (terms.unitOffsets[r + 1] as number); k++) {
    const dual = rowDuals[unitRow[terms.units[k] as number] as number] ?? 0;
    price += (terms.unitFraction[k] as number) * Math.max(0, -dual);
  }
  const ownBound = boundRow[r] as number;
  return Math.max(0, price - (ownBound < 0 ? 0 : Math.max(0, rowDuals[ownBound] as number)));
}
