import type { LinearSolver } from '../../numerics/linear-solver.ts';
import { NOISE_KG } from './ask.ts';
import { LinearModelBuilder } from './linear-model-builder.ts';
import { mostAllowed, type PacksOfArcs } from './make-whole-packs.ts';
import { SHARE_SLACK } from './pool-model.ts';
import type { FairFloor } from './raise-least-share.ts';
import type { ShareTerms } from './share-terms.ts';
import type { PackSize } from './stock-groups.ts';

/** Larger pools are left as rounded: whole numbers in hundreds would take longer than they are worth. */
const MOST_COLUMNS = 16;
/** What a minute of driving or a kilogram beyond the need weighs against a hectare. */
const TINY = 1e-6;
/** What a kilogram below the share weighs against a kilogram served. */
const SMALL = 1e-3;

/** Room for the tolerance of whole numbers, so that nobody is given as much as a whole smallest pack too much. */
const WHOLE_SLACK_KG = 1e-4;

interface Packing {
  readonly terms: ShareTerms;
  readonly floor: FairFloor;
  /** Shares before packs are made whole, kg by arc. */
  readonly arcKg: Float64Array;
  readonly sizes: readonly (readonly PackSize[])[];
  /** What rounding gives. */
  readonly rounded: PacksOfArcs;
  readonly solver: LinearSolver;
}

/**
 * Whole packs of a small pool at their best: first the largest smallest share that whole packs allow, then with that held the most hectares,
 * nobody falling farther below its share than rounding may leave it, and what decisions hold staying as rounded. Where everybody is
 * served in full by rounding, or the pool is large, or the solver stops early, rounding stands.
 */
export function packExactly(packing: Packing): PacksOfArcs {
  const { terms, sizes, rounded } = packing;
  const { pool } = terms;
  const columns = Array.from(pool.arcGroup).reduce((sum, g) => sum + (sizes[g] as readonly PackSize[]).length, 0);
  if (columns > MOST_COLUMNS || terms.byZone) return rounded;
  const rows = boundRows(packing);
  const isShort = (r: number) => (rows[r] as RowBound).givenKg < (terms.highKg[r] as number) - NOISE_KG;
  if (!pool.rows.some((_, r) => isShort(r))) return rounded;
  const share = bestWholeShare(packing, rows);
  if (share === null) return rounded;
  return mostLand(packing, rows, share) ?? rounded;
}

/** Most hectares above the smallest share; among equals nearest to the shares before packs were made whole. */
function mostLand(packing: Packing, rows: readonly RowBound[], share: number): PacksOfArcs | null {
  const { terms, floor, solver } = packing;
  const { keptKg, weightKg, highKg, haPerKg } = terms;
  const builder = new LinearModelBuilder();
  const boundRow = rows.map(({ leastKg, mostKg }, r) => {
    const isOpen = floor.held[r] === 0 && (weightKg[r] as number) > 0;
    const fair = share * (weightKg[r] as number) * (1 - SHARE_SLACK);
    const least = isOpen ? Math.max(leastKg, fair) : leastKg;
    return builder.addRow(Math.min(mostKg, least) - (keptKg[r] as number), mostKg - (keptKg[r] as number));
  });
  const servedRow = rows.map(() => builder.addRow(0, Number.POSITIVE_INFINITY));
  const shortRow = rows.map(({ shareKg }, r) =>
    builder.addRow(shareKg - (keptKg[r] as number), Number.POSITIVE_INFINITY),
  );
  const whole = addPacks(
    packing,
    builder,
    [boundRow, servedRow, shortRow],
    (r, kg, minutes) => -TINY * (haPerKg[r] as number) * kg * (1 + minutes / 1000),
  );
  rows.forEach((_, r) => {
    const ha = haPerKg[r] as number;
    builder.addEntry(servedRow[r] as number, -1);
    builder.closeColumn(ha, 0, Math.max(0, (highKg[r] as number) - (keptKg[r] as number)));
    builder.addEntry(shortRow[r] as number, 1);
    builder.closeColumn(-SMALL * ha, 0, Number.POSITIVE_INFINITY);
  });
  return readPacks(packing, solver, builder, whole);
}

interface RowBound {
  /** By rounding, with what was promised. */
  readonly givenKg: number;
  /** What decisions hold; else what rounding guarantees: its share less one largest pack of each stock that it draws on. */
  readonly leastKg: number;
  readonly mostKg: number;
  /** Before packs are made whole. */
  readonly shareKg: number;
}

function boundRows({ terms, floor, arcKg, sizes, rounded }: Packing): RowBound[] {
  const { pool, keptKg, highKg, lowKg } = terms;
  return pool.rows.map((_, r) => {
    const arcs = Array.from(pool.arcRow.keys()).filter((a) => pool.arcRow[a] === r);
    let [givenKg, shareKg, largestKg] = [keptKg[r] as number, keptKg[r] as number, 0];
    for (const a of arcs) {
      const own = sizes[pool.arcGroup[a] as number] as readonly PackSize[];
      own.forEach(({ kg }, s) => {
        givenKg += kg * ((rounded[a] as Int32Array)[s] as number);
      });
      shareKg += arcKg[a] as number;
      if ((arcKg[a] as number) > NOISE_KG) largestKg += own[0]?.kg ?? 0;
    }
    const isHeld = floor.held[r] === 1 || (lowKg[r] as number) > (keptKg[r] as number);
    return {
      givenKg,
      leastKg: isHeld ? givenKg : Math.max(keptKg[r] as number, Math.min(givenKg, shareKg - largestKg)),
      mostKg: Math.max(
        givenKg,
        mostAllowed(pool, sizes, arcs, Math.min(shareKg, highKg[r] as number)) - WHOLE_SLACK_KG,
      ),
      shareKg,
    };
  });
}

/** The largest smallest share that whole packs allow; null where the solver does not settle it. */
function bestWholeShare(packing: Packing, rows: readonly RowBound[]): number | null {
  const { terms, floor, solver } = packing;
  const builder = new LinearModelBuilder();
  const boundRow = rows.map(({ leastKg, mostKg }, r) =>
    builder.addRow(Math.min(mostKg, leastKg) - (terms.keptKg[r] as number), mostKg - (terms.keptKg[r] as number)),
  );
  const shareRow = rows.map((_, r) =>
    floor.held[r] === 0 && (terms.weightKg[r] as number) > 0
      ? builder.addRow(-(terms.keptKg[r] as number), Number.POSITIVE_INFINITY)
      : -1,
  );
  const whole = addPacks(packing, builder, [boundRow, shareRow], () => 0);
  shareRow.forEach((row, r) => {
    if (row >= 0) builder.addEntry(row, -(terms.weightKg[r] as number));
  });
  builder.closeColumn(1, 0, 1);
  const model = builder.build(true);
  const answer = solver.solve({
    ...model,
    whole: Uint8Array.from({ length: model.columns }, (_, c) => (c < whole ? 1 : 0)),
  });
  return answer.status === 'optimal' ? Math.max(0, answer.columnValues[whole] as number) : null;
}

/** A whole column for each arc and size, with the stock's rows. @returns how many */
function addPacks(
  { terms: { pool }, sizes }: Packing,
  builder: LinearModelBuilder,
  rowsOf: readonly (readonly number[])[],
  costOf: (r: number, kg: number, minutes: number) => number,
): number {
  const stockRow = sizes.map((own) => own.map(({ packs }) => builder.addRow(Number.NEGATIVE_INFINITY, packs)));
  let columns = 0;
  pool.arcRow.forEach((r, a) => {
    const g = pool.arcGroup[a] as number;
    (sizes[g] as readonly PackSize[]).forEach(({ kg, packs }, s) => {
      builder.addEntry(stockRow[g]?.[s] as number, 1);
      for (const rows of rowsOf) if ((rows[r] as number) >= 0) builder.addEntry(rows[r] as number, kg);
      builder.closeColumn(costOf(r, kg, pool.arcMinutes[a] as number), 0, packs);
      columns++;
    });
  });
  return columns;
}

function readPacks(
  { terms: { pool }, sizes }: Packing,
  solver: LinearSolver,
  builder: LinearModelBuilder,
  whole: number,
): PacksOfArcs | null {
  const model = builder.build(true);
  const answer = solver.solve({
    ...model,
    whole: Uint8Array.from({ length: model.columns }, (_, c) => (c < whole ? 1 : 0)),
  });
  if (answer.status !== 'optimal') return null;
  let column = 0;
  return Array.from(pool.arcGroup, (g) =>
    Int32Array.from(sizes[g] as readonly PackSize[], () => Math.round(answer.columnValues[column++] as number)),
  );
}
