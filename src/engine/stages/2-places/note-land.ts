import { exactSum } from '../../numerics/exact-sum.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import { rounded } from './rounded.ts';

/** Communities that plan more legume than their polygon has land. The plan is used as given. */
export function noteLand({ communities }: Scenario, areaHa: Float64Array): readonly Problem[] {
  return communities.flatMap(({ id, crops }, c) => {
    const plannedHa = exactSum(crops.map((crop) => crop.plannedHa));
    const landHa = areaHa[c] as number;
    return plannedHa > landHa
      ? [
          problem('E2005', {
            about: { part: 'communities', id },
            facts: { id, plannedHa: rounded(plannedHa, 1), areaHa: rounded(landHa, 1) },
          }),
        ]
      : [];
  });
}
