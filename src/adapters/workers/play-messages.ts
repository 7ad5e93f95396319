import { type LongRun, openRun, type PreparedPlay, type RunOrder } from '../../engine/index.ts';

/** To a play worker: first what is to be played, then one piece after another. */
export type ToPlayWorker =
  | { readonly kind: 'open'; readonly prepared: PreparedPlay; readonly order: RunOrder }
  | { readonly kind: 'play'; readonly piece: number };

export interface FromPlayWorker {
  readonly piece: number;
  readonly played: Float64Array;
}

/** The part of a worker that is used, whether of a page or of the command line. */
export interface PlayWorker {
  post(message: ToPlayWorker): void;
  listen(played: (message: FromPlayWorker) => void, failed: (error: Error) => void): void;
  end(): void;
}

/** What a play worker does with each message, wherever it runs. */
export function playPieces(send: (message: FromPlayWorker, moved: readonly ArrayBuffer[]) => void) {
  let run: LongRun<unknown> | null = null;
  return (message: ToPlayWorker): void => {
    if (message.kind === 'open') {
      run = openRun(message.prepared, message.order);
      return;
    }
    if (run === null) throw new Error('a piece was asked for before anything was opened');
    const played = run.play(message.piece);
    send({ piece: message.piece, played }, [played.buffer as ArrayBuffer]);
  };
}
