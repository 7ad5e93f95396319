import type { Decision } from './decisions.ts';
import type { DayNumber } from './units.ts';

/**
 * Something to be tried on the stock or the decisions before it is done: the question "what would happen if". Nothing of it
 * is kept; what is to hold becomes a row of a file or a decision.
 */
export type StockChange =
  /** Packs bought, as their label says, at a depot from a day on. */
  | {
      readonly kind: 'more-packs';
      readonly productId: string;
      readonly depotId: string;
      readonly packs: number;
      readonly arrives: DayNumber;
    }
  /** A lot fails its test and is not given. */
  | { readonly kind: 'lot-fails'; readonly lotId: string }
  /** A lot on hold or awaiting is cleared, its packs as counted. */
  | { readonly kind: 'lot-cleared'; readonly lotId: string }
  /** As many packs of the same product in place of a lot that may not be given. */
  | { readonly kind: 'lot-replaced'; readonly lotId: string; readonly arrives: DayNumber }
  /** Packs of a lot carried to another depot. */
  | {
      readonly kind: 'packs-moved';
      readonly lotId: string;
      readonly depotId: string;
      readonly packs: number;
      readonly arrives: DayNumber;
    }
  | { readonly kind: 'reserve'; readonly percent: number }
  | { readonly kind: 'decide'; readonly decision: Decision }
  /** A decision, by its place in the list, is taken back. */
  | { readonly kind: 'release'; readonly index: number };
