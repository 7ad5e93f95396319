import { type BootstrapInterval, bootstrapQuantile } from '../numerics/bootstrap-quantile.ts';
import { quantile } from '../numerics/quantile.ts';
import { drawEvenly, makePlayResult, type PlayTotal, type PreparedPlay, playSeason } from '../pipeline.ts';
import type { Spread } from '../vocabulary/index.ts';
import type { LongRun } from './long-run.ts';

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
  'phosphorusNitrogenKg',
  'phosphorusGrainT',
] as const satisfies readonly PlayTotal[];
export type SpreadTotal = (typeof SPREAD_TOTALS)[number];

/** A spread with how far its ends may be off by the number of draws alone: intervals of 95 percent. */
export interface SureSpread extends Spread {
  readonly p10Interval: BootstrapInterval;
  readonly p90Interval: BootstrapInterval;
}

const LEVEL = 0.95;
const RESAMPLES = 400;
/** The draws are taken in at least so many samples, each even in itself: what these differ by shows what evenness gains. */
const SAMPLES = 30;
/** Between the seeds of samples, so that those of neighbouring seeds do not share them. */
const SEED_STEP = 1_000_003;

/** Differences that may be nought or less: how sure their ends are is told against the width of their own range. */
export const MAY_BE_NOUGHT: readonly SpreadTotal[] = [
  'netNitrogenKg',
  'inoculationNitrogenKg',
  'inoculationGrainT',
  'phosphorusNitrogenKg',
  'phosphorusGrainT',
];

/**
 * How far the less sure end of a range may be off by the number of draws alone: half the width of its interval over the end
 * itself, or over the range from P10 to P90 where the figure may be nought.
 */
export function halfWidthShare(name: SpreadTotal, { p10, p90, p10Interval, p90Interval }: SureSpread): number {
  const half = ({ low, high }: BootstrapInterval) => (high - low) / 2;
  const share = (interval: BootstrapInterval, of: number) => (half(interval) > 0 ? half(interval) / of : 0);
  const range = MAY_BE_NOUGHT.includes(name) ? p90 - p10 : null;
  return Math.max(share(p10Interval, range ?? Math.abs(p10)), share(p90Interval, range ?? Math.abs(p90)));
}

/** How many draws are wanted, rounded up to whole samples, and the seed of all of them. */
export interface SpreadAsk {
  readonly draws: number;
  readonly seed: number;
}

export type SureSpreads = Readonly<Record<SpreadTotal, SureSpread>>;

/**
 * Every season with every draw of the parameters. The draws come in samples of equal size, each a piece of the run; the samples are
 * resampled whole, with all the seasons played with them.
 *
 * @returns a run that answers null where there is nothing to play
 */
export function spreadRun(prepared: PreparedPlay, { draws, seed }: SpreadAsk): LongRun<SureSpreads | null> {
  const { members, shape } = prepared;
  const side = sampleSide(draws);
  const each = side * side;
  const samples = members === 0 ? 0 : Math.ceil(draws / each);
  return {
    pieces: samples,
    play: (sample) => playSample(prepared, drawEvenly(side, shape, seed + SEED_STEP * sample)),
    gather: (played) => {
      if (samples === 0) return null;
      const spreads = SPREAD_TOTALS.map((name, t) => [name, sureSpread(joinColumn(played, t), each * members, seed)]);
      return Object.fromEntries(spreads) as SureSpreads;
    },
  };
}

/** The largest prime number, or 1, whose square goes often enough into the draws. */
function sampleSide(draws: number): number {
  let largest = 1;
  for (let side = 2; side * side * SAMPLES <= draws; side++) if (isPrime(side)) largest = side;
  return largest;
}

function isPrime(n: number): boolean {
  for (let d = 2; d * d <= n; d++) if (n % d === 0) return false;
  return true;
}

/** @returns each total's column in turn, [total][draw * members + member] */
function playSample(prepared: PreparedPlay, sample: readonly Float64Array[]): Float64Array {
  const { members } = prepared;
  const plays = sample.length * members;
  const columns = new Float64Array(SPREAD_TOTALS.length * plays);
  const result = makePlayResult(prepared);
  sample.forEach((draw, d) => {
    for (let member = 0; member < members; member++) {
      playSeason(prepared, member, draw, result);
      for (let t = 0; t < SPREAD_TOTALS.length; t++)
        columns[t * plays + d * members + member] = result[SPREAD_TOTALS[t] as SpreadTotal];
    }
  });
  return columns;
}

/** One total over all samples, in their order. */
function joinColumn(played: readonly Float64Array[], total: number): Float64Array {
  const plays = (played[0]?.length ?? 0) / SPREAD_TOTALS.length;
  const column = new Float64Array(played.length * plays);
  played.forEach((columns, s) => {
    column.set(columns.subarray(total * plays, (total + 1) * plays), s * plays);
  });
  return column;
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
