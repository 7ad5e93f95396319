import type { Plan, Scenario } from '../engine/index.ts';

/** Name of a hand-over place of the plan: the point's, or the community's whose place was derived; its id where nothing is named. */
export function placeName({ ids }: Plan, scenario: Scenario, place: number): string {
  const id = ids.places[place];
  const point = scenario.handoverPoints.find((one) => one.id === id);
  return point?.name ?? scenario.communities.find((one) => one.id === id)?.name ?? id ?? '';
}
