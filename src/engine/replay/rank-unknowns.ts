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
import type { RunHooks } from './spread-over-draws.ts';

export type Unknown = DrawGroup | 'season';

export interface RankedUnknown extends VarianceShare {
  readonly unknown: Unknown;
}

/**
 * Which unknowns make an outcome spread: first-order and total shares of its variance (Saltelli et al. 2010) for each group of
 * the draw and for the season, of which every past one is as likely. Takes rows * (groups + 3) plays.
 *
 * @returns largest total first; null where stopped or there is nothing to play
 */
export function rankUnknowns<T extends PlayTotal>(
  prepared: PreparedPlay,
  outcomes: readonly T[],
  rows: number,
  seed: number,
  hooks: RunHooks = {},
): Readonly<Record<T, readonly RankedUnknown[]>> | null {
  if (prepared.members === 0 || rows === 0) return null;
  const groups = Object.entries(drawGroups(prepared.shape)) as [DrawGroup, readonly number[]][];
  const a = drawRows(prepared, rows, seed);
  const b = drawRows(prepared, rows, seed + 1);
  const result = makePlayResult(prepared);
  const runs = groups.length + 3;
  let run = 0;
  const playAll = (rowOf: (i: number) => Row): Float64Array[] | null => {
    const columns = outcomes.map(() => new Float64Array(rows));
    for (let i = 0; i < rows; i++) {
      if (hooks.stop?.()) return null;
      const { draw, member } = rowOf(i);
      playSeason(prepared, member, draw, result);
      outcomes.forEach((name, o) => {
        (columns[o] as Float64Array)[i] = result[name];
      });
    }
    hooks.progress?.(++run / runs);
    return columns;
  };
  const ofA = playAll((i) => a[i] as Row);
  const ofB = playAll((i) => b[i] as Row);
  const mixed = [
    ...groups.map(([, places]) => playAll((i) => takeFrom(a[i] as Row, b[i] as Row, places))),
    playAll((i) => ({ draw: (a[i] as Row).draw, member: (b[i] as Row).member })),
  ];
  if (!ofA || !ofB || mixed.some((columns) => columns === null)) return null;
  const names: Unknown[] = [...groups.map(([name]) => name), 'season'];
  return Object.fromEntries(
    outcomes.map((outcome, o) => {
      const shares = varianceShares(
        ofA[o] as Float64Array,
        ofB[o] as Float64Array,
        mixed.map((columns) => columns?.[o] as Float64Array),
      );
      const ranked = shares.map((share, i) => ({ unknown: names[i] as Unknown, ...share }));
      return [outcome, ranked.sort((x, y) => y.total - x.total || (x.unknown < y.unknown ? -1 : 1))];
    }),
  ) as Record<T, RankedUnknown[]>;
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
