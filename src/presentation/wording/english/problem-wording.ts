import type { Problem, ProblemCode } from '../../../engine/index.ts';

/** What is said of a problem, and what to do about it. */
export interface ProblemWording {
  readonly what: (problem: Problem) => string;
  readonly remedy: string;
}

export type ProblemWordings = Readonly<Partial<Record<ProblemCode, ProblemWording>>>;
