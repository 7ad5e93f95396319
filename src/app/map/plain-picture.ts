import type { Scenario } from '../../engine/index.ts';
import { depotSymbols, EMPTY_PICTURE, type MapPicture, zoneLabels } from '../../presentation/views/map-view.ts';
import { rememberLast } from '../state/remember-last.ts';

/** The district without figures: zone names and depots on bare paper. */
export const plainPicture = rememberLast((scenario: Scenario | null): MapPicture => {
  if (scenario === null) return EMPTY_PICTURE;
  return { ...EMPTY_PICTURE, labels: zoneLabels(scenario, () => null), symbols: depotSymbols(scenario) };
});
