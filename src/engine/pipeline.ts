import { ENGINE_VERSION, type Ground, type Kept, layGround, type Run, runner } from './ground.ts';
import { contentHash } from './numerics/content-hash.ts';
import type { LinearSolver } from './numerics/linear-solver.ts';
import type { PolygonOverlay } from './numerics/polygon-overlay.ts';
import { readTold } from './record/read-told.ts';
import { recordPlan } from './record/record-plan.ts';
import { traceLegs } from './stages/2-places/trace-legs.ts';
import { allocateStock } from './stages/5-allocation/allocate-stock.ts';
import { planDelivery } from './stages/6-delivery/plan-delivery.ts';
import { weighOutcomes } from './stages/7-outcomes/weigh-outcomes.ts';
import {
  type Allocation,
  type Decisions,
  type Delivery,
  type Needs,
  type Outcomes,
  type Places,
  type Plan,
  type PlanHooks,
  type PlanningTools,
  type Scenario,
  type SearchSettings,
  type SeasonOutlook,
  type StageResult,
  type ToldPlan,
  withAssumptions,
} from './vocabulary/index.ts';

export { addProblems } from './record/add-problems.ts';
export {
  type AllocationDifference,
  type CellDifference,
  type CommodityDifference,
  compareAllocations,
  type LotDifference,
  type Told,
} from './record/compare-allocations.ts';
export { compareDeliveries, type DeliveryDifference } from './record/compare-deliveries.ts';
export { readScenario, type ScenarioReading } from './stages/1-intake/read-scenario.ts';
export type { DeliveryDesk } from './stages/6-delivery/delivery-desk.ts';
export type { InstanceVehicles, RoutingInstance } from './stages/6-delivery/search/routing-instance.ts';
export { type InstanceAnswer, solveInstance } from './stages/6-delivery/search/solve-instance.ts';
export { type DrawGroup, drawEvenly, drawGroups, drawParameters } from './stages/7-outcomes/draw-parameters.ts';
export { costliest } from './stages/7-outcomes/past-seasons.ts';
export { makePlayResult, type PlayTotal, SEASON_LOSSES } from './stages/7-outcomes/play-result.ts';
export { playSeason } from './stages/7-outcomes/play-season.ts';
export { type DrivenLoads, type PlayParts, type PreparedPlay, preparePlay } from './stages/7-outcomes/prepare-play.ts';
export type { PlayRule } from './stages/7-outcomes/visits-in-seasons.ts';

/** Results of the stages under the hash of their inputs, to be handed to the next run. */
export interface StageCache extends Ground {
  readonly supply: Kept<Supply>;
  readonly outcomes: Kept<StageResult<Outcomes>>;
}

export interface PlanningRun {
  readonly plan: Plan;
  readonly stages: StageCache;
}

/** Allocation and delivery, which may take a second round together. */
interface Supply {
  readonly rounds: number;
  readonly allocation: StageResult<Allocation>;
  readonly delivery: StageResult<Delivery>;
}

/**
 * Stages 2 to 7 in order: the table of contents of the engine. A stage whose inputs are the same as in `previous` is not
 * run again.
 */
export function planSeason(
  sent: Scenario,
  decisions: Decisions,
  previous: StageCache | null,
  settings: SearchSettings,
  tools: PlanningTools<LinearSolver, PolygonOverlay>,
  hooks: PlanHooks = {},
): PlanningRun {
  const scenario = withAssumptions(sent, decisions);
  const { solver, overlay } = tools;
  const run = runner(hooks);
  const { places, season, needs } = layGround(scenario, decisions, previous, overlay, run);
  const behind = hooks.seasonsBehind?.(season.value.result) ?? season.value.result;
  const supply = run(
    '5-allocation and 6-delivery',
    [hashSearch(decisions, settings, solver), season.hash, needs.hash, ...hashMembers(behind, season.value.result)],
    previous?.supply,
    () => supplySeason(scenario, decisions, places.value.result, behind, needs.value.result, settings, solver, null),
  );
  return finishPlan(scenario, decisions, { places, season, needs }, supply, previous, settings, tools, run);
}

/**
 * The season once more from a plan that people know, after a day's records or a change: what is over stays as it was recorded, the
 * stock is as it is, packs that communities were told of stay theirs as far as that still holds, each consignment that comes on
 * another day than told costs a promise, and stock that came free is shared out. `compareDeliveries` lists what changes.
 *
 * @param told the plan people know, of these or of earlier records of the same season
 * @param settings steps of the search; few are enough, because it begins from the plan told
 */
export function replanSeason(
  sent: Scenario,
  decisions: Decisions,
  told: Plan,
  previous: StageCache | null,
  settings: SearchSettings,
  tools: PlanningTools<LinearSolver, PolygonOverlay>,
  hooks: PlanHooks = {},
): PlanningRun {
  const scenario = withAssumptions(sent, decisions);
  const run = runner(hooks);
  const { places, season, needs } = layGround(scenario, decisions, previous, tools.overlay, run);
  const known = readTold(told, scenario);
  const inputs = [hashSearch(decisions, settings, tools.solver), season.hash, needs.hash, contentHash(known)];
  const supply = run('5-allocation and 6-delivery', inputs, previous?.supply, () =>
    supplySeason(
      scenario,
      decisions,
      places.value.result,
      season.value.result,
      needs.value.result,
      settings,
      tools.solver,
      known,
    ),
  );
  return finishPlan(scenario, decisions, { places, season, needs }, supply, previous, settings, tools, run);
}

/** Stage 7, and the plan document of all stages. */
function finishPlan(
  scenario: Scenario,
  decisions: Decisions,
  { places, season, needs }: Ground,
  supply: Kept<Supply>,
  previous: StageCache | null,
  settings: SearchSettings,
  { solver, overlay }: PlanningTools<LinearSolver, PolygonOverlay>,
  run: Run,
): PlanningRun {
  const outcomes = run('7-outcomes', [supply.hash], previous?.outcomes, () =>
    weighOutcomes(
      scenario,
      places.value.result,
      season.value.result,
      needs.value.result,
      supply.value.allocation.result,
      supply.value.delivery.result,
    ),
  );

  const stages = { places, season, needs, supply, outcomes };
  const results = [
    places.value,
    season.value,
    needs.value,
    supply.value.allocation,
    supply.value.delivery,
    outcomes.value,
  ];
  const plan = recordPlan({
    engineVersion: ENGINE_VERSION,
    scenario,
    decisions,
    settings,
    rounds: supply.value.rounds,
    tools: [solver, overlay].map(({ name, version, options }) => ({ name, version, options })),
    stageHashes: Object.fromEntries(Object.entries(stages).map(([stage, kept]) => [stage, kept.hash])),
    places: places.value.result,
    season: season.value.result,
    needs: needs.value.result,
    allocation: supply.value.allocation.result,
    delivery: supply.value.delivery.result,
    outcomes: outcomes.value.result,
    legs: traceLegs(scenario, places.value.result, season.value.result, supply.value.delivery.result),
    problems: results.flatMap((stage) => stage.problems),
    provenance: results.flatMap((stage) => stage.provenance),
  });
  return { plan, stages };
}

/** Nothing where allocation and delivery are given the season as it is. */
function hashMembers(behind: SeasonOutlook, season: SeasonOutlook): string[] {
  return behind === season ? [] : [contentHash(behind.members.map(({ year }) => year))];
}

/**
 * Stages 5 and 6, and once more where stock came free: what could not be delivered is offered to others, and what is
 * served is held as a promise. From a plan people know the first round is already a second one: its packs are promised.
 */
function supplySeason(
  scenario: Scenario,
  decisions: Decisions,
  places: Places,
  season: SeasonOutlook,
  needs: Needs,
  settings: SearchSettings,
  solver: LinearSolver,
  told: ToldPlan | null,
): Supply {
  const promised = told && ({ as: 'told', told } as const);
  const allocation = allocateStock(scenario, decisions, places, season, needs, solver, promised);
  const known =
    told && ({ as: 'told', allocation: told.allocation, delivery: told.delivery, days: told.days } as const);
  const delivery = planDelivery(scenario, decisions, places, season, allocation.result, settings, known);
  if (!leavesGoods(allocation.result, delivery.result)) return { rounds: told ? 2 : 1, allocation, delivery };
  const days = told ? { days: told.days } : {};
  const earlier = { allocation: allocation.result, delivery: delivery.result, as: 'held', ...days } as const;
  const again = allocateStock(scenario, decisions, places, season, needs, solver, earlier);
  return {
    rounds: told ? 3 : 2,
    allocation: again,
    delivery: planDelivery(scenario, decisions, places, season, again.result, settings, earlier),
  };
}

/** Whether stock comes free for others: fertiliser that found no room stays where it is, and asks for no second round. */
function leavesGoods({ consignments }: Allocation, { loads, unserved }: Delivery): boolean {
  return unserved.some(({ load }) => consignments[loads[load]?.consignment ?? -1]?.group !== 'fertiliser');
}

function hashSearch(decisions: Decisions, { seed, iterations }: SearchSettings, solver: LinearSolver): string {
  return contentHash([seed, iterations, solver.name, solver.version, solver.options, decisions.sha256]);
}
