import type { OpenedScenario } from '../../adapters/workers/worker-messages.ts';
import type { Decision, ReadFault } from '../../engine/index.ts';
import { addEntries } from '../../presentation/records/handover-entry.ts';
import { HANDOVERS } from './days-closed.ts';
import type { KeptState } from './kept-state.ts';
import type { Files, SeasonState, SeasonStore } from './season-state.ts';

type Read = (
  name: string,
  files: Files,
  faults: readonly ReadFault[],
  decisions?: readonly Decision[],
) => Promise<OpenedScenario | null>;

/** The day's records: entered one by one, made part of the season when the day is closed. The past is only ever added to. */
export function dayRecords(
  set: SeasonStore['setState'],
  get: SeasonStore['getState'],
  kept: KeptState,
  read: Read,
): Pick<SeasonState, 'enter' | 'takeOut' | 'closeDay'> {
  function keep(): void {
    const { openedSha256, entries, events, files } = get();
    const bytes = files.get(HANDOVERS);
    const handovers = bytes ? new TextDecoder().decode(bytes) : null;
    if (openedSha256 !== null) kept.keepRecords(openedSha256, { handovers, entries, events });
  }
  return {
    enter({ entries = [], events = [] }) {
      set({ entries: [...get().entries, ...entries], events: [...get().events, ...events] });
      keep();
    },

    takeOut(what, index) {
      const without = <T>(list: readonly T[]) => list.filter((_, at) => at !== index);
      set(what === 'entries' ? { entries: without(get().entries) } : { events: without(get().events) });
      keep();
    },

    async closeDay(date) {
      const { name, files, faults, decisions, entries, events, planning } = get();
      if (planning) return;
      const bytes = files.get(HANDOVERS);
      const text = entries.length > 0 ? addEntries(bytes ? new TextDecoder().decode(bytes) : null, entries) : null;
      const now = text === null ? files : new Map([...files, [HANDOVERS, new TextEncoder().encode(text)]]);
      const decided: readonly Decision[] = [...decisions, ...events, { kind: 'day-closed', date }];
      const opened = await read(name ?? '', now, faults, decided);
      if (opened === null) return;
      set({ decisions: decided, undone: [], entries: [], events: [] });
      keep();
      kept.keepDecisions(opened.sha256, decided);
      await get().replanDays();
    },
  };
}
