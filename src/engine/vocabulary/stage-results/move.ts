import type { UnservedReason } from '../reasons.ts';

/** Goods of one community to be brought with another vehicle or on another day. Indexes as in the plan; day from planning.from. */
export interface MoveAsked {
  readonly consignment: number;
  /** Consignments that come along: what is handed over together is moved together. */
  readonly along?: readonly number[];
  readonly vehicle: number;
  readonly day: number;
}

/** What a move would cost, all else staying where it is. */
export interface MovePriced {
  /** Why it cannot be; null: it can. `no-vehicle-day-left`: the vehicle is not there that day, or full. */
  readonly reason: UnservedReason | null;
  /** Change of everything the search weighs: travel, vehicle-days, ice, worth lost, promises. Null where it cannot be. */
  readonly cost: number | null;
  /** Change of the money alone, in the scenario's currency; null where nothing of it has a price. */
  readonly money: number | null;
  /** What coming on another day than told costs, in the same unit as `cost`, which holds it where the day changes. */
  readonly promisePrice: number;
  /** Whether the day changes. */
  readonly otherDay: boolean;
  /** Consignments that would no longer find a place. */
  readonly leftBehind: readonly number[];
}
