import { type BootstrapInterval, bootstrapQuantile } from '../numerics/bootstrap-quantile.ts';
import { quantile } from '../numerics/quantile.ts';
import { drawParameters, makePlayResult, type PlayTotal, type PreparedPlay, playSeason } from '../pipeline.ts';
import type { Spread } from '../vocabulary/index.ts';

/** What a long run is told and asks. */
export interface RunHooks {
  /** Share done, 0 to 1. */
  readonly progress?: (share: number) => void;
  /** Asked between draws; true ends the run. */
  readonly stop?: () => boolean;
}

export const SPREAD_TOTALS = [
  'reachedHa',
  'farmersReached',
  'nitrogenKg',
  'programmeNitrogenKg',
  'inoculationNitrogenKg',
  'inoculationAtMostKg',
  'netNitrogenKg',
  'grainT',
  'programmeGrainT',
  'inoculationGrainT',
] as const satisfies readonly PlayTotal[];
export type SpreadTotal = (typeof SPREAD_TOTALS)[number];

/** A spread with how far its ends may be off by the number of draws alone: intervals of 95 percent. */
export interface SureSpread extends Spread {
  readonly p10Interval: BootstrapInterval;
  readonly p90Interval: BootstrapInterval;
}

const LEVEL = 0.95;
const RESAMPLES = 400;
/** Samples, each a Latin hypercube of its own, that the draws are taken in: what they differ by shows what stratifying gains. */
const BLOCKS = 40;

/**
 * Every season with every draw of the parameters. The draws come in samples of equal size; these are resampled whole, with all the
 * seasons played with them.
 *
 * @param asked draws wanted, rounded up to whole samples
 *
 * @returns null where it was stopped, or there is nothing to play
 */
export function spreadOverDraws(
  prepared: PreparedPlay,
  asked: number,
  seed: number,
  hooks: RunHooks = {},
): Readonly<Record<SpreadTotal, SureSpread>> | null {
  const { members } = prepared;
  if (members === 0 || asked === 0) return null;
  const sample = drawBlocks(prepared, asked, seed);
  const draws = sample.length;
  const perBlock = (draws / Math.min(BLOCKS, draws)) * members;
  const columns = SPREAD_TOTALS.map(() => new Float64Array(draws * members));
  const result = makePlayResult(prepared);
  for (let d = 0; d < draws; d++) {
    if (hooks.stop?.()) return null;
    if (d % 50 === 0) hooks.progress?.(d / draws);
    for (let member = 0; member < members; member++) {
      playSeason(prepared, member, sample[d] as Float64Array, result);
      for (let t = 0; t < columns.length; t++)
        (columns[t] as Float64Array)[d * members + member] = result[SPREAD_TOTALS[t] as SpreadTotal];
    }
  }
  hooks.progress?.(1);
  return Object.fromEntries(
    SPREAD_TOTALS.map((name, t) => [name, sureSpread(columns[t] as Float64Array, perBlock, seed)]),
  ) as Record<SpreadTotal, SureSpread>;
}

function drawBlocks({ shape }: PreparedPlay, asked: number, seed: number): Float64Array[] {
  const blocks = Math.min(BLOCKS, asked);
  const each = Math.ceil(asked / blocks);
  // Seeds of the stream are scattered by it, so neighbours do not share numbers.
  return Array.from({ length: blocks }, (_, block) => drawParameters(each, shape, seed * BLOCKS + block)).flat();
}

function sureSpread(values: Float64Array, perBlock: number, seed: number): SureSpread {
  const at = (p: number) => quantile(values, p);
  const interval = (p: number) => bootstrapQuantile(values, perBlock, p, LEVEL, RESAMPLES, seed);
  return {
    p10: at(0.1),
    p25: at(0.25),
    p50: at(0.5),
    p75: at(0.75),
    p90: at(0.9),
    p10Interval: interval(0.1),
    p90Interval: interval(0.9),
  };
}
