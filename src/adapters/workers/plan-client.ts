import { Cancelled } from './cancelled.ts';
import type {
  CallName,
  FromWorker,
  OpenedScenario,
  PlannedSeason,
  PlanningProgress,
  PlanOrder,
  Question,
  ToWorker,
  WorkerCalls,
} from './worker-messages.ts';

/** What the page asks of planning. Every call may be rejected; `Cancelled` where it was cancelled. */
export interface PlanClient {
  open(files: WorkerCalls['open']['ask']): Promise<OpenedScenario>;
  plan(order: PlanOrder, tell: (progress: PlanningProgress) => void): Promise<PlannedSeason>;
  ask<Name extends Question>(name: Name, ask: WorkerCalls[Name]['ask']): Promise<WorkerCalls[Name]['answer']>;
  /** Ends what is running. The scenario stays open. */
  cancel(): void;
}

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
  readonly tell: (progress: PlanningProgress) => void;
}

/** The part of `Worker` that is used, so that tests can stand in for it. */
export interface PlanWorker {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

const startWorker = (): PlanWorker => new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });

/**
 * Talks to the plan worker. Planning is synchronous in there, so cancelling ends the worker; the next call starts another
 * and opens the same files in it first.
 */
export function planClient(start: () => PlanWorker = startWorker): PlanClient {
  const waiting = new Map<number, Waiting>();
  let worker: PlanWorker | null = null;
  let lastId = 0;
  let opened: WorkerCalls['open']['ask'] | null = null;

  function stop(error: Error): void {
    worker?.terminate();
    worker = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  }

  function listen(event: MessageEvent<FromWorker>): void {
    const message = event.data;
    const call = waiting.get(message.id);
    if (!call) return;
    if (message.kind === 'progress') {
      call.tell(message.progress);
      return;
    }
    waiting.delete(message.id);
    if (message.kind === 'failed') call.reject(new Error(message.message));
    else call.resolve(message.answer as never);
  }

  function post<Name extends CallName>(
    to: PlanWorker,
    name: Name,
    ask: WorkerCalls[Name]['ask'],
    tell: (progress: PlanningProgress) => void = () => {},
  ): Promise<WorkerCalls[Name]['answer']> {
    lastId += 1;
    const id = lastId;
    return new Promise((resolve, reject) => {
      waiting.set(id, { resolve, reject, tell });
      to.postMessage({ call: name, id, ask } as ToWorker);
    });
  }

  /** The running worker, or a new one with the files opened in it. */
  async function ready(): Promise<PlanWorker> {
    if (worker) return worker;
    const started = start();
    started.onmessage = listen;
    started.onerror = (event) => stop(new Error(event.message || 'the plan worker could not be started'));
    worker = started;
    if (opened) await post(started, 'open', opened);
    return started;
  }

  return {
    async open(files) {
      if (waiting.size > 0) stop(new Cancelled());
      opened = null;
      const to = await ready();
      const answer = await post(to, 'open', files);
      opened = files;
      return answer;
    },
    plan: async (order, tell) => post(await ready(), 'plan', order, tell),
    ask: async (name, ask) => post(await ready(), name, ask),
    cancel: () => stop(new Cancelled()),
  };
}
