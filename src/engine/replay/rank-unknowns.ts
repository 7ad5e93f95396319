import { RandomStream } from '../numerics/random-stream.ts';
import { type VarianceShare, varianceShares } from '../numerics/variance-sensitivity.ts';
import {
  type DrawGroup,
  drawGroups,
  drawParameters,
  makePlayResult,
  type PlayTotal,
  type PreparedPlay,
  playSeason,
} from '../pipeline.ts';
import type { LongRun } from './long-run.ts';

export type Unknown = DrawGroup | 'season';

export interface RankedUnknown extends VarianceShare {
  readonly unknown: Unknown;
}

/** Rows of each of the two samples that are compared, their seed, and what is looked at. */
export interface RankAsk {
  readonly outcomes: readonly PlayTotal[];
  readonly rows: number;
  readonly seed: number;
}

/** Largest total first, per outcome. */
export type RankedUnknowns = Readonly<Partial<Record<PlayTotal, readonly RankedUnknown[]>>>;

/**
 * Which unknowns make an outcome spread: first-order and total shares of its variance (Saltelli et al. 2010) for each group of
 * the draw and for the season, of which every past one is as likely. Takes rows * (groups + 3) plays, a piece for each sample.
 *
 * @returns a run that answers null where there is nothing to play
 */
export function rankRun(prepared: PreparedPlay, { outcomes, rows, seed }: RankAsk): LongRun<RankedUnknowns | null> {
  const groups = Object.entries(drawGroups(prepared.shape)) as [DrawGroup, readonly number[]][];
  const names: Unknown[] = [...groups.map(([name]) => name), 'season'];
  const isEmpty = prepared.members === 0 || rows === 0;
  let drawn: readonly [Row[], Row[]] | null = null;
  const rowOf = (piece: number, i: number): Row => {
    drawn ??= [drawRows(prepared, rows, seed), drawRows(prepared, rows, seed + 1)];
    const [a, b] = [drawn[0][i] as Row, drawn[1][i] as Row];
    if (piece < 2) return piece === 0 ? a : b;
    const group = groups[piece - 2];
    return group ? takeFrom(a, b, group[1]) : { draw: a.draw, member: b.member };
  };
  return {
    pieces: isEmpty ? 0 : names.length + 2,
    play: (piece) => {
      const columns = new Float64Array(outcomes.length * rows);
      const result = makePlayResult(prepared);
      for (let i = 0; i < rows; i++) {
        const { draw, member } = rowOf(piece, i);
        playSeason(prepared, member, draw, result);
        for (let o = 0; o < outcomes.length; o++) columns[o * rows + i] = result[outcomes[o] as PlayTotal];
      }
      return columns;
    },
    gather: (played) => {
      if (isEmpty) return null;
      const ranked = outcomes.map((outcome, o) => {
        const [a, b, ...mixed] = played.map((columns) => columns.subarray(o * rows, (o + 1) * rows));
        return [outcome, rank(varianceShares(a as Float64Array, b as Float64Array, mixed), names)];
      });
      return Object.fromEntries(ranked) as RankedUnknowns;
    },
  };
}

function rank(shares: readonly VarianceShare[], names: readonly Unknown[]): RankedUnknown[] {
  const ranked = shares.map((share, i) => ({ unknown: names[i] as Unknown, ...share }));
  return ranked.sort((x, y) => y.total - x.total || (x.unknown < y.unknown ? -1 : 1));
}

interface Row {
  readonly draw: Float64Array;
  readonly member: number;
}

function drawRows({ shape, members }: PreparedPlay, rows: number, seed: number): Row[] {
  const stream = new RandomStream(seed + 7919);
  return drawParameters(rows, shape, seed).map((draw) => ({ draw, member: stream.below(members) }));
}

function takeFrom(a: Row, b: Row, places: readonly number[]): Row {
  const draw = Float64Array.from(a.draw);
  for (const place of places) draw[place] = b.draw[place] as number;
  return { draw, member: a.member };
}
