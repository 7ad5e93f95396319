import type { KeptText } from '../../adapters/browser/kept-text.ts';
import type { Decision } from '../../engine/index.ts';
import type { HandoverEntry } from '../../presentation/records/handover-entry.ts';
import type { Language } from '../../presentation/wording/words.ts';

export type Theme = 'light' | 'dark';

/** What this browser remembers between visits: decisions by scenario, theme and language. */
export interface KeptState {
  decisionsFor(scenarioSha256: string): readonly Decision[] | null;
  keepDecisions(scenarioSha256: string, decisions: readonly Decision[]): void;
  /** What was recorded in this browser since files of this hash were opened. */
  recordsFor(openedSha256: string): KeptRecords;
  keepRecords(openedSha256: string, records: KeptRecords): void;
  theme(): Theme | null;
  keepTheme(theme: Theme): void;
  language(): Language | null;
  keepLanguage(language: Language): void;
}

/** Hand-overs of days that are closed, as the text of handovers.csv, and what is entered of the day that is not. */
export interface KeptRecords {
  readonly handovers: string | null;
  readonly entries: readonly HandoverEntry[];
  readonly events: readonly Decision[];
}

export const NO_RECORDS: KeptRecords = { handovers: null, entries: [], events: [] };

export function keptState(kept: KeptText): KeptState {
  const oneOf = <T extends string>(name: string, known: readonly T[]): T | null => {
    const text = kept.read(name);
    return known.find((word) => word === text) ?? null;
  };
  return {
    decisionsFor(sha256) {
      // Whatever stands there goes through intake before it is planned with; only a list is taken at all.
      const list = parsed(kept.read(`decisions:${sha256}`));
      return Array.isArray(list) ? (list as readonly Decision[]) : null;
    },
    keepDecisions: (sha256, decisions) => kept.write(`decisions:${sha256}`, JSON.stringify(decisions)),
    recordsFor(sha256) {
      const told = parsed(kept.read(`records:${sha256}`)) as Partial<KeptRecords> | null;
      return Array.isArray(told?.entries) && Array.isArray(told.events) ? (told as KeptRecords) : NO_RECORDS;
    },
    keepRecords: (sha256, records) => kept.write(`records:${sha256}`, JSON.stringify(records)),
    theme: () => oneOf('theme', ['light', 'dark'] as const),
    keepTheme: (theme) => kept.write('theme', theme),
    language: () => oneOf('language', ['english', 'pseudo'] as const),
    keepLanguage: (language) => kept.write('language', language),
  };
}

function parsed(text: string | null): unknown {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}
