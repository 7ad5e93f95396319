import { createContext, useContext, useMemo } from 'react';
import { useStore } from 'zustand';
import { pseudoWords } from '../../presentation/wording/pseudo.ts';
import { english, type Words } from '../../presentation/wording/words.ts';
import { changedInputs, isStale } from './changed-inputs.ts';
import type { SeasonState, SeasonStore } from './season-state.ts';
import type { ViewState, ViewStore } from './view-store.ts';

export interface Stores {
  readonly season: SeasonStore;
  readonly view: ViewStore;
}

export const StoresContext = createContext<Stores | null>(null);

function useStores(): Stores {
  const stores = useContext(StoresContext);
  if (stores === null) throw new Error('components that read the season stand inside StoresContext');
  return stores;
}

const whole = <T>(state: T): T => state;

/** The season: scenario, decisions, plan and what can be done with them; or the part of it that is chosen. */
export function useSeason(): SeasonState;
export function useSeason<T>(choose: (state: SeasonState) => T): T;
export function useSeason<T>(choose: (state: SeasonState) => T | SeasonState = whole): T | SeasonState {
  return useStore(useStores().season, choose);
}

/** Where the user is: view, selection, day, hour, opened figure; or the part of it that is chosen. */
export function useView(): ViewState;
export function useView<T>(choose: (state: ViewState) => T): T;
export function useView<T>(choose: (state: ViewState) => T | ViewState = whole): T | ViewState {
  return useStore(useStores().view, choose);
}

/** The dictionary of the language chosen. */
export function useWords(): Words {
  const language = useView((view) => view.language);
  return useMemo(() => (language === 'pseudo' ? pseudoWords() : english), [language]);
}

/** How many inputs have changed since the plan. */
export const useChangedInputs = (): number => useSeason(changedInputs);

/** Whether an input of a figure has changed since it was planned. */
export const useStale = (path: string): boolean => useSeason((season) => isStale(season, path));
