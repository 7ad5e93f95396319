import type { ComponentType } from 'react';
import type { MapPicture } from '../presentation/views/map-view.ts';
import type { Words } from '../presentation/wording/words.ts';
import { COVERAGE } from './panels/coverage/view.tsx';
import { DAYS } from './panels/days/view.tsx';
import { HANDOVER } from './panels/handover/view.tsx';
import { PAPERS } from './panels/papers/view.tsx';
import { PROBLEMS } from './panels/problems/view.tsx';
import { RECORDS } from './panels/records/view.tsx';
import { STOCK } from './panels/stock/view.tsx';
import type { SeasonState } from './state/season-state.ts';
import type { ViewName, ViewState } from './state/view-store.ts';

/** One view of the page. Its components take no props: they ask useSeason(), useView() and useWords(). */
export interface ViewParts {
  /** The answer: one or two sentences, with the figures that open. */
  readonly Answer: ComponentType;
  /** Why, then the table. */
  readonly Panel: ComponentType;
  /** The chart on a time axis, below the map. */
  readonly Chart: ComponentType;
  /** What the map's tones and marks mean; lies on the map's lower left corner. */
  readonly Legend: ComponentType;
  /** What the view puts on the map. Should give the same object for the same season and place. */
  readonly picture: (season: SeasonState, view: ViewState, words: Words) => MapPicture;
}

export const VIEWS: Readonly<Record<ViewName, ViewParts>> = {
  stock: STOCK,
  days: DAYS,
  coverage: COVERAGE,
  problems: PROBLEMS,
  handover: HANDOVER,
  papers: PAPERS,
  records: RECORDS,
};
