import type { DrivingRest } from '../rules/driving-rest.ts';
import type { Judge } from './judge.ts';
import type { Orders } from './put-back.ts';
import type { Ties } from './ties.ts';

/**
 * What the search reads: who is to be visited, and by what. The programme's plan and published routing sets are both written
 * down so. Places are numbered within a matrix, 0 is the depot; money, kilometres and minutes are in the units of whoever asks.
 */
export interface RoutingProblem {
  readonly visits: Visits;
  readonly slots: SlotColumns;
  readonly matrices: readonly PlaceMatrix[];
  /**
   * First slot of each shelf, one entry more than there are shelves. Slots of one shelf are alike to whoever is visited: one
   * depot on one day, or one type of vehicle. They stand together, sorted by group.
   */
  readonly shelfStart: Int32Array;
  /** Whether a slot may leave the depot more than once. */
  readonly reloads: boolean;
  /** Whether a shelf has vehicles of different sizes, so that a full one may be exchanged for a larger one. */
  readonly grows: boolean;
  /** Rest that crews are owed after driving; null where no rule is stated. Goes with a clock. */
  readonly rest: DrivingRest | null;
  /** No clock is run where nothing depends on it. */
  readonly timed: boolean;
  /** Most loads that one slot can ever hold. */
  readonly mostLoads: number;
  /** What ties loads to each other, and what rows cannot know; null where there is nothing of it. */
  readonly ties: Ties | null;
  readonly judge: Judge | null;
  /** Keys by which loads are put back; null: those of published sets. */
  readonly orders: Orders | null;
}

/** Loads to be handed over: columns, one row a load. */
export interface Visits {
  readonly count: number;
  readonly place: Int32Array;
  readonly kg: Float64Array;
  readonly litres: Float64Array;
  /** Minutes of work at the place, but for what the matrix adds for stopping there. */
  readonly minutes: Float64Array;
  /** No trip with this load is loaded before. */
  readonly releaseMinute: Float64Array;
  /** What it costs not to go there. */
  readonly unservedCost: Float64Array;
  /** Shelves that may serve it: from the first up to, not including, the last. */
  readonly shelfFrom: Int32Array;
  readonly shelfTo: Int32Array;
  /** Cost of a visit from each shelf, [load * shelves + shelf]; Infinity where it is not allowed. */
  readonly shelfCost: Float64Array;
}

/** What may run: one vehicle on one day. Columns, one row a slot. */
export interface SlotColumns {
  readonly count: number;
  readonly matrix: Int32Array;
  /** Slots of one group on one shelf are interchangeable. */
  readonly group: Int32Array;
  readonly payloadKg: Float64Array;
  readonly coolLitres: Float64Array;
  readonly dayCost: Float64Array;
  readonly kmCost: Float64Array;
  readonly loadsFrom: Float64Array;
  readonly earliestLeave: Float64Array;
  readonly latestBack: Float64Array;
  /** Most minutes from leaving to coming back, leaving as late as need be; Infinity where there is no such limit. */
  readonly mostMinutes: Float64Array;
  readonly loadingMinutesPerKg: Float64Array;
}

/** Legs between places; Infinity where there is none. Each stands twice, row by row from and row by row to, to be read in order. */
export interface PlaceMatrix {
  readonly size: number;
  readonly kmFrom: Float64Array;
  readonly kmTo: Float64Array;
  /** Minutes of a leg and of stopping where it ends. */
  readonly minutesFrom: Float64Array;
  readonly minutesTo: Float64Array;
  /** The part of these minutes that is stopping and not driving; none at the depot. */
  readonly stopMinutes: number;
  /** Work begins when a place opens at the earliest and ends when it closes at the latest. */
  readonly opens: Float64Array;
  readonly closes: Float64Array;
}

/** A matrix with both readings, from one. */
export function placeMatrix(
  size: number,
  km: Float64Array,
  minutes: Float64Array,
  opens: Float64Array,
  closes: Float64Array,
  stopMinutes = 0,
): PlaceMatrix {
  const kmTo = transpose(size, km);
  const minutesTo = minutes === km ? kmTo : transpose(size, minutes);
  return { size, kmFrom: km, kmTo, minutesFrom: minutes, minutesTo, stopMinutes, opens, closes };
}

/** Column by column; the same columns where they read the same both ways, for what is read twice should stand once. */
function transpose(size: number, from: Float64Array): Float64Array {
  const to = new Float64Array(size * size);
  for (let a = 0; a < size; a++) for (let b = 0; b < size; b++) to[b * size + a] = from[a * size + b] as number;
  return to.every((value, i) => value === from[i]) ? from : to;
}
