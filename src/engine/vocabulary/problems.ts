/**
 * A problem is a code with values, never a sentence: the words for it stand in presentation/wording. Codes run E1xxx
 * intake, E2xxx places, E3xxx season, E4xxx needs, E5xxx allocation, E6xxx delivery, E7xxx outcomes, E8xxx checker.
 */

/** `noted`: used, or repaired, and said. `set aside`: this row is not used, the rest is planned. `blocks`: no honest plan is possible. */
export type Weight = 'noted' | 'set aside' | 'blocks';

/** Every code, with its weight. The remedy stands beside the wording of the code, one for each. */
export const PROBLEM_WEIGHTS = {
  // 1-intake
  // 2-places
  // 3-season
  // 4-needs
  // 5-allocation
  // 6-delivery
  // 7-outcomes
  // checker
} as const satisfies Readonly<Record<string, Weight>>;

export type ProblemCode = keyof typeof PROBLEM_WEIGHTS;

export interface Problem {
  readonly code: ProblemCode;
  readonly weight: Weight;
  /** File as named in the scenario; null where no one file is meant. */
  readonly file: string | null;
  /** 1-based row (line of a table, position of a feature). */
  readonly row: number | null;
  readonly column: string | null;
  /** The value met, as text. */
  readonly value: string | null;
  /** Further values that the wording of the code uses, such as an id or a limit. */
  readonly facts: Readonly<Record<string, string | number>>;
}

/** Where a problem stands; what is left out is not known or not meant. */
export interface ProblemPlace {
  readonly file?: string | null;
  readonly row?: number | null;
  readonly column?: string | null;
  readonly value?: string | null;
  readonly facts?: Readonly<Record<string, string | number>>;
}

export function problem(code: ProblemCode, place: ProblemPlace = {}): Problem {
  return {
    code,
    weight: PROBLEM_WEIGHTS[code],
    file: place.file ?? null,
    row: place.row ?? null,
    column: place.column ?? null,
    value: place.value ?? null,
    facts: place.facts ?? {},
  };
}
