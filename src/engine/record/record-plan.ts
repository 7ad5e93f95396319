import { isoDate, type Places, type Plan, type Scenario } from '../vocabulary/index.ts';
import { locateProblems } from './locate-problems.ts';
import { orderProblems } from './order-problems.ts';
import type { PlanParts } from './plan-parts.ts';
import { recordAllocation } from './record-allocation.ts';
import { recordDelivery } from './record-delivery.ts';
import { recordNeeds } from './record-needs.ts';
import { recordOutcomes } from './record-outcomes.ts';
import { recordPlaces } from './record-places.ts';
import { recordSeason } from './record-season.ts';

/**
 * Writes the results of the stages down as a plan document: id lists once, columns of rounded figures, ISO dates. What
 * this gives equals what comes back from its JSON text.
 *
 * @throws RangeError where a figure that must be a number is not one, or a leg driven has no path
 */
export function recordPlan(parts: PlanParts): Plan {
  const { scenario, decisions, settings, places, season, needs, allocation, delivery, outcomes } = parts;
  return {
    format: 'nodulary-plan/1',
    engineVersion: parts.engineVersion,
    scenarioSha256: scenario.sha256,
    decisionsSha256: decisions.sha256,
    seed: settings.seed,
    iterations: delivery.iterationsDone,
    stoppedBy: delivery.stoppedBy,
    rounds: parts.rounds,
    tools: parts.tools,
    stageHashes: parts.stageHashes,
    scenario: {
      name: scenario.name,
      seasonYear: scenario.seasonYear,
      asOf: isoDate(scenario.asOf),
      currency: scenario.currency,
      timeZone: scenario.timeZone,
      planningFrom: isoDate(scenario.planning.from),
      planningTo: isoDate(scenario.planning.to),
    },
    ids: recordIds(scenario, places),
    handovers: recordHandovers(scenario),
    places: recordPlaces(places),
    season: recordSeason(scenario, season, needs),
    needs: recordNeeds(needs),
    allocation: recordAllocation(scenario, allocation),
    delivery: recordDelivery(scenario, parts),
    outcomes: recordOutcomes(outcomes),
    defaults: scenario.defaults,
    provenance: parts.provenance,
    problems: orderProblems(locateProblems(parts.problems, scenario.origins)),
  };
}

/** Id lists, each once, that the indexes of a plan point into. */
export function recordIds(scenario: Scenario, places: Places): Plan['ids'] {
  const idOf = ({ id }: { readonly id: string }) => id;
  return {
    crops: scenario.crops,
    zones: scenario.zones.map(idOf),
    communities: scenario.communities.map(idOf),
    depots: scenario.depots.map(idOf),
    products: scenario.products.map(idOf),
    lots: scenario.lots.map(idOf),
    vehicles: scenario.vehicles.map(idOf),
    places: places.handoverPlaces.map(
      (place) => place.pointId ?? scenario.communities[place.communities[0] ?? -1]?.id ?? '',
    ),
  };
}

function recordHandovers({ handovers, communities, lots }: Scenario): Plan['handovers'] {
  const community = new Map(communities.map(({ id }, c) => [id, c]));
  const lot = new Map(lots.map(({ id }, l) => [id, l]));
  return {
    date: handovers.map(({ date }) => isoDate(date)),
    community: handovers.map(({ communityId }) => community.get(communityId) ?? -1),
    lot: handovers.map(({ lotId }) => lot.get(lotId) ?? -1),
    packs: handovers.map(({ packs }) => packs),
    returnedPacks: handovers.map(({ returnedPacks }) => returnedPacks),
    sownOn: handovers.map(({ sownOn }) => (sownOn === null ? null : isoDate(sownOn))),
  };
}
