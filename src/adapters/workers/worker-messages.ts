import type {
  AllocationDifference,
  Commodity,
  Decision,
  DeliveryDifference,
  MoveAsked,
  MovePriced,
  Needs,
  Plan,
  PreparedPlay,
  Problem,
  ReadFault,
  ReplayedPlan,
  Scenario,
  SeasonCalendar,
  SmallestChange,
  StockChange,
  TransferIdea,
  TripAtHour,
  TripQuestion,
  TripWish,
} from '../../engine/index.ts';

/** A scenario's files as gathered by the page: by their paths, and what was met on the way. */
export interface GatheredFiles {
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly faults: readonly ReadFault[];
}

export interface OpenedScenario {
  /** Null where a problem of weight `blocks` was met. */
  readonly scenario: Scenario | null;
  readonly problems: readonly Problem[];
  /** Decisions that the files hold. */
  readonly decisions: readonly Decision[];
  readonly decisionsSha256: string;
  /** SHA-256 over the files as sent, as a plan names it. */
  readonly sha256: string;
}

export interface PlanOrder {
  readonly decisions: readonly Decision[];
  readonly seed: number;
  readonly iterations: number;
}

export interface PlannedSeason {
  /** Problems of intake included, as the command line writes it. */
  readonly plan: Plan;
}

/** What the plan says against what the independent checker finds. */
export interface Verdict {
  readonly findings: readonly Problem[];
}

/** Where planning stands. */
export interface PlanningProgress {
  /** Folder name of the stage, such as `6-delivery`. */
  readonly stage: string;
  /** 0 to 1 of the whole run. */
  readonly share: number;
  /** Least cost found by the search so far; null before it has begun. */
  readonly best: number | null;
}

/** Questions to the plan worker and their answers: the one map that both sides are typed by. */
export interface WorkerCalls {
  /** `decisions`: those of the page, in the place of the files' own. */
  readonly open: {
    readonly ask: GatheredFiles & { readonly decisions?: readonly Decision[] };
    readonly answer: OpenedScenario;
  };
  readonly plan: { readonly ask: PlanOrder; readonly answer: PlannedSeason };
  readonly check: {
    readonly ask: { readonly decisions: readonly Decision[]; readonly plan: Plan };
    readonly answer: Verdict;
  };
  /** What the land would need under these decisions, at once and without planning; null before a plan is known. */
  readonly needs: {
    readonly ask: { readonly decisions: readonly Decision[] };
    readonly answer: { readonly needs: Needs | null };
  };
  /** What handing each zone its inoculant on each day is worth by a reference trip; null where no plan is possible. */
  readonly calendar: {
    readonly ask: { readonly decisions: readonly Decision[]; readonly trip: TripWish };
    readonly answer: { readonly calendar: SeasonCalendar | null };
  };
  /** A planned trip left at another hour; null where no plan is possible. */
  readonly tripAtHour: {
    readonly ask: { readonly decisions: readonly Decision[]; readonly trip: TripQuestion };
    readonly answer: { readonly trip: TripAtHour | null };
  };
  /** What changes on the stock or the decisions, made together, would give and take, before delivery. */
  readonly stock: {
    readonly ask: { readonly decisions: readonly Decision[]; readonly changes: readonly StockChange[] };
    readonly answer: { readonly difference: AllocationDifference | null };
  };
  /** The smallest change that lifts the whole shortfall of a row of the allocation's shares. */
  readonly smallestChange: {
    readonly ask: {
      readonly decisions: readonly Decision[];
      readonly shareRow: number;
      readonly commodity: Commodity;
    };
    readonly answer: { readonly change: SmallestChange | null };
  };
  /** What carrying idle packs to another depot would serve, most land first; null where no plan is possible. */
  readonly transfers: {
    readonly ask: { readonly decisions: readonly Decision[] };
    readonly answer: { readonly ideas: readonly TransferIdea[] | null };
  };
  /** The season once more from a plan that people know, and what comes otherwise; null where no plan is possible. */
  readonly replan: {
    readonly ask: PlanOrder & { readonly told: Plan };
    readonly answer: { readonly plan: Plan; readonly difference: DeliveryDifference } | null;
  };
  /**
   * A plan in every past season, and another one beside it where it is of the same files: made before this one under decisions of
   * its own, or chosen by a reader; null where no plan is possible.
   */
  readonly replay: {
    readonly ask: PlanAsMade & { readonly other: PlanAsMade<unknown> | null };
    readonly answer: ReplayAnswer | null;
  };
  /** What bringing a consignment of the last plan with another vehicle or on another day would cost; null before a plan. */
  readonly move: { readonly ask: MoveAsked; readonly answer: { readonly priced: MovePriced | null } };
}

/** A plan document and the decisions it was made under. */
export interface PlanAsMade<Document = Plan> {
  readonly plan: Document;
  readonly decisions: readonly Decision[];
}

export interface ReplayAnswer {
  readonly zoneNames: readonly (string | null)[];
  readonly printed: ReplayedPlan;
  /** The same with its release rules: each place's inoculant held until planting rain. */
  readonly released: ReplayedPlan;
  /** Null where none was asked for, or the checker finds that it does not hold. */
  readonly other: ReplayedPlan | null;
  /** What long runs are played with. */
  readonly prepared: PreparedPlay;
}

export type CallName = keyof WorkerCalls;

/** Questions about a scenario that is open, answered without a word in between. */
export type Question = Exclude<CallName, 'open' | 'plan'>;

export type ToWorker = {
  readonly [Name in CallName]: { readonly call: Name; readonly id: number; readonly ask: WorkerCalls[Name]['ask'] };
}[CallName];

export type FromWorker =
  | { readonly kind: 'answer'; readonly id: number; readonly answer: WorkerCalls[CallName]['answer'] }
  | { readonly kind: 'progress'; readonly id: number; readonly progress: PlanningProgress }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };
