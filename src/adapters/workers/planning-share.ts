import type { PlanningProgress } from './worker-messages.ts';

/** Part of a run's time that has passed when a stage begins, as measured on the demonstration district. */
const BEGINS: Readonly<Record<string, number>> = {
  '2-places': 0,
  '3-season': 0.08,
  '4-needs': 0.12,
  '5-allocation and 6-delivery': 0.13,
  '7-outcomes': 0.95,
};

const SEARCH = '6-delivery';
const SEARCH_BEGINS = 0.18;
const SEARCH_ENDS = 0.95;

/**
 * Turns what the stages tell into one share that never falls. Allocation and delivery may run twice: the first search
 * takes the first half of their time.
 */
export class PlanningShare {
  private share = 0;
  private round = 0;
  private lastInRound = 0;

  stageBegins(stage: string): PlanningProgress {
    return this.at(stage, BEGINS[stage] ?? this.share, null);
  }

  /** @param done 0 to 1 of this search */
  searched(done: number, best: number): PlanningProgress {
    if (done < this.lastInRound) this.round = 1;
    this.lastInRound = done;
    const half = (SEARCH_ENDS - SEARCH_BEGINS) / 2;
    return this.at(SEARCH, SEARCH_BEGINS + half * (this.round + done), best);
  }

  private at(stage: string, share: number, best: number | null): PlanningProgress {
    this.share = Math.max(this.share, Math.min(1, share));
    return { stage, share: this.share, best };
  }
}
