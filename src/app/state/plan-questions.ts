import type { StoreApi } from 'zustand/vanilla';
import type { PlanClient } from '../../adapters/workers/plan-client.ts';
import { SEARCH } from './search-settings.ts';
import type { SeasonState } from './season-store.ts';

type Store = StoreApi<SeasonState>;
type Questions = Pick<SeasonState, 'askStock' | 'askMove' | 'askTrip' | 'weighDays'>;

/** Questions about the plan that change nothing in it. None is asked while a plan is being made. */
export function planQuestions(
  client: PlanClient,
  set: Store['setState'],
  get: Store['getState'],
  fail: (error: unknown) => void,
): Questions {
  return {
    async askStock(changes) {
      const { decisions, planning } = get();
      if (planning) return null;
      try {
        return (await client.ask('stock', { decisions, changes })).difference;
      } catch (error) {
        fail(error);
        return null;
      }
    },

    async askMove(asked) {
      if (get().planning) return null;
      try {
        return (await withPlan(client, get, async () => (await client.ask('move', asked)).priced)) ?? null;
      } catch (error) {
        fail(error);
        return null;
      }
    },

    async askTrip(trip) {
      const { plannedFrom, files, planning } = get();
      if (planning || plannedFrom?.files !== files) return null;
      try {
        return (await client.ask('tripAtHour', { decisions: plannedFrom.decisions, trip })).trip;
      } catch (error) {
        fail(error);
        return null;
      }
    },

    async weighDays() {
      const { plan, plannedFrom, files, planning, calendar } = get();
      if (!plan || planning || plannedFrom?.files !== files || calendar?.of === plan) return;
      set({ calendar: { of: plan, worth: calendar?.worth ?? null } });
      try {
        const { calendar: worth } = await client.ask('calendar', { decisions: plannedFrom.decisions, trip: {} });
        if (get().plan === plan) set({ calendar: { of: plan, worth } });
      } catch (error) {
        fail(error);
      }
    },
  };
}

/** Asks what only a worker with a plan of its own can answer; one that has none makes the present plan first. */
async function withPlan<T>(
  client: PlanClient,
  get: Store['getState'],
  ask: () => Promise<T | null>,
): Promise<T | null> {
  const answer = await ask();
  const { plannedFrom, files } = get();
  if (answer !== null || plannedFrom?.files !== files) return answer;
  await client.plan({ decisions: plannedFrom.decisions, ...SEARCH }, () => {});
  return ask();
}
