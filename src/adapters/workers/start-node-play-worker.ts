import { Worker } from 'node:worker_threads';
import type { FromPlayWorker, PlayWorker } from './play-messages.ts';

/** The worker's file is built beside the commands (vite.config.ts). */
const ADDRESS = new URL('./play-worker.js', import.meta.url);

export function startNodePlayWorker(): PlayWorker {
  const worker = new Worker(ADDRESS);
  return {
    post: (message) => worker.postMessage(message),
    listen: (played, failed) => {
      worker.on('message', (message: FromPlayWorker) => played(message));
      worker.on('error', failed);
    },
    end: () => void worker.terminate(),
  };
}
