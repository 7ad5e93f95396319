import { createStore } from 'zustand/vanilla';
import { Cancelled } from '../../adapters/workers/cancelled.ts';
import type { PlanClient } from '../../adapters/workers/plan-client.ts';
import type { OpenedScenario, PlanAsMade } from '../../adapters/workers/worker-messages.ts';
import type { Decision, DeliveryDifference, Plan, ReadFault, Scenario } from '../../engine/index.ts';
import { stepOf } from './changed-inputs.ts';
import { daysOf, HANDOVERS, movesTheDay } from './days-closed.ts';
import type { KeptState } from './kept-state.ts';
import { planQuestions } from './plan-questions.ts';
import { REPLAN_ITERATIONS, SEARCH } from './search-settings.ts';
import type { Files, Notice, PlannedFrom, SeasonState, SeasonStore } from './season-state.ts';

const NOTHING = {
  name: null,
  opening: false,
  files: new Map(),
  faults: [],
  read: null,
  scenario: null,
  decisions: [],
  undone: [],
  entries: [],
  events: [],
  openedSha256: null,
  plan: null,
  plannedFrom: null,
  planBefore: null,
  planning: null,
  findings: null,
  notice: null,
  changedNeeds: null,
  calendar: null,
  difference: null,
} as const;

/** The season on the page: files, scenario, decisions, plan. All work is done by the client, beside the page. */
export function createSeasonStore(client: PlanClient, kept: KeptState): SeasonStore {
  return createStore<SeasonState>((set, get) => {
    const fail = (error: unknown) => {
      if (error instanceof Cancelled) return;
      const text = error instanceof Error ? error.message : String(error);
      set({ opening: false, planning: null, notice: { kind: 'failed', text } });
    };

    async function read(
      name: string,
      files: Files,
      faults: readonly ReadFault[],
      decisions?: readonly Decision[],
    ): Promise<OpenedScenario | null> {
      set({ opening: true, planning: null, notice: null });
      try {
        const opened = await client.open({ files, faults, ...(decisions ? { decisions } : {}) });
        set({ name, files, faults, read: opened, opening: false });
        return opened;
      } catch (error) {
        fail(error);
        return null;
      }
    }

    /** Takes up what was read, with the records and decisions that this browser kept of it. */
    async function adopt(opened: OpenedScenario): Promise<OpenedScenario> {
      const { handovers, entries, events } = kept.recordsFor(opened.sha256);
      set({ openedSha256: opened.sha256, entries, events });
      let now = opened;
      const again = async (files: Files, decisions?: readonly Decision[]) => {
        const { name, faults } = get();
        now = (await read(name ?? '', files, faults, decisions)) ?? now;
      };
      if (handovers !== null) await again(new Map([...get().files, [HANDOVERS, new TextEncoder().encode(handovers)]]));
      const decisions = kept.decisionsFor(now.sha256) ?? now.decisions;
      if (movesTheDay(decisions)) await again(get().files, decisions);
      set({ ...cleared(), scenario: now.scenario, decisions });
      return now;
    }

    async function check(plan: Plan, decisions: readonly Decision[]): Promise<void> {
      try {
        const { findings } = await client.ask('check', { decisions, plan });
        if (get().plan === plan) set({ findings });
      } catch (error) {
        fail(error);
      }
    }

    function setDecisions(decisions: readonly Decision[], undone: readonly Decision[]): void {
      const { decisions: before, name, files, faults } = get();
      set({ decisions, undone });
      const { read: opened } = get();
      if (opened) kept.keepDecisions(opened.sha256, decisions);
      if (daysOf(before) !== daysOf(decisions)) void read(name ?? '', files, faults, decisions);
      else void weighNeeds();
    }

    /** Asks for the needs at once where a figure they rest on was changed. The last answer asked for counts. */
    async function weighNeeds(): Promise<void> {
      const { decisions, plannedFrom, planning } = get();
      const assumed = (list: readonly Decision[]) => JSON.stringify(list.filter(({ kind }) => kind === 'assume'));
      if (planning || assumed(decisions) === assumed(plannedFrom?.decisions ?? [])) {
        if (get().changedNeeds) set({ changedNeeds: null });
        return;
      }
      try {
        const { needs } = await client.ask('needs', { decisions });
        if (get().decisions === decisions) set({ changedNeeds: needs });
      } catch (error) {
        fail(error);
      }
    }

    /** Takes up a plan that was just made. */
    async function take(
      plan: Plan,
      scenario: Scenario,
      plannedFrom: PlannedFrom,
      difference: DeliveryDifference | null,
    ): Promise<void> {
      set({
        plan,
        scenario,
        plannedFrom,
        difference,
        planBefore: planNow(get(), plannedFrom.files),
        planning: null,
        findings: null,
        notice: null,
        changedNeeds: null,
      });
      await check(plan, plannedFrom.decisions);
    }

    /** Loaded when something is entered: most visitors read a plan. */
    const dayRecords = async () => (await import('./day-records.ts')).dayRecords(set, get, kept, read);

    return {
      ...NOTHING,
      ...planQuestions(client, set, get, fail),

      async openFiles({ name, files, faults, whole }) {
        if (!whole) {
          set({ notice: { kind: 'no-scenario-in', text: name } });
          return;
        }
        const opened = await read(name, files, faults);
        if (opened === null) return;
        const adopted = await adopt(opened);
        if (adopted.problems.every(({ weight }) => weight === 'noted')) await get().replan();
      },

      async openStart(start) {
        if (start === null) {
          set({ opening: false });
          return;
        }
        const { name, files, faults, plan } = start;
        const opened = await read(name, files, faults);
        if (opened === null) return;
        const adopted = await adopt(opened);
        const isMovedOn = adopted !== opened;
        const fits =
          !isMovedOn && plan?.scenarioSha256 === opened.sha256 && plan.decisionsSha256 === opened.decisionsSha256;
        if (plan && fits) {
          set({ plan, plannedFrom: { files, decisions: opened.decisions } });
          await check(plan, opened.decisions);
        } else {
          // Days were closed since that plan was made: it is the one that people know.
          if (plan && isMovedOn) {
            set({ plan, plannedFrom: { files, decisions: opened.decisions } });
            await get().replanDays();
            return;
          }
          if (plan) set({ notice: { kind: 'other-plan' } });
          await get().replan();
        }
      },

      async replaceFiles(mended) {
        const state = get();
        const known = [...mended].filter(
          ([path]) =>
            state.files.has(path) || path === HANDOVERS || path.startsWith('readings/') || isMissing(state, path),
        );
        const strangers = [...mended.keys()].filter((path) => !known.some(([of]) => of === path));
        if (state.name === null || known.length === 0) {
          set({ notice: { kind: 'strangers', text: strangers.join(', ') } });
          return;
        }
        const files = new Map([...state.files, ...known]);
        const faults = state.faults.filter(({ file }) => !mended.has(file));
        const opened = await read(state.name, files, faults, state.decisions);
        if (opened && get().plan === null) set({ scenario: opened.scenario });
        if (strangers.length > 0) set({ notice: { kind: 'strangers', text: strangers.join(', ') } });
      },

      decide(...decisions) {
        setDecisions([...get().decisions, ...decisions], []);
      },

      undo(count) {
        const { decisions, undone } = get();
        const kept = decisions.length - (count ?? lastStep(decisions));
        setDecisions(decisions.slice(0, kept), [...undone, ...decisions.slice(kept).reverse()]);
      },

      redo() {
        const { decisions, undone } = get();
        const kept = undone.length - lastStep(undone);
        setDecisions([...decisions, ...undone.slice(kept).reverse()], undone.slice(0, kept));
      },

      async replan() {
        const { files, decisions, read: opened, planning } = get();
        if (!opened?.scenario || planning) return;
        set({ planning: { stage: '', share: 0, best: null }, notice: keepOtherPlan(get().notice) });
        try {
          const { plan } = await client.plan({ decisions, ...SEARCH }, (progress) => {
            if (get().planning) set({ planning: progress });
          });
          await take(plan, opened.scenario, { files, decisions }, null);
        } catch (error) {
          fail(error);
        }
      },

      cancel() {
        client.cancel();
        set({ planning: null, notice: { kind: 'cancelled' } });
      },

      dismiss() {
        set({ notice: null });
      },

      async replanDays() {
        const { decisions, files, planning, read: opened, plan: told } = get();
        if (!opened?.scenario || planning || told === null) return;
        set({ planning: { stage: '6-delivery', share: 0, best: null } });
        try {
          const answer = await client.ask('replan', { decisions, ...SEARCH, iterations: REPLAN_ITERATIONS, told });
          set({ planning: null });
          if (answer === null) return;
          await take(answer.plan, opened.scenario, { files, decisions }, answer.difference);
        } catch (error) {
          fail(error);
        }
      },

      dismissDifference() {
        set({ difference: null });
      },

      enter: (added) => void dayRecords().then((records) => records.enter(added)),
      takeOut: (what, index) => void dayRecords().then((records) => records.takeOut(what, index)),
      closeDay: async (date) => (await dayRecords()).closeDay(date),
    };
  });
}

/** Whether a file is named by the scenario but was not sent, so that it may be handed in later. */
function isMissing({ read }: SeasonState, path: string): boolean {
  return read?.problems.some(({ code, file }) => code === 'E1100' && file === path) ?? false;
}

/** How many decisions at the end of a list were one step: a cell is fixed for each of its communities, a stop is moved with seed and inoculant. */
function lastStep(decisions: readonly Decision[]): number {
  const last = decisions.at(-1);
  if (!last) return 0;
  const step = stepOf(last);
  const before = decisions.findLastIndex((decision) => stepOf(decision) !== step);
  return step === null ? 1 : decisions.length - 1 - before;
}

/** The plan that is about to be followed by another of the same files. */
function planNow({ plan, plannedFrom }: SeasonState, files: Files): PlanAsMade | null {
  return plan && plannedFrom?.files === files ? { plan, decisions: plannedFrom.decisions } : null;
}

const cleared = () => ({
  difference: null,
  changedNeeds: null,
  calendar: null,
  plan: null,
  plannedFrom: null,
  planBefore: null,
  findings: null,
  undone: [],
});

const keepOtherPlan = (notice: Notice | null): Notice | null => (notice?.kind === 'other-plan' ? notice : null);
