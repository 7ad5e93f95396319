/** What a temperature record did to what lay beside the logger; times joined by straight lines. */
export interface Exposure {
  readonly hours: number;
  readonly minC: number;
  readonly maxC: number;
  readonly meanKineticC: number;
  readonly degreeHours30: number;
  readonly hoursAbove30: number;
  readonly hoursAbove35: number;
  readonly hoursAbove40: number;
}

/** One logger's record of one lot, or of the packs of a lot on one trip. */
export interface LoggerReading {
  readonly file: string;
  /** Null where the file names only a trip. */
  readonly lotId: string | null;
  /** As the file calls the trip; null: the logger lay with the lot in its store. */
  readonly trip: string | null;
  /** Local minutes since 1970-01-01, ascending, each once. */
  readonly minutes: Float64Array;
  readonly celsius: Float64Array;
  readonly exposure: Exposure;
  /** Hours in gaps too long to be bridged by a straight line; the hotter end was taken to hold. */
  readonly gapHours: number;
  /** log10 lost by the set of the lot's product and the crop that loses most; NaN where nothing is known. */
  readonly log10Loss: number;
  /** The same by the default and by the cautious set, whatever the pack. */
  readonly log10LossDefault: number;
  readonly log10LossCautious: number;
}
