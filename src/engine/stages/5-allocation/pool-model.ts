import type { LinearModelBuilder } from './linear-model-builder.ts';
import type { ShareTerms } from './share-terms.ts';

/** How far below the proven share the second step may let a row fall: room for the solver's last digits. */
export const SHARE_SLACK = 1e-9;

/** Least and most kilograms that the row may still be given. */
export function boundsLeft(
  { lowKg, highKg, keptKg }: ShareTerms,
  held: Uint8Array,
  r: number,
): readonly [number, number] {
  const high = Math.max(0, (highKg[r] as number) - (keptKg[r] as number));
  if (held[r] === 1) return [high * (1 - SHARE_SLACK), high];
  return [Math.min(high, Math.max(0, (lowKg[r] as number) - (keptKg[r] as number))), high];
}

/** Weight and kept amount of each unit, over its open rows; who has no claim to an equal share does not count for its zone. */
export function openUnits(terms: ShareTerms, held: Uint8Array) {
  const weightKg = new Float64Array(terms.unitCount);
  const keptKg = new Float64Array(terms.unitCount);
  terms.weightKg.forEach((weight, r) => {
    if (held[r] === 1 || weight === 0) return;
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
export function addArcs(
  { pool, stockKg, weightKg, unitOffsets, units, unitFraction }: ShareTerms,
  builder: LinearModelBuilder,
  boundRow: Float64Array,
  held: Uint8Array,
  unitRow: Float64Array,
  costOf: (arc: number) => number,
): void {
  const stockRow = stockKg.map((kg) => builder.addRow(Number.NEGATIVE_INFINITY, kg));
  pool.arcRow.forEach((r, a) => {
    if (held[r] === 0 && (weightKg[r] as number) > 0) {
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
