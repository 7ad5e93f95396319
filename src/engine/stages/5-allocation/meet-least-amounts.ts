import type { LinearSolver } from '../../numerics/linear-solver.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { CommodityInput } from './allocate-commodity.ts';
import { NOISE_KG } from './ask.ts';
import { LinearModelBuilder } from './linear-model-builder.ts';
import { addArcs, SHARE_SLACK } from './pool-model.ts';
import type { ShareTerms } from './share-terms.ts';

/** Lowers floors and fixes of decisions, all by the same part, to what the stock can meet, and says so. */
export function meetLeastAmounts(
  terms: ShareTerms,
  { ask, scenario, demand, solver }: CommodityInput,
  problems: Problem[],
) {
  const met = shareOfLeastAmounts(terms, solver);
  if (met === null || met === 1) return met === null ? null : terms;
  const fixed = terms.lowKg.map((low, r) => (terms.held[r] === 1 && low === terms.highKg[r] ? 1 : 0));
  const lowKg = terms.lowKg.map((low, r) => Math.max(terms.keptKg[r] as number, low * met));
  const highKg = terms.highKg.map((high, r) => (fixed[r] === 1 ? (lowKg[r] as number) : high));
  terms.pool.rows.forEach((row, r) => {
    if ((terms.lowKg[r] as number) <= (lowKg[r] as number)) return;
    problems.push(
      problem('E5021', {
        file: 'decisions.json',
        column: 'share',
        facts: {
          community: scenario.communities[demand.community[row] as number]?.id ?? '',
          crop: scenario.crops[demand.crop[row] as number] ?? '',
          commodity: ask.commodity,
          askedKg: Math.round((terms.lowKg[r] as number) * 10) / 10,
          givenKg: Math.round((lowKg[r] as number) * 10) / 10,
        },
      }),
    );
  });
  return { ...terms, lowKg, highKg };
}

/**
 * Part of the least amounts (floors and fixes of decisions) that the stock can meet, 0 to 1; 1 where there are none.
 *
 * @returns null where the solver gives no optimum
 */
function shareOfLeastAmounts(terms: ShareTerms, solver: LinearSolver): number | null {
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
