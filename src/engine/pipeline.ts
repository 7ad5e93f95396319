import { contentHash } from './numerics/content-hash.ts';
import type { LinearSolver } from './numerics/linear-solver.ts';
import type { PolygonOverlay } from './numerics/polygon-overlay.ts';
import { type AllocationDifference, compareAllocations, type Told } from './record/compare-allocations.ts';
import { recordAllocation } from './record/record-allocation.ts';
import { recordIds, recordPlan } from './record/record-plan.ts';
import { locatePlaces } from './stages/2-places/locate-places.ts';
import { traceLegs } from './stages/2-places/trace-legs.ts';
import { drawCalendar } from './stages/3-season/calendar/draw-calendar.ts';
import { outlookSeason } from './stages/3-season/outlook-season.ts';
import { estimateNeeds, layNeeds } from './stages/4-needs/estimate-needs.ts';
import { allocateChanged, type StockCase } from './stages/5-allocation/allocate-changed.ts';
import { allocateStock } from './stages/5-allocation/allocate-stock.ts';
import { applyChange } from './stages/5-allocation/apply-change.ts';
import { findSmallestChange } from './stages/5-allocation/find-smallest-change.ts';
import { proposeTransfers } from './stages/5-allocation/propose-transfers.ts';
import { DeliveryDesk } from './stages/6-delivery/delivery-desk.ts';
import { beginDispatch, planDelivery } from './stages/6-delivery/plan-delivery.ts';
import { tripAtHour } from './stages/6-delivery/trip-at-hour.ts';
import { weighOutcomes } from './stages/7-outcomes/weigh-outcomes.ts';
import {
  type Allocation,
  type Commodity,
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
  type SeasonCalendar,
  type SeasonOutlook,
  type SmallestChange,
  type StageResult,
  type StockChange,
  type TransferIdea,
  type TripAtHour,
  type TripQuestion,
  type TripWish,
  withAssumptions,
  type ZoneShares,
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
export { type DrawGroup, drawGroups, drawParameters } from './stages/7-outcomes/draw-parameters.ts';
export { costliest } from './stages/7-outcomes/past-seasons.ts';
export {
  type DrivenLoads,
  makePlayResult,
  type PlayParts,
  type PlayTotal,
  type PreparedPlay,
  playSeason,
  preparePlay,
  SEASON_LOSSES,
} from './stages/7-outcomes/play-season.ts';
export type { PlayRule } from './stages/7-outcomes/visits-in-seasons.ts';

export const ENGINE_VERSION = '0.1.0';

/** Results of stages 2 to 4 under the hash of their inputs. */
export interface Ground {
  readonly places: Kept<StageResult<Places>>;
  readonly season: Kept<StageResult<SeasonOutlook>>;
  readonly needs: Kept<StageResult<Needs>>;
}

/** Results of the stages under the hash of their inputs, to be handed to the next run. */
export interface StageCache extends Ground {
  readonly supply: Kept<Supply>;
  readonly outcomes: Kept<StageResult<Outcomes>>;
}

export interface PlanningRun {
  readonly plan: Plan;
  readonly stages: StageCache;
}

interface Kept<T> {
  readonly hash: string;
  readonly value: T;
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
    () => supplySeason(scenario, decisions, places.value.result, behind, needs.value.result, settings, solver),
  );
  return finishPlan(scenario, decisions, { places, season, needs }, supply, previous, settings, tools, run);
}

/**
 * The delivery once more after a change (a vehicle away, a road closed, a lock), from the plan that people know: nobody gets more or
 * less, and each consignment that comes on another day than told costs a promise. `compareDeliveries` lists what changes.
 *
 * @param present stages of the plan that people know, of the same scenario
 * @param settings steps of the search; few are enough, because it begins from the present plan
 */
export function replanDelivery(
  sent: Scenario,
  decisions: Decisions,
  present: StageCache,
  settings: SearchSettings,
  tools: PlanningTools<LinearSolver, PolygonOverlay>,
  hooks: PlanHooks = {},
): PlanningRun {
  const scenario = withAssumptions(sent, decisions);
  const run = runner(hooks);
  const ground = layGround(scenario, decisions, present, tools.overlay, run);
  const { rounds, allocation, delivery } = present.supply.value;
  const inputs = [hashSearch(decisions, settings, tools.solver), present.supply.hash, ground.season.hash];
  const supply = run('6-delivery', inputs, present.supply, () => ({
    rounds,
    allocation,
    delivery: planDelivery(
      scenario,
      decisions,
      ground.places.value.result,
      ground.season.value.result,
      allocation.result,
      settings,
      { allocation: allocation.result, delivery: delivery.result, as: 'told' },
    ),
  }));
  return finishPlan(scenario, decisions, ground, supply, present, settings, tools, run);
}

/**
 * A desk that prices moves on a plan as it stands.
 *
 * @param present stages of the plan; `decisions` those it was made with
 */
export function openDeliveryDesk(
  sent: Scenario,
  decisions: Decisions,
  present: StageCache,
  overlay: PolygonOverlay,
): DeliveryDesk {
  const scenario = withAssumptions(sent, decisions);
  const { places, season } = layGround(scenario, decisions, present, overlay, runner({}));
  const allocation = present.supply.value.allocation.result;
  const delivery = present.supply.value.delivery.result;
  const { state, cut } = beginDispatch(scenario, decisions, places.value.result, season.value.result, allocation, {
    allocation,
    delivery,
    as: 'told',
  });
  return new DeliveryDesk(scenario, state, cut);
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

type Run = <T>(stage: string, inputs: readonly string[], kept: Kept<T> | undefined, work: () => T) => Kept<T>;

/** Runs a stage, or takes its kept result where the inputs are the same. */
function runner(hooks: PlanHooks): Run {
  return (stage, inputs, kept, work) => {
    const hash = contentHash([ENGINE_VERSION, stage, inputs]);
    const reused = kept?.hash === hash;
    hooks.stageBegins?.(stage);
    const value = reused ? kept.value : work();
    hooks.stageEnds?.(stage, reused);
    return { hash, value };
  };
}

/** Stages 2 to 4: what is so whoever gets what. */
function layGround(
  scenario: Scenario,
  decisions: Decisions,
  previous: Ground | null,
  overlay: PolygonOverlay,
  run: Run,
): Ground {
  const input = hashInputs(scenario, decisions, overlay);
  const places = run('2-places', [input.land, input.decisions, input.overlay], previous?.places, () =>
    locatePlaces(scenario, decisions, overlay),
  );
  const season = run('3-season', [input.climate, places.hash], previous?.season, () =>
    outlookSeason(scenario, places.value.result),
  );
  const needs = run('4-needs', [input.supply, places.hash], previous?.needs, () =>
    estimateNeeds(scenario, places.value.result),
  );
  return { places, season, needs };
}

/**
 * What handing each zone its inoculant on each planning day is worth by a reference trip, without planning.
 *
 * @param previous stages of a plan of the same scenario, so that they are not run again; null: none is at hand
 * @param wish what the reference trip is to be like; what it leaves out is the usual vehicle's own
 */
export function calendarOf(
  sent: Scenario,
  decisions: Decisions,
  previous: Ground | null,
  overlay: PolygonOverlay,
  wish: TripWish = {},
): SeasonCalendar {
  const scenario = withAssumptions(sent, decisions);
  const { places, season, needs } = layGround(scenario, decisions, previous, overlay, runner({}));
  return drawCalendar(scenario, places.value.result, season.value.result, needs.value.result, wish);
}

/** How a planned trip would go if it left at another hour, whatever rule it then breaks. */
export function askTripAtHour(
  sent: Scenario,
  decisions: Decisions,
  previous: Ground | null,
  overlay: PolygonOverlay,
  ask: TripQuestion,
): TripAtHour {
  const scenario = withAssumptions(sent, decisions);
  const { season } = layGround(scenario, decisions, previous, overlay, runner({}));
  return tripAtHour(scenario, season.value.result, ask);
}

/** What is so whoever gets what, for those who play a plan that is already made. */
export function layGroundAlone(sent: Scenario, decisions: Decisions, previous: Ground | null, overlay: PolygonOverlay) {
  const scenario = withAssumptions(sent, decisions);
  const { places, season, needs } = layGround(scenario, decisions, previous, overlay, runner({}));
  return { scenario, places: places.value.result, season: season.value.result, needs: needs.value.result };
}

/**
 * Needs alone: what a changed seed rate asks for, before anything is planned again.
 *
 * @param shares zone shares of a plan of the same land
 */
export function estimateNeedsAlone(sent: Scenario, decisions: Decisions, shares: ZoneShares): Needs {
  return layNeeds(withAssumptions(sent, decisions), shares);
}

/** Questions to the stock of a plan, each answered by sharing it out again from the start, before delivery. */
export interface StockDesk {
  /** The first sharing out, without any change. */
  readonly before: Told;
  /** What the changes, made together, would give and take, whom, and by how much. */
  ask(...changes: readonly StockChange[]): { readonly after: Told; readonly difference: AllocationDifference };
  /** The smallest change that lifts a row's whole shortfall. @param shareRow row of the allocation's shares */
  smallestChange(shareRow: number, commodity: Commodity): SmallestChange;
  /** What carrying idle packs to another depot would serve. */
  transfers(): readonly TransferIdea[];
}

/** @param previous stages of a plan of the same scenario, so that they are not run again; null: none is at hand */
export function openStockDesk(
  sent: Scenario,
  decisions: Decisions,
  previous: Ground | null,
  { solver, overlay }: PlanningTools<LinearSolver, PolygonOverlay>,
): StockDesk {
  const scenario = withAssumptions(sent, decisions);
  const ground = layGround(scenario, decisions, previous, overlay, runner({}));
  const places = ground.places.value.result;
  const stock: StockCase = {
    scenario,
    decisions,
    places,
    season: ground.season.value.result,
    needs: ground.needs.value.result,
    solver,
  };
  const tell = (scenario: Scenario, allocation: Allocation): Told => ({
    ids: recordIds(scenario, places),
    allocation: recordAllocation(scenario, allocation),
  });
  const unchanged = allocateChanged(stock, null);
  const before = tell(stock.scenario, unchanged);
  return {
    before,
    ask(...changes) {
      const supposed = changes.reduce((so, change) => applyChange(so.scenario, so.decisions, change), {
        scenario,
        decisions,
      });
      const after = tell(supposed.scenario, allocateChanged({ ...stock, ...supposed }, null));
      return { after, difference: compareAllocations(before, after) };
    },
    transfers: () => proposeTransfers(stock, unchanged),
    smallestChange: (shareRow, commodity) => findSmallestChange(stock, unchanged, shareRow, commodity),
  };
}

/**
 * Stages 5 and 6, and once more where stock came free: what could not be delivered is offered to others, and what is
 * served is held as a promise.
 */
function supplySeason(
  scenario: Scenario,
  decisions: Decisions,
  places: Places,
  season: SeasonOutlook,
  needs: Needs,
  settings: SearchSettings,
  solver: LinearSolver,
): Supply {
  const allocation = allocateStock(scenario, decisions, places, season, needs, solver, null);
  const delivery = planDelivery(scenario, decisions, places, season, allocation.result, settings, null);
  if (delivery.result.unserved.length === 0) return { rounds: 1, allocation, delivery };
  const earlier = { allocation: allocation.result, delivery: delivery.result, as: 'held' } as const;
  const again = allocateStock(scenario, decisions, places, season, needs, solver, earlier);
  return {
    rounds: 2,
    allocation: again,
    delivery: planDelivery(scenario, decisions, places, season, again.result, settings, earlier),
  };
}

/** Hashes of the parts of the input that the stages depend on: a changed price must not redraw the roads. */
function hashInputs(scenario: Scenario, decisions: Decisions, overlay: PolygonOverlay) {
  const { communities, zones, handoverPoints, depots, vehicles, roads, planning, asOf, crops } = scenario;
  const { weather, seasons, seasonYear, forecastHorizonDays, utcOffsetMinutes, cropWindows, assumptions } = scenario;
  const { products, lots, policy, prices, yieldsTPerHa, handovers } = scenario;
  const roadRules = Object.entries(assumptions).filter(([name]) => name.startsWith('road.'));
  return {
    land: contentHash([communities, zones, handoverPoints, depots, vehicles, roads, planning, crops, roadRules]),
    climate: contentHash([
      weather,
      seasons,
      seasonYear,
      asOf,
      forecastHorizonDays,
      utcOffsetMinutes,
      cropWindows,
      assumptions,
    ]),
    supply: contentHash([products, lots, policy, prices, yieldsTPerHa, handovers, assumptions]),
    // Closed roads alone bear on places; a vehicle away or a lock must not redraw the map.
    decisions: contentHash(decisions.decisions.flatMap((one, row) => (one.kind === 'road-closed' ? [[row, one]] : []))),
    overlay: contentHash([overlay.name, overlay.version, overlay.options]),
  };
}

function hashSearch(decisions: Decisions, { seed, iterations }: SearchSettings, solver: LinearSolver): string {
  return contentHash([seed, iterations, solver.name, solver.version, solver.options, decisions.sha256]);
}
