import { CROP_FACTS } from '../../reference/crops.ts';
import { type CropOutcomes, type Problem, problem } from '../../vocabulary/index.ts';
import type { PlayParts, PreparedPlay } from './play-season.ts';

/** What a reader of the outcomes must know of them. */
export function noteOutcomes(
  { scenario, allocation }: PlayParts,
  prepared: PreparedPlay,
  outcomes: CropOutcomes,
): readonly Problem[] {
  const problems: Problem[] = [];
  if (prepared.members === 0) problems.push(problem('E7001'));
  scenario.crops.forEach((crop, index) => {
    const rows = Array.from(allocation.shares.crop.keys()).filter(
      (row) => allocation.shares.crop[row] === index && (outcomes.inoculatedHa[row] as number) > 0,
    );
    if (rows.length === 0) return;
    const { responseTPerHa, responseFraction } = CROP_FACTS[crop];
    if (responseTPerHa === null && responseFraction === null) problems.push(problem('E7002', { facts: { crop } }));
    const low = rows.filter((row) => (outcomes.log10PerSeed[row] as number) < prepared.floorLog10);
    if (low.length > 0) {
      const { cellsPerSeedFloor } = scenario.policy;
      problems.push(problem('E7003', { facts: { crop, communities: low.length, floor: cellsPerSeedFloor } }));
    }
    const unknown = rows.filter((row) => Number.isNaN(outcomes.log10PerSeed[row]));
    if (unknown.length > 0 && prepared.members > 0) {
      problems.push(problem('E7004', { facts: { crop, communities: unknown.length } }));
    }
  });
  return problems;
}
