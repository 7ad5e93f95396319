import { expect } from 'vitest';
import type { ProblemCode } from '../../../../src/engine/vocabulary/problems.ts';
import type { Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import { type Files, problemsOf, read } from './small-scenario.ts';

/** Reads files that allow a plan in spite of one problem, which stands where it should; gives what was kept. */
export function survives(
  files: Files,
  code: ProblemCode,
  place: { file?: string; row?: number; column?: string; value?: string },
): Scenario {
  const reading = read(files);
  const found = problemsOf(reading, code);
  expect(found.length, `${code} among ${reading.problems.map((problem) => problem.code)}`).toBeGreaterThan(0);
  expect(found[0]).toMatchObject(place);
  if (reading.scenario === null) throw new Error(`blocked by ${JSON.stringify(reading.problems)}`);
  return reading.scenario;
}

/** Reads files that allow no plan and meets all of some codes. */
export const blocks = (files: Files, ...codes: ProblemCode[]): void => {
  const { scenario, problems } = read(files);
  expect(scenario).toBeNull();
  expect(problems.map((problem) => problem.code)).toEqual(expect.arrayContaining(codes));
};

export const ids = (items: readonly { readonly id: string }[]): string[] => items.map(({ id }) => id).sort();
export const ALL_COMMUNITIES = ['C1', 'C2', 'C3', 'C4'];
