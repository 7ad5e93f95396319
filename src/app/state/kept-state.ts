import type { KeptText } from '../../adapters/browser/kept-text.ts';
import type { Decision } from '../../engine/index.ts';
import type { Language } from '../../presentation/wording/words.ts';

export type Theme = 'light' | 'dark';

/** What this browser remembers between visits: decisions by scenario, theme and language. */
export interface KeptState {
  decisionsFor(scenarioSha256: string): readonly Decision[] | null;
  keepDecisions(scenarioSha256: string, decisions: readonly Decision[]): void;
  theme(): Theme | null;
  keepTheme(theme: Theme): void;
  language(): Language | null;
  keepLanguage(language: Language): void;
}

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
