import type { LinearAnswer, LinearSolver } from '../../numerics/linear-solver.ts';
import { NOISE_KG } from './ask.ts';
import { bundleRows } from './bundle-rows.ts';
import { LinearModelBuilder } from './linear-model-builder.ts';
import { addArcs, boundsLeft, openUnits, SHARE_SLACK } from './pool-model.ts';
import type { ShareTerms } from './share-terms.ts';

/** The largest least share, what one more kilogram asked by each row would cost it, and the floors above it. */
export interface FairFloor {
  readonly share: number;
  /** 1 where the row stands outside the equal share: held by a decision, or capped below it. */
  readonly held: Uint8Array;
  /** Dual price per row of the pool, 0 where held. */
  readonly rowPrices: Float64Array;
  /** What each unit is to have at least, kg with what it was promised; the share and, for those whom scarce stock does not bind, more. */
  readonly unitFloorKg: Float64Array;
}

/** After so many levels the rest is left to the most hectares. */
const MOST_LEVELS = 40;
/** A unit whose price times weight is above this is bound: in no sharing out at this level can it have more. */
const BOUND = 1e-9;

/**
 * First step, "equal share": the largest share T that every open unit can have at once.
 *
 *   maximise T   so that   sum_{r in u} f_ur (kept_r + sum_g x_rg) >= T * weight_u,   sum_r x_rg <= stock_g,
 *   low_r <= kept_r + sum_g x_rg <= high_r,   0 <= T <= 1.
 *
 * Units with a price are bound there (complementary slackness): they keep T as their floor, and the others are raised again, until
 * nobody can be given more without taking from somebody who has no more (the lexicographic max-min share). A row that may not
 * have as much as its T is held at what it may have, and all is shared again: T only rises, so this ends.
 *
 * @returns null where the solver gives no optimum
 */
export function raiseLeastShare(terms: ShareTerms, solver: LinearSolver): FairFloor | null {
  const held = terms.held.slice();
  for (;;) {
    const floor = terms.byZone ? raiseLevels(terms, held, solver) : raiseByBundles(terms, held, solver);
    if (floor === null || terms.byZone) return floor;
    let capped = 0;
    terms.weightKg.forEach((_, r) => {
      if (held[r] === 1 || (floor.unitFloorKg[r] as number) <= (terms.highKg[r] as number) + NOISE_KG) return;
      held[r] = 1;
      capped++;
    });
    if (capped === 0) return floor;
  }
}

function raiseByBundles(terms: ShareTerms, held: Uint8Array, solver: LinearSolver): FairFloor | null {
  const bundles = bundleRows(terms, held);
  const floor = raiseLevels(bundles.terms, bundles.held, solver);
  if (floor === null) return null;
  const rowPrices = Float64Array.from(bundles.bundleOf, (bundle) => floor.rowPrices[bundle] as number);
  const unitFloorKg = terms.weightKg.map((weight, r) => {
    const bundle = bundles.bundleOf[r] as number;
    const whole = bundles.terms.weightKg[bundle] as number;
    return whole > 0 ? ((floor.unitFloorKg[bundle] as number) * weight) / whole : 0;
  });
  return { ...floor, held: held.slice(), rowPrices, unitFloorKg };
}

/** Level upon level over the units of the terms; units that `closedKg` gives a floor keep it and take no part. */
export function raiseLevels(
  terms: ShareTerms,
  held: Uint8Array,
  solver: LinearSolver,
  closedKg: Float64Array = new Float64Array(terms.unitCount).fill(Number.NaN),
): FairFloor | null {
  const open = openUnits(terms, held);
  const floorKg = closedKg.slice();
  let first: FairFloor | null = null;
  let share = 0;
  for (let level = 0; level < MOST_LEVELS; level++) {
    const found = solveLevel(terms, held, solver, floorKg);
    if (found === null) break;
    share = found.share;
    first ??= { share, held: held.slice(), rowPrices: found.rowPrices, unitFloorKg: floorKg };
    let bound = 0;
    let left = 0;
    open.weightKg.forEach((weight, u) => {
      if (weight <= 0 || !Number.isNaN(floorKg[u] as number)) return;
      left++;
      if ((found.unitPrices[u] as number) * weight <= BOUND) return;
      floorKg[u] = share * weight;
      bound++;
    });
    if (bound === 0 || bound === left || share >= 1) break;
  }
  if (first === null) return null;
  const unitFloorKg = floorKg.map((kg, u) => (Number.isNaN(kg) ? share * (open.weightKg[u] as number) : kg));
  return { ...first, unitFloorKg };
}

interface Level {
  readonly share: number;
  readonly rowPrices: Float64Array;
  readonly unitPrices: Float64Array;
}

function solveLevel(terms: ShareTerms, held: Uint8Array, solver: LinearSolver, floorKg: Float64Array): Level | null {
  const builder = new LinearModelBuilder();
  const open = openUnits(terms, held);
  const isOpen = (u: number) => Number.isNaN(floorKg[u] as number);
  const unitRow = open.weightKg.map((weight, u) => {
    if (weight <= 0) return -1;
    const least = isOpen(u) ? 0 : (floorKg[u] as number) * (1 - SHARE_SLACK);
    return builder.addRow(least - (open.keptKg[u] as number), Number.POSITIVE_INFINITY);
  });
  const boundRow = terms.weightKg.map((_, r) => {
    const [low, high] = boundsLeft(terms, held, r);
    if (held[r] === 1 || terms.byZone) return builder.addRow(low, high);
    // No upper bound: it would hold everybody's share down to the lowest cap. Who is capped shows in the answer.
    return low > 0 ? builder.addRow(low, Number.POSITIVE_INFINITY) : -1;
  });
  addArcs(terms, builder, boundRow, held, unitRow, () => 0);
  open.weightKg.forEach((weight, u) => {
    if (weight > 0 && isOpen(u)) builder.addEntry(unitRow[u] as number, -weight);
  });
  builder.closeColumn(1, 0, 1);
  const answer = solver.solve(builder.build(true));
  if (answer.status !== 'optimal') return null;
  return {
    share: Math.min(1, Math.max(0, answer.columnValues[terms.pool.arcRow.length] as number)),
    rowPrices: terms.weightKg.map((_, r) => (held[r] === 1 ? 0 : rowPrice(terms, answer, r, unitRow, boundRow))),
    unitPrices: unitRow.map((row) => (row < 0 ? 0 : Math.max(0, -(answer.rowDuals[row] as number)))),
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
