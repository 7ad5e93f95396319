import type { ProblemCode } from '../../../engine/index.ts';
import { CHECKER_PROBLEMS } from './checker-problems.ts';
import { INTAKE_PROBLEMS } from './intake-problems.ts';
import type { ProblemWording } from './problem-wording.ts';
import { STAGE_PROBLEMS } from './stage-problems.ts';

/** A code without words is a type error. */
export const PROBLEM_WORDING: Readonly<Record<ProblemCode, ProblemWording>> = {
  ...INTAKE_PROBLEMS,
  ...STAGE_PROBLEMS,
  ...CHECKER_PROBLEMS,
};
