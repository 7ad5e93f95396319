import type { PlanClient } from '../../adapters/workers/plan-client.ts';
import { SEARCH } from './search-settings.ts';
import type { SeasonState, SeasonStore } from './season-state.ts';

type Questions = Pick<
  SeasonState,
  'askStock' | 'askSmallestChange' | 'askTransfers' | 'askMove' | 'askTrip' | 'weighDays' | 'askReplay'
>;

/** Questions about the plan that change nothing in it. None is asked while a plan is being made. */
export function planQuestions(
  client: PlanClient,
  set: SeasonStore['setState'],
  get: SeasonStore['getState'],
  fail: (error: unknown) => void,
): Questions {
  const asked = async <T>(ask: () => Promise<T | null>): Promise<T | null> => {
    if (get().planning) return null;
    try {
      return await ask();
    } catch (error) {
      fail(error);
      return null;
    }
  };
  return {
    askStock: (changes) =>
      asked(async () => (await client.ask('stock', { decisions: get().decisions, changes })).difference),

    askSmallestChange: (shareRow, commodity) =>
      asked(async () => {
        const { plannedFrom, files } = get();
        if (plannedFrom?.files !== files) return null;
        return (await client.ask('smallestChange', { decisions: plannedFrom.decisions, shareRow, commodity })).change;
      }),

    askTransfers: () => asked(async () => (await client.ask('transfers', { decisions: get().decisions })).ideas),

    askMove: (move) => asked(() => withPlan(client, get, async () => (await client.ask('move', move)).priced)),

    askTrip: (trip) =>
      asked(async () => {
        const { plannedFrom, files } = get();
        if (plannedFrom?.files !== files) return null;
        return (await client.ask('tripAtHour', { decisions: plannedFrom.decisions, trip })).trip;
      }),

    askReplay: (other) =>
      asked(async () => {
        const { plan, plannedFrom, files } = get();
        if (!plan || plannedFrom?.files !== files) return null;
        return client.ask('replay', { plan, decisions: plannedFrom.decisions, other });
      }),

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

/**
 * Asks what only a worker with a plan of its own can answer. One that has none lays the present plan out as it stands, and makes it again
 * from the start only where it does not come out the same.
 */
async function withPlan<T>(
  client: PlanClient,
  get: SeasonStore['getState'],
  ask: () => Promise<T | null>,
): Promise<T | null> {
  const answer = await ask();
  const { plan: told, plannedFrom, files } = get();
  if (answer !== null || plannedFrom?.files !== files) return answer;
  if (told) {
    const order = { decisions: plannedFrom.decisions, ...SEARCH, iterations: 0, told };
    if ((await client.ask('replan', order))?.difference.changes.length === 0) return ask();
  }
  await client.plan({ decisions: plannedFrom.decisions, ...SEARCH }, () => {});
  return ask();
}
