/**
 * How far a plan may stand from what the checker finds, and why. A plan holds rounded decimals (hectares 1e-4,
 * kilograms and litres 1e-3, minutes and degrees 1e-2, shares 1e-6, positions 1e-6 degrees); a sum of rounded values may
 * be off by half a step for each term.
 */
export const TOLERANCE = {
  /** One rounding step. */
  hectares: 1e-4,
  kilograms: 1e-3,
  minutes: 0.02,
  share: 2e-6,
  /** Values that pass through two rounded figures. */
  relative: 2e-5,
  /** Own areas use densified edges and repaired rings may differ by slivers. */
  areaRelative: 1e-4,
  /** 400 strips, where a ring crosses itself and the edges cannot tell. */
  areaByStripsRelative: 5e-3,
  /** Forty parallels sample the shape of a border; their error falls with the square of their number on smooth borders. */
  shareBySampling: 0.03,
  /** Polygons are repaired by another method than the checker's even-odd rule; places are rounded to 1e-6 degrees. */
  placeKm: 0.02,
  /** Station distances come from the same geodesic; a tie within this may go either way. */
  stationKm: 0.05,
  /** A quantile of days falls between two days and may be rounded either way. */
  quantileDays: 1,
  /** Daily extremes are rounded to 0.001 K. */
  extremeC: 0.002,
  /** Clock sun: the plan may use another low-precision chain (within half a minute of each other). */
  sunMinutes: 1,
  /** Rhizobia per gram after months in store: the drift of a cool store in steps of a minute. */
  countRelative: 1e-3,
  /** Explicit 20 s steps and linear air between five minutes, against exact segments of a quarter hour. */
  packC: 0.3,
  /** The same, where the air steps by 10 K as a vehicle stops: the margin that the 40 °C rule is judged with. */
  hotBandC: 0.3,
  /** Relative to the loss, beside an absolute step: the loss grows by 4 % for 0.3 K. */
  lossRelative: 0.06,
  lossAbsolute: 2e-4,
  /** Hours above a limit: 0.3 K near the limit may shift the crossing, by more where the packs warm slowly. */
  hoursAboveStorage: 0.15,
  hoursAboveRelative: 0.15,
  hoursAboveStep: 0.001,
  /** Geodesic length of a path, vertices rounded as in the files; site snapped by a flat projection. */
  kilometresRelative: 2e-3,
  kilometres: 0.03,
  /** Two pieces meet at a vertex equal to 1e-7 degrees, or at a rounded place along a line. */
  pieceGapKm: 0.02,
  /** Minutes along the path: kilometre tolerance at the speed of a track. */
  legMinutesRelative: 3e-3,
  legMinutes: 0.1,
  /** An idle vehicle must have this to spare before a load counts as wrongly left behind. */
  idleMinutes: 5,
  idleC: 0.6,
  idleHours: 0.3,
  /** Outcomes are played again from rounded deliveries; losses told to 1e-5 log10. */
  outcomesRelative: 1e-3,
  outcomesHa: 1e-3,
  log10PerSeed: 0.005,
  /** Middle of a range over drawn parameters against the members at the central figures: the draws are skewed by clipping. */
  middleRelative: 0.25,
} as const;

/** A lot is given only where the chance of sowing before it expires is at least this (design, section 6). */
export const LOT_REASON_LEAST_CHANCE = 0.9;
