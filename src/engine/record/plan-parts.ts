import type {
  Allocation,
  Decisions,
  Delivery,
  FigureProvenance,
  LegPath,
  Needs,
  Outcomes,
  Places,
  Plan,
  Problem,
  Scenario,
  SearchSettings,
  SeasonOutlook,
} from '../vocabulary/index.ts';

/** All that a plan document is written from. */
export interface PlanParts {
  readonly engineVersion: string;
  readonly scenario: Scenario;
  readonly decisions: Decisions;
  readonly settings: SearchSettings;
  readonly rounds: number;
  readonly tools: Plan['tools'];
  readonly stageHashes: Plan['stageHashes'];
  readonly places: Places;
  readonly season: SeasonOutlook;
  readonly needs: Needs;
  readonly allocation: Allocation;
  readonly delivery: Delivery;
  readonly outcomes: Outcomes;
  /** The path of every leg that the delivery drives; more may be given. */
  readonly legs: readonly LegPath[];
  readonly problems: readonly Problem[];
  readonly provenance: readonly FigureProvenance[];
}
