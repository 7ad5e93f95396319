import type { StoreApi } from 'zustand/vanilla';
import type { StartFiles } from '../../adapters/browser/fetch-start.ts';
import type { Gathered } from '../../adapters/browser/gather-files.ts';
import type {
  OpenedScenario,
  PlanAsMade,
  PlanningProgress,
  ReplayAnswer,
} from '../../adapters/workers/worker-messages.ts';
import type {
  AllocationDifference,
  Commodity,
  Decision,
  DeliveryDifference,
  MoveAsked,
  MovePriced,
  Needs,
  Plan,
  Problem,
  ReadFault,
  Scenario,
  SeasonCalendar,
  SmallestChange,
  StockChange,
  TransferIdea,
  TripAtHour,
  TripQuestion,
} from '../../engine/index.ts';
import type { HandoverEntry } from '../../presentation/records/handover-entry.ts';

/** Files by their paths in the folder or archive. */
export type Files = ReadonlyMap<string, Uint8Array>;

/** What a plan was made from. */
export interface PlannedFrom {
  readonly files: Files;
  readonly decisions: readonly Decision[];
}

/** Something to say beside the answer, until it is closed or overtaken. */
export type Notice =
  | { readonly kind: 'cancelled' | 'other-plan' }
  | { readonly kind: 'failed' | 'no-scenario-in' | 'strangers'; readonly text: string };

/** What the page knows of the season that is open, and what may be asked of it. */
export interface SeasonState {
  /** Folder or archive that is open; null before anything is. */
  readonly name: string | null;
  readonly opening: boolean;
  readonly files: Files;
  readonly faults: readonly ReadFault[];
  /** The files as last read. */
  readonly read: OpenedScenario | null;
  /** The scenario that the plan belongs to; where none is planned, the one just read. Indexes of the plan point into it. */
  readonly scenario: Scenario | null;
  readonly decisions: readonly Decision[];
  /** What is entered of the day that is not closed yet, and the hash of the files as they were opened. */
  readonly entries: readonly HandoverEntry[];
  readonly events: readonly Decision[];
  readonly openedSha256: string | null;
  /** What undo took back, the next to be redone last. */
  readonly undone: readonly Decision[];
  readonly plan: Plan | null;
  readonly plannedFrom: PlannedFrom | null;
  readonly planning: PlanningProgress | null;
  /** The plan before this one, where it was of the same files. */
  readonly planBefore: PlanAsMade | null;
  /** What the independent checker found in the plan; null while it has not answered. */
  readonly findings: readonly Problem[] | null;
  readonly notice: Notice | null;
  /** Needs under figures that were changed since the plan; null where none was. */
  readonly changedNeeds: Needs | null;
  /** What planning the days again changed; null where that was not done, or has been read. */
  readonly difference: DeliveryDifference | null;
  /** What each day is worth to each zone, and the plan it was asked for; null until a view has asked. */
  readonly calendar: { readonly of: Plan; readonly worth: SeasonCalendar | null } | null;

  openFiles(gathered: Gathered): Promise<void>;
  /** Opens what is served with the page; null where nothing is. */
  openStart(start: StartFiles | null): Promise<void>;
  /** Puts files in the place of those of the same name, as mended. */
  replaceFiles(files: Files): Promise<void>;
  decide(...decisions: Decision[]): void;
  /** Drops the last step, or as many decisions as are named. */
  undo(count?: number): void;
  redo(): void;
  replan(): Promise<void>;
  cancel(): void;
  dismiss(): void;
  /** What changes would give and take of the stock under the decisions of now; null where no answer is possible. */
  askStock(changes: readonly StockChange[]): Promise<AllocationDifference | null>;
  /** The smallest change that lifts the whole shortfall of a row of the plan's shares; null where no answer is possible. */
  askSmallestChange(shareRow: number, commodity: Commodity): Promise<SmallestChange | null>;
  /** What carrying idle packs to another depot would serve; null where no answer is possible. */
  askTransfers(): Promise<readonly TransferIdea[] | null>;
  /** The season once more from the present plan, which people know: packs and days told are kept where they can be. */
  replanDays(): Promise<void>;
  dismissDifference(): void;
  /** Adds to what is entered of the day; nothing counts before the day is closed. */
  enter(added: { readonly entries?: readonly HandoverEntry[]; readonly events?: readonly Decision[] }): void;
  /** Takes an entry or an event of the day that is not closed yet out again. */
  takeOut(what: 'entries' | 'events', index: number): void;
  /** Makes all that was entered records and decisions, and plans again from the plan that people know. */
  closeDay(date: string): Promise<void>;
  /** What moving goods would cost; null where no answer is possible. */
  askMove(asked: MoveAsked): Promise<MovePriced | null>;
  /** How a planned trip would go at another hour; null where no answer is possible. */
  askTrip(trip: TripQuestion): Promise<TripAtHour | null>;
  /** The plan in past seasons, and another beside it; null where no answer is possible. */
  askReplay(other: PlanAsMade<unknown> | null): Promise<ReplayAnswer | null>;
  /** Has the days of the plan weighed, once a plan. */
  weighDays(): Promise<void>;
}

export type SeasonStore = StoreApi<SeasonState>;
