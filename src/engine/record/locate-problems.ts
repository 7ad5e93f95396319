import type { Origin, Problem } from '../vocabulary/index.ts';

/** The same problems with file and row filled in where a stage named an entry by its id. */
export function locateProblems(problems: readonly Problem[], origins: readonly Origin[]): readonly Problem[] {
  const places = new Map(origins.map((origin) => [`${origin.part}\n${origin.id}`, origin]));
  return problems.map((problem) => {
    const origin = problem.about && places.get(`${problem.about.part}\n${problem.about.id}`);
    return origin ? { ...problem, file: problem.file ?? origin.file, row: problem.row ?? origin.row } : problem;
  });
}
