import { planClient } from '../../../src/adapters/workers/plan-client.ts';

/** Plans the files sent, in a worker, and gives the text of the plan. */
async function planInWorker(files: readonly (readonly [string, string])[], iterations: number): Promise<string> {
  const client = planClient();
  const bytes = files.map(([name, base64]) => [name, Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))] as const);
  const { decisions } = await client.open({ files: new Map(bytes), faults: [] });
  const { plan } = await client.plan({ decisions, seed: 1, iterations }, () => {});
  return JSON.stringify(plan);
}

declare global {
  interface Window {
    planInWorker: typeof planInWorker;
  }
}

window.planInWorker = planInWorker;
