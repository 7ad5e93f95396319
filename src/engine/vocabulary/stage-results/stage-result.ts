import type { Problem } from '../problems.ts';
import type { FigureProvenance } from '../provenance.ts';

/** What every stage gives back beside its result. */
export interface StageResult<T> {
  readonly result: T;
  readonly problems: readonly Problem[];
  readonly provenance: readonly FigureProvenance[];
}
