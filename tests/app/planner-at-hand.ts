import { fileURLToPath } from 'node:url';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import { Cancelled } from '../../src/adapters/workers/cancelled.ts';
import type { PlanClient } from '../../src/adapters/workers/plan-client.ts';
import { Planner } from '../../src/adapters/workers/planner.ts';
import { keptState } from '../../src/app/state/kept-state.ts';
import { type Files, readFolderFiles } from '../plan-files.ts';

export const tinyFiles = (): Files =>
  readFolderFiles(fileURLToPath(new URL('../../scenarios/tiny-district', import.meta.url)));

/** The real planner without a worker around it; counts what was asked. */
export function plannerAtHand(): PlanClient & { readonly asked: string[] } {
  const planner = new Planner(loadPlanningTools);
  const asked: string[] = [];
  let giveUp: (error: Error) => void = () => {};
  return {
    asked,
    async open(files) {
      asked.push('open');
      return planner.open(files);
    },
    plan(order, tell) {
      asked.push('plan');
      return new Promise((resolve, reject) => {
        giveUp = reject;
        planner.plan(order, tell).then(resolve, reject);
      });
    },
    async ask(name, ask) {
      asked.push(name);
      return planner[name](ask as never) as never;
    },
    cancel: () => giveUp(new Cancelled()),
  };
}

/** A browser's memory for the length of a test. */
export function memory() {
  const texts = new Map<string, string>();
  return keptState({
    read: (name) => texts.get(name) ?? null,
    write: (name, text) => void texts.set(name, text),
    drop: (name) => void texts.delete(name),
  });
}
