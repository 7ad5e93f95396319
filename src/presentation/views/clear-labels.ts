import type { Scenario } from '../../engine/index.ts';
import { districtBounds, type MapLabel, type MapSymbol } from './map-view.ts';

/** Room that a label of two lines takes beside and above a depot when the whole district is in view, as parts of its size. */
const [BESIDE, ABOVE] = [0.09, 0.085];

/** Moves labels that lie on a depot up or down until it is free, whichever is nearer. */
export function clearOfDepots(
  labels: readonly MapLabel[],
  depots: readonly MapSymbol[],
  scenario: Scenario,
): MapLabel[] {
  const bounds = districtBounds(scenario);
  if (bounds === null) return [...labels];
  const [west, south, east, north] = bounds;
  const [wide, high] = [BESIDE * (east - west), ABOVE * (north - south)];
  return labels.map((label) => {
    const [lon, lat] = label.position;
    const under = depots.find(
      ({ position }) => Math.abs(position[0] - lon) < wide && Math.abs(position[1] - lat) < high,
    );
    if (under === undefined) return label;
    const moved = under.position[1] + (lat >= under.position[1] ? high : -high);
    return { ...label, position: [lon, moved] };
  });
}
