import runtimeAddress from 'highs/runtime?url';
import { loadGeosOverlay } from '../geometry/geos-overlay.ts';
import { loadHighsSolver } from '../solver/load-highs-solver.ts';
import { Planner } from './planner.ts';
import type { FromWorker, ToWorker } from './worker-messages.ts';

/** Progress is told no more often than a page can draw it. */
const TELL_EVERY_MS = 50;

const planner = new Planner(async () => {
  const [solver, overlay] = await Promise.all([
    loadHighsSolver({ locateFile: () => runtimeAddress }),
    loadGeosOverlay(),
  ]);
  return { solver, overlay };
});

const send = (message: FromWorker, moved: Transferable[] = []) => postMessage(message, { transfer: moved });

async function answer(message: ToWorker): Promise<void> {
  const { id } = message;
  try {
    switch (message.call) {
      case 'open':
        return send({ kind: 'answer', id, answer: planner.open(message.ask) });
      case 'needs': {
        const found = planner.needs(message.ask);
        const columns = Object.values(found.needs ?? {}).map((column: ArrayBufferView) => column.buffer as ArrayBuffer);
        return send({ kind: 'answer', id, answer: found }, columns);
      }
      case 'plan':
        return send({ kind: 'answer', id, answer: await planner.plan(message.ask, tellAbout(id)) });
      default:
        return send({ kind: 'answer', id, answer: await planner[message.call](message.ask as never) });
    }
  } catch (error) {
    send({ kind: 'failed', id, message: error instanceof Error ? error.message : String(error) });
  }
}

function tellAbout(id: number) {
  let last = { stage: '', at: 0 };
  return (progress: Extract<FromWorker, { kind: 'progress' }>['progress']) => {
    const at = performance.now();
    if (progress.stage === last.stage && at - last.at < TELL_EVERY_MS) return;
    last = { stage: progress.stage, at };
    send({ kind: 'progress', id, progress });
  };
}

addEventListener('message', (event: MessageEvent<ToWorker>) => {
  void answer(event.data);
});
