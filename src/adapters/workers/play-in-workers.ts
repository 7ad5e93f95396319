import { openRun, type PreparedPlay, type RunKinds, type RunOrder } from '../../engine/index.ts';
import { Cancelled } from './cancelled.ts';
import type { PlayWorker } from './play-messages.ts';

interface Workforce {
  readonly start: () => PlayWorker;
  /** Most workers at a time. */
  readonly workers: number;
  /** Share done, 0 to 1. */
  readonly progress?: (share: number) => void;
  /** Ends all workers at once. */
  readonly signal?: AbortSignal;
}

/**
 * Plays a long run in workers, each taking the next piece as it comes free. The answer is the same however many there are.
 *
 * @throws Cancelled where the signal came; what a worker failed with
 */
export async function playInWorkers<Kind extends keyof RunKinds>(
  prepared: PreparedPlay,
  order: RunOrder<Kind>,
  { start, workers, progress, signal }: Workforce,
): Promise<RunKinds[Kind]['answer']> {
  const { pieces, gather } = openRun(prepared, order);
  const played = new Array<Float64Array>(pieces);
  const started: PlayWorker[] = [];
  const work = new Promise<void>((resolve, reject) => {
    let [next, done] = [0, 0];
    if (pieces === 0) return resolve();
    if (signal?.aborted) return reject(new Cancelled());
    signal?.addEventListener('abort', () => reject(new Cancelled()), { once: true });
    const giveNext = (worker: PlayWorker) => {
      if (next < pieces) worker.post({ kind: 'play', piece: next++ });
    };
    for (let w = 0; w < Math.min(workers, pieces); w++) {
      const worker = start();
      started.push(worker);
      worker.listen((message) => {
        played[message.piece] = message.played;
        done += 1;
        progress?.(done / pieces);
        if (done === pieces) resolve();
        else giveNext(worker);
      }, reject);
      worker.post({ kind: 'open', prepared, order: order as RunOrder });
      giveNext(worker);
    }
  });
  const endAll = () => {
    for (const worker of started) worker.end();
  };
  await work.finally(endAll);
  return gather(played);
}
