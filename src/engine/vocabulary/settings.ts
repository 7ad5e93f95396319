import type { SeasonOutlook } from './stage-results/season.ts';

/** How long and from which seed the delivery search runs, and who is told. Stopping and randomness are arguments. */
export interface SearchSettings {
  readonly seed: number;
  /** Most steps of the search. */
  readonly iterations: number;
  /** Asked between steps; true ends the search (a time limit, a cancel). */
  readonly stop: (() => boolean) | null;
  /** Told now and then: steps done, share of the limit done, best cost so far. */
  readonly progress: ((done: number, share: number, best: number) => void) | null;
}

/** Tools that are not arithmetic of ours: started by adapters, handed in ready and synchronous. */
export interface PlanningTools<Solver, Overlay> {
  readonly solver: Solver;
  readonly overlay: Overlay;
}

/** Told when a stage begins and ends, by the stage's folder name, and by how often it was run. */
export interface PlanHooks {
  readonly stageBegins?: (stage: string) => void;
  readonly stageEnds?: (stage: string, reused: boolean) => void;
  /**
   * The list of seasons behind the reach curves, that is, the season as allocation and delivery see it; outcomes are weighed on
   * all. Left out: the season as it is.
   */
  readonly seasonsBehind?: (season: SeasonOutlook) => SeasonOutlook;
}
