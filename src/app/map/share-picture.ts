import type { Plan, Scenario } from '../../engine/index.ts';
import { clearOfDepots } from '../../presentation/views/clear-labels.ts';
import {
  depotSymbols,
  EMPTY_PICTURE,
  type MapPicture,
  shareTone,
  zoneLabels,
} from '../../presentation/views/map-view.ts';
import { percentOf } from '../../presentation/views/share-text.ts';

/**
 * A share by community as tones, cross-hatched where a community gets nothing, with the zone's own share printed.
 *
 * @param shares 0 to 1 by community; null where nothing is planned
 * @param zoneShares 0 to 1 by zone of the scenario; null where it is not known
 */
export function sharePicture(
  scenario: Scenario,
  shares: readonly (number | null)[],
  zoneShares: readonly (number | null)[],
): MapPicture {
  const percent = (share: number | null | undefined) =>
    share === null || share === undefined ? null : `${percentOf(share)} %`;
  const symbols = depotSymbols(scenario);
  const labels = zoneLabels(scenario, (zone) => percent(zoneShares[zone]));
  return {
    ...EMPTY_PICTURE,
    fills: shares.map((share) => (share === 0 ? null : shareTone(share))),
    hatches: shares.map((share) => (share === 0 ? 'nothing' : null)),
    labels: clearOfDepots(labels, symbols, scenario),
    symbols,
  };
}

/** Zone shares of a plan's table by zone of the scenario. */
export function byZone(plan: Plan, zones: number, of: (row: number) => number | null): (number | null)[] {
  const shares: (number | null)[] = Array.from({ length: zones }, () => null);
  plan.outcomes.zones.zone.forEach((zone, row) => {
    if (zone >= 0) shares[zone] = of(row);
  });
  return shares;
}
