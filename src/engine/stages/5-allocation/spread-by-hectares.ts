import type { LinearSolver } from '../../numerics/linear-solver.ts';
import { LinearModelBuilder } from './linear-model-builder.ts';
import { addArcs, boundsLeft, openUnits, SHARE_SLACK } from './pool-model.ts';
import type { ShareTerms } from './share-terms.ts';

/** Room below the proven share where the solver finds no optimum with the usual slack. */
const WIDER_SLACK = 1e-6;

/** The objective of the second step is scaled so that the smallest term stays well above the solver's tolerance. */
const HECTARE_SCALE = 1000;
const MINUTE_SCALE = 0.1;

/** Least amounts that the first step found, kg with what was promised: by row, and by unit where zones are made equal. */
export interface Floors {
  readonly rowKg: Float64Array;
  readonly unitKg: Float64Array | null;
}

/**
 * Second step, "most hectares": with the floors of the first step held, as many hectares as the rest of the stock allows;
 * among equals the nearer depot serves. The drive counts for less than a ten-thousandth of the hectares.
 *
 * @returns kg per arc; null where the solver gives no optimum
 */
export function spreadByHectares(
  terms: ShareTerms,
  held: Uint8Array,
  floors: Floors,
  solver: LinearSolver,
): Float64Array | null {
  return spreadAbove(terms, held, floors, SHARE_SLACK, solver) ?? spreadAbove(terms, held, floors, WIDER_SLACK, solver);
}

function spreadAbove(
  terms: ShareTerms,
  held: Uint8Array,
  floors: Floors,
  slack: number,
  solver: LinearSolver,
): Float64Array | null {
  const { pool, weightKg, keptKg, haPerKg } = terms;
  const builder = new LinearModelBuilder();
  const least = (kg: number) => kg * (1 - slack);
  const boundRow = weightKg.map((_, r) => {
    const [low, high] = boundsLeft(terms, held, r);
    if (held[r] === 1) return builder.addRow(low, high);
    return builder.addRow(
      Math.min(high, Math.max(low, least(floors.rowKg[r] as number) - (keptKg[r] as number))),
      high,
    );
  });
  const open = openUnits(terms, held);
  const unitRow = open.weightKg.map((weight, u) =>
    floors.unitKg && weight > 0
      ? builder.addRow(least(floors.unitKg[u] as number) - (open.keptKg[u] as number), Number.POSITIVE_INFINITY)
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
