import { describe, expect, it } from 'vitest';
import { Cancelled } from '../../src/adapters/workers/cancelled.ts';
import { type PlanWorker, planClient } from '../../src/adapters/workers/plan-client.ts';
import type { FromWorker, ToWorker } from '../../src/adapters/workers/worker-messages.ts';

/** A worker that answers when it is told to. */
class WorkerAtHand implements PlanWorker {
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  readonly asked: ToWorker[] = [];
  ended = false;
  postMessage(message: ToWorker): void {
    this.asked.push(message);
    if (message.call === 'open') this.say({ kind: 'answer', id: message.id, answer: {} as never });
  }
  terminate(): void {
    this.ended = true;
  }
  say(message: FromWorker): void {
    queueMicrotask(() => this.onmessage?.({ data: message } as MessageEvent<FromWorker>));
  }
}

const FILES = { files: new Map(), faults: [] };
const ORDER = { decisions: [], seed: 1, iterations: 1 };

function clientAtHand() {
  const workers: WorkerAtHand[] = [];
  const client = planClient(() => {
    const worker = new WorkerAtHand();
    workers.push(worker);
    return worker;
  });
  return { client, workers };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('the client of the plan worker', () => {
  it('starts no worker before it is asked', () => {
    expect(clientAtHand().workers).toEqual([]);
  });

  it('hands on progress and the answer of its own call', async () => {
    const { client, workers } = clientAtHand();
    await client.open(FILES);
    const told: number[] = [];
    const planned = client.plan(ORDER, ({ share }) => told.push(share));
    await turn();
    const id = workers[0]?.asked.at(-1)?.id ?? -1;
    workers[0]?.say({ kind: 'progress', id, progress: { stage: '4-needs', share: 0.2, best: null } });
    workers[0]?.say({ kind: 'answer', id: 999, answer: {} as never });
    workers[0]?.say({ kind: 'answer', id, answer: { plan: 'the plan' } as never });
    expect(await planned).toEqual({ plan: 'the plan' });
    expect(told).toEqual([0.2]);
  });

  it('ends the worker to cancel, and opens the same files in the next one first', async () => {
    const { client, workers } = clientAtHand();
    await client.open(FILES);
    const planned = client.plan(ORDER, () => {});
    await turn();
    client.cancel();
    await expect(planned).rejects.toBeInstanceOf(Cancelled);
    expect(workers[0]?.ended).toBe(true);
    void client.plan(ORDER, () => {});
    await turn();
    expect(workers).toHaveLength(2);
    expect(workers[1]?.asked.map(({ call }) => call)).toEqual(['open', 'plan']);
  });

  it('rejects with the words of a worker that failed or could not start', async () => {
    const { client, workers } = clientAtHand();
    await client.open(FILES);
    const failed = client.plan(ORDER, () => {});
    await turn();
    workers[0]?.say({ kind: 'failed', id: workers[0].asked.at(-1)?.id ?? -1, message: 'out of memory' });
    await expect(failed).rejects.toThrow('out of memory');
    const lost = client.plan(ORDER, () => {});
    await turn();
    workers[0]?.onerror?.({ message: 'no such file' } as ErrorEvent);
    await expect(lost).rejects.toThrow('no such file');
  });
});
