import type { FromPlayWorker, PlayWorker } from './play-messages.ts';

export function startPagePlayWorker(): PlayWorker {
  const worker = new Worker(new URL('./page-play-worker.ts', import.meta.url), { type: 'module' });
  return {
    post: (message) => worker.postMessage(message),
    listen: (played, failed) => {
      worker.onmessage = (event: MessageEvent<FromPlayWorker>) => played(event.data);
      worker.onerror = (event) => failed(new Error(event.message || 'a play worker could not be started'));
    },
    end: () => worker.terminate(),
  };
}

/** As many workers as the machine has processors beside the page's own, four at most. */
export const pageWorkers = (): number => Math.max(1, Math.min(4, navigator.hardwareConcurrency - 1));
