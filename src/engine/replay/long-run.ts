/**
 * A long run of plays, cut into pieces that depend on nothing but their number: whoever plays them, wherever and in whatever order,
 * the same pieces gather to the same answer.
 */
export interface LongRun<Answer> {
  readonly pieces: number;
  readonly play: (piece: number) => Float64Array;
  /** @param played what `play` gave of each piece, in their order */
  readonly gather: (played: readonly Float64Array[]) => Answer;
}

/** What a long run is told and asks. */
export interface RunHooks {
  /** Share done, 0 to 1. */
  readonly progress?: (share: number) => void;
  /** Asked before each piece; true ends the run. */
  readonly stop?: () => boolean;
}

/** Plays a run piece by piece where it is called. @returns null where it was stopped */
export function playHere<Answer>({ pieces, play, gather }: LongRun<Answer>, hooks: RunHooks = {}): Answer | null {
  const played: Float64Array[] = [];
  for (let piece = 0; piece < pieces; piece++) {
    if (hooks.stop?.()) return null;
    played.push(play(piece));
    hooks.progress?.((piece + 1) / pieces);
  }
  return gather(played);
}
