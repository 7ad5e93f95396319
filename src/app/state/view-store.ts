import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Language } from '../../presentation/wording/words.ts';
import type { KeptState, Theme } from './kept-state.ts';

export const VIEW_NAMES = ['stock', 'days', 'coverage', 'problems', 'handover', 'papers', 'records'] as const;
export type ViewName = (typeof VIEW_NAMES)[number];

/** A figure that was asked how it was made. */
export interface OpenedFigure {
  /** Path of the figure in the plan, such as `needs.seedKg`. */
  readonly path: string;
  readonly title: string;
  /** The figure as the page shows it. */
  readonly shown: string;
}

/** Where the user is: what the address says. Ids, so that a link holds on another day's plan. */
export interface Place {
  readonly view: ViewName;
  readonly zone: string | null;
  readonly community: string | null;
  /** ISO date. */
  readonly day: string | null;
  /** Minutes from midnight. */
  readonly hour: number | null;
  /** Which paper, on the view of papers. */
  readonly paper: string | null;
}

export interface ViewState extends Place {
  /** The figure opened last, and those it was reached from. */
  readonly figures: readonly OpenedFigure[];
  readonly theme: Theme;
  readonly language: Language;

  go(place: Partial<Place>): void;
  /** Chooses a zone, or none; a community chosen elsewhere is let go. */
  chooseZone(zone: string | null): void;
  chooseCommunity(community: string | null, zone: string | null): void;
  chooseDay(day: string | null): void;
  chooseHour(hour: number | null): void;
  openFigure(figure: OpenedFigure): void;
  /** One figure back; the last one closes. */
  backFigure(): void;
  closeFigures(): void;
  setTheme(theme: Theme): void;
  setLanguage(language: Language): void;
}

export type ViewStore = StoreApi<ViewState>;

/** @param systemDark what the system asks for, where the user has not chosen */
export function createViewStore(kept: KeptState, systemDark: boolean, place: Place): ViewStore {
  return createStore<ViewState>((set, get) => ({
    ...place,
    figures: [],
    theme: kept.theme() ?? (systemDark ? 'dark' : 'light'),
    language: kept.language() ?? 'english',
    go: (to) => set({ ...to, figures: to.view !== undefined && to.view !== get().view ? [] : get().figures }),
    chooseZone: (zone) => set({ zone, community: null }),
    chooseCommunity: (community, zone) => set({ community, zone }),
    chooseDay: (day) => set({ day }),
    chooseHour: (hour) => set({ hour }),
    openFigure: (figure) => set({ figures: [...get().figures, figure] }),
    backFigure: () => set({ figures: get().figures.slice(0, -1) }),
    closeFigures: () => set({ figures: [] }),
    setTheme: (theme) => {
      kept.keepTheme(theme);
      set({ theme });
    },
    setLanguage: (language) => {
      kept.keepLanguage(language);
      set({ language });
    },
  }));
}
