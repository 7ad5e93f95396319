import { CROP_FACTS } from '../../reference/crops.ts';
import { CROPS, type Crop } from '../../vocabulary/crops.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { IntakeReport } from './intake-report.ts';

/** The programme's own yields, t per ha, completed from the reference for the crops it plans. */
export function completeYields(
  report: IntakeReport,
  own: Scenario['yieldsTPerHa'],
  planned: readonly Crop[],
): Scenario['yieldsTPerHa'] {
  const yields: Partial<Record<Crop, number>> = {};
  for (const crop of CROPS) {
    const stated = own[crop];
    if (stated !== undefined) yields[crop] = stated;
    else if (planned.includes(crop)) {
      const reference = CROP_FACTS[crop].yieldTPerHa;
      report.countDefault(`scenario.json:yields.${crop}`, reference);
      yields[crop] = reference.value;
    }
  }
  return yields;
}
