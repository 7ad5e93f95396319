import type { Scenario } from '../../engine/index.ts';
import { clearOfDepots } from '../../presentation/views/clear-labels.ts';
import { depotSymbols, EMPTY_PICTURE, type MapPicture, zoneLabels } from '../../presentation/views/map-view.ts';
import { rememberLast } from '../state/remember-last.ts';

/** The district without figures: zone names and depots on bare paper. */
export const plainPicture = rememberLast((scenario: Scenario | null): MapPicture => {
  if (scenario === null) return EMPTY_PICTURE;
  const symbols = depotSymbols(scenario);
  const labels = zoneLabels(scenario, () => null);
  return { ...EMPTY_PICTURE, labels: clearOfDepots(labels, symbols, scenario), symbols };
});
