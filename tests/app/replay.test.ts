import { describe, expect, it } from 'vitest';
import { Cancelled } from '../../src/adapters/workers/cancelled.ts';
import { playInWorkers } from '../../src/adapters/workers/play-in-workers.ts';
import { type FromPlayWorker, type PlayWorker, playPieces } from '../../src/adapters/workers/play-messages.ts';
import type { ReplayAnswer } from '../../src/adapters/workers/worker-messages.ts';
import { createSeasonStore } from '../../src/app/state/season-store.ts';
import { memory, plannerAtHand, tinyFiles } from './planner-at-hand.ts';

const client = plannerAtHand();
const store = createSeasonStore(client, memory());
await store.getState().openFiles({ name: 'tiny', files: tinyFiles(), faults: [], whole: true });
const first = store.getState().plan;
const replay = (await store.getState().askReplay(null)) as ReplayAnswer;

/** Play workers without threads: what is posted is answered in a later turn, after so many turns. */
function workersAtHand(turns: (worker: number) => number) {
  let [started, ended] = [0, 0];
  const start = (): PlayWorker => {
    const number = started++;
    let told: (message: FromPlayWorker) => void = () => {};
    let failed: (error: Error) => void = () => {};
    let isOver = false;
    const work = playPieces((message) => told(message));
    return {
      async post(message) {
        for (let turn = 0; turn < turns(number); turn++) await new Promise((resolve) => setTimeout(resolve));
        try {
          if (!isOver) work(message);
        } catch (error) {
          failed(error as Error);
        }
      },
      listen(onPlayed, onFailed) {
        told = onPlayed;
        failed = onFailed;
      },
      end() {
        isOver = true;
        ended++;
      },
    };
  };
  return { start, counts: () => ({ started, ended }) };
}

describe('the plan in past seasons, asked for by the page', () => {
  it('gives what the plan records of each', () => {
    expect(replay.printed.seasons.map(({ reachedHa }) => reachedHa)).toEqual(first?.outcomes.seasons.reachedHa);
    expect(replay.released.seasons.map(({ year }) => year)).toEqual(replay.printed.seasons.map(({ year }) => year));
    expect(replay.other).toBeNull();
  });

  it('stands beside the plan before a decision, played under the decisions of its own', async () => {
    expect(store.getState().planBefore).toBeNull();
    store.getState().decide({ kind: 'vehicle-away', vehicleId: 'V1', from: '2026-11-16', to: '2026-12-12' });
    await store.getState().replan();
    const { planBefore } = store.getState();
    expect(planBefore).toEqual({ plan: first, decisions: [] });
    const both = await store.getState().askReplay(planBefore);
    expect(both?.other).toEqual(replay.printed);
  });

  it('stands beside no plan that does not hold, whatever it is', async () => {
    const decisions = store.getState().decisions;
    for (const plan of [{}, null, 'plan', { ...first, outcomes: null }])
      expect((await store.getState().askReplay({ plan, decisions }))?.other).toBeNull();
  });
});

describe('long runs in workers', () => {
  const order = { kind: 'unknowns', ask: { outcomes: ['reachedHa', 'nitrogenKg'], rows: 64, seed: 1 } } as const;

  it('answer alike with one worker and with five that come free in another order, and end them all', async () => {
    const [one, five] = [workersAtHand(() => 1), workersAtHand((worker) => 5 - worker)];
    const shares: number[] = [];
    const alone = await playInWorkers(replay.prepared, order, {
      start: one.start,
      workers: 1,
      progress: (share) => shares.push(share),
    });
    const together = await playInWorkers(replay.prepared, order, { start: five.start, workers: 5 });
    expect(JSON.stringify(together)).toBe(JSON.stringify(alone));
    expect(five.counts()).toEqual({ started: 5, ended: 5 });
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('are called off at once, and end their workers', async () => {
    const abort = new AbortController();
    const { start, counts } = workersAtHand(() => 3);
    const run = playInWorkers(replay.prepared, order, {
      start,
      workers: 2,
      signal: abort.signal,
      progress: () => abort.abort(),
    });
    await expect(run).rejects.toBeInstanceOf(Cancelled);
    expect(counts()).toEqual({ started: 2, ended: 2 });
  });

  it('fail with what a worker failed with, and start none where there is nothing to play', async () => {
    const { start, counts } = workersAtHand(() => 1);
    const broken = (): PlayWorker => ({
      post: () => {},
      listen: (_, failed) => failed(new Error('out of memory')),
      end: () => {},
    });
    await expect(playInWorkers(replay.prepared, order, { start: broken, workers: 1 })).rejects.toThrow('out of memory');
    const nothing = { ...order, ask: { ...order.ask, rows: 0 } };
    expect(await playInWorkers(replay.prepared, nothing, { start, workers: 2 })).toBeNull();
    expect(counts().started).toBe(0);
  });
});
