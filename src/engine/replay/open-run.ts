import type { PreparedPlay } from '../pipeline.ts';
import type { LongRun } from './long-run.ts';
import { type RankAsk, type RankedUnknowns, rankRun } from './rank-unknowns.ts';
import { type SpreadAsk, type SureSpreads, spreadRun } from './spread-over-draws.ts';

/** The long runs there are: what each is asked with, and what it answers where there is something to play. */
export interface RunKinds {
  readonly spreads: { readonly ask: SpreadAsk; readonly answer: SureSpreads | null };
  readonly unknowns: { readonly ask: RankAsk; readonly answer: RankedUnknowns | null };
}

/** A long run by its name, so that whoever has the prepared play can play pieces of it. */
export type RunOrder<Kind extends keyof RunKinds = keyof RunKinds> = {
  readonly [K in Kind]: { readonly kind: K; readonly ask: RunKinds[K]['ask'] };
}[Kind];

export function openRun<Kind extends keyof RunKinds>(
  prepared: PreparedPlay,
  { kind, ask }: RunOrder<Kind>,
): LongRun<RunKinds[Kind]['answer']> {
  return kind === 'spreads' ? spreadRun(prepared, ask as SpreadAsk) : rankRun(prepared, ask as RankAsk);
}
