import { planClient } from '../../../src/adapters/workers/plan-client.ts';
import { playInWorkers } from '../../../src/adapters/workers/play-in-workers.ts';
import { startPagePlayWorker } from '../../../src/adapters/workers/start-page-play-worker.ts';
import type { RunOrder } from '../../../src/engine/index.ts';

/** Plans the files sent, in a worker, and gives the text of the plan. */
async function planInWorker(files: SentFiles, iterations: number): Promise<string> {
  return JSON.stringify((await planSent(files, iterations)).plan);
}

type SentFiles = readonly (readonly [name: string, base64: string])[];

async function planSent(files: SentFiles, iterations: number) {
  const client = planClient();
  const bytes = files.map(([name, base64]) => [name, Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))] as const);
  const { decisions } = await client.open({ files: new Map(bytes), faults: [] });
  const { plan } = await client.plan({ decisions, seed: 1, iterations }, () => {});
  return { client, decisions, plan };
}

/** Plays long runs of a plan of these files in so many workers, and gives the text of their answers. */
async function playInPage(files: SentFiles, orders: readonly RunOrder[], workers: number): Promise<string[]> {
  const { client, decisions, plan } = await planSent(files, 500);
  const replay = await client.ask('replay', { plan, decisions, other: null });
  if (replay === null) return [];
  const runs = orders.map((order) =>
    playInWorkers(replay.prepared, order, { start: startPagePlayWorker, workers }).then((answer) =>
      JSON.stringify(answer),
    ),
  );
  return Promise.all(runs);
}

declare global {
  interface Window {
    planInWorker: typeof planInWorker;
    playInPage: typeof playInPage;
  }
}

window.planInWorker = planInWorker;
window.playInPage = playInPage;
