import type { LinearAnswer, LinearSolver } from '../../numerics/linear-solver.ts';
import { NOISE_KG } from './ask.ts';
import { bundleRows } from './bundle-rows.ts';
import { LinearModelBuilder } from './linear-model-builder.ts';
import type { ShareTerms } from './share-terms.ts';

/** The largest least share, and what one more kilogram asked by each row would cost it. */
export interface FairFloor {
  readonly share: number;
  /** 1 where the row stands outside the equal share: held by a decision, or capped below it. */
  readonly held: Uint8Array;
  /** Dual price per row of the pool, 0 where held. */
  readonly rowPrices: Float64Array;
  /** What held rows take of each group of the pool, kg. */
  readonly heldKg: Float64Array;
}

/** How far below the proven share the second step may let a row fall: room for the solver's last digits. */
const SHARE_SLACK = 1e-9;
/** The same, where the solver finds no optimum with the first. */
const WIDER_SLACK = 1e-6;

/** The objective of the second step is scaled so that the smallest term stays well above the solver's tolerance. */
const HECTARE_SCALE = 1000;
const MINUTE_SCALE = 0.1;

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
  const arcs = terms.pool.arcRow.length;
  const heldKg = new Float64Array(terms.stockKg.length);
  terms.pool.arcRow.forEach((r, a) => {
    const g = terms.pool.arcGroup[a] as number;
    if (held[r] === 1) heldKg[g] = (heldKg[g] as number) + Math.max(0, answer.columnValues[a] as number);
  });
  return {
    share: Math.min(1, Math.max(0, answer.columnValues[arcs] as number)),
    held: held.slice(),
    rowPrices: terms.weightKg.map((_, r) => (held[r] === 1 ? 0 : rowPrice(terms, answer, r, unitRow, boundRow))),
    heldKg,
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

/**
 * Second step, "most hectares": with the floor of the first step held, as many hectares as the rest of the stock allows;
 * among equals the nearer depot serves. The drive counts for less than a ten-thousandth of the hectares.
 *
 * @param share floor of the open units, 0 to 1
 * @returns kg per arc; null where the solver gives no optimum
 */
export function spreadByHectares(
  terms: ShareTerms,
  held: Uint8Array,
  share: number,
  solver: LinearSolver,
): Float64Array | null {
  return (
    spreadAbove(terms, held, Math.max(0, share - SHARE_SLACK), solver) ??
    spreadAbove(terms, held, Math.max(0, share - WIDER_SLACK), solver)
  );
}

function spreadAbove(terms: ShareTerms, held: Uint8Array, floor: number, solver: LinearSolver): Float64Array | null {
  const { pool, weightKg, keptKg, haPerKg } = terms;
  const builder = new LinearModelBuilder();
  const boundRow = weightKg.map((weight, r) => {
    const [low, high] = boundsLeft(terms, held, r);
    if (held[r] === 1 || terms.byZone) return builder.addRow(low, high);
    return builder.addRow(Math.min(high, Math.max(low, floor * weight - (keptKg[r] as number))), high);
  });
  const open = openUnits(terms, held);
  const unitRow = open.weightKg.map((weight, u) =>
    terms.byZone && weight > 0
      ? builder.addRow(floor * weight - (open.keptKg[u] as number), Number.POSITIVE_INFINITY)
      : -1,
  );
  const mostHaPerKg = haPerKg.reduce((most, ha) => Math.max(most, ha), 0);
  const mostMinutes = pool.arcMinutes.reduce((most, minutes) => Math.max(most, minutes), 1);
  addArcs(terms, builder, boundRow, held, unitRow, (a) => {
    const hectares = (haPerKg[pool.arcRow[a] as number] as number) / mostHaPerKg;
    return HECTARE_SCALE * hectares - (MINUTE_SCALE * (pool.arcMinutes[a] as number)) / mostMinutes;
  });
  const answer = solver.solve(builder.build(true));
  return answer.status === 'optimal' ? answer.columnValues.map((kg) => Math.max(0, kg)) : null;
}

/**
 * Part of the least amounts (floors and fixes of decisions) that the stock can meet, 0 to 1; 1 where there are none.
 *
 * @returns null where the solver gives no optimum
 */
export function shareOfLeastAmounts(terms: ShareTerms, solver: LinearSolver): number | null {
  const lowLeft = terms.lowKg.map((low, r) => low - (terms.keptKg[r] as number));
  if (!lowLeft.some((low) => low > NOISE_KG)) return 1;
  const builder = new LinearModelBuilder();
  const unitRow = new Float64Array(terms.unitCount).fill(-1);
  const boundRow = lowLeft.map((low) => (low > NOISE_KG ? builder.addRow(0, Number.POSITIVE_INFINITY) : -1));
  addArcs(terms, builder, boundRow, terms.held, unitRow, () => 0);
  lowLeft.forEach((low, r) => {
    if ((boundRow[r] as number) >= 0) builder.addEntry(boundRow[r] as number, -low);
  });
  builder.closeColumn(1, 0, 1);
  const answer = solver.solve(builder.build(true));
  if (answer.status !== 'optimal') return null;
  const met = answer.columnValues[terms.pool.arcRow.length] as number;
  return met > 1 - SHARE_SLACK ? 1 : Math.max(0, met - SHARE_SLACK);
}

/** Least and most kilograms that the row may still be given. */
function boundsLeft({ lowKg, highKg, keptKg }: ShareTerms, held: Uint8Array, r: number): readonly [number, number] {
  const high = Math.max(0, (highKg[r] as number) - (keptKg[r] as number));
  if (held[r] === 1) return [high * (1 - SHARE_SLACK), high];
  return [Math.min(high, Math.max(0, (lowKg[r] as number) - (keptKg[r] as number))), high];
}

/** Weight and kept amount of each unit, over its open rows. */
function openUnits(terms: ShareTerms, held: Uint8Array) {
  const weightKg = new Float64Array(terms.unitCount);
  const keptKg = new Float64Array(terms.unitCount);
  terms.weightKg.forEach((weight, r) => {
    if (held[r] === 1) return;
    for (let k = terms.unitOffsets[r] as number; k < (terms.unitOffsets[r + 1] as number); k++) {
      const unit = terms.units[k] as number;
      const fraction = terms.unitFraction[k] as number;
      weightKg[unit] = (weightKg[unit] as number) + fraction * weight;
      keptKg[unit] = (keptKg[unit] as number) + fraction * (terms.keptKg[r] as number);
    }
  });
  return { weightKg, keptKg };
}

/** Adds the rows of the stock, then a column for each arc. Rows numbered -1 take no part. */
function addArcs(
  { pool, stockKg, unitOffsets, units, unitFraction }: ShareTerms,
  builder: LinearModelBuilder,
  boundRow: Float64Array,
  held: Uint8Array,
  unitRow: Float64Array,
  costOf: (arc: number) => number,
): void {
  const stockRow = stockKg.map((kg) => builder.addRow(Number.NEGATIVE_INFINITY, kg));
  pool.arcRow.forEach((r, a) => {
    if (held[r] === 0) {
      for (let k = unitOffsets[r] as number; k < (unitOffsets[r + 1] as number); k++) {
        const row = unitRow[units[k] as number] as number;
        if (row >= 0) builder.addEntry(row, unitFraction[k] as number);
      }
    }
    if ((boundRow[r] as number) >= 0) builder.addEntry(boundRow[r] as number, 1);
    builder.addEntry(stockRow[pool.arcGroup[a] as number] as number, 1);
    builder.closeColumn(costOf(a), 0, Number.POSITIVE_INFINITY);
  });
}
