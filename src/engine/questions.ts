import { type Ground, layGround, runner } from './ground.ts';
import type { LinearSolver } from './numerics/linear-solver.ts';
import type { PolygonOverlay } from './numerics/polygon-overlay.ts';
import type { StageCache } from './pipeline.ts';
import { type AllocationDifference, compareAllocations, type Told } from './record/compare-allocations.ts';
import { recordAllocation } from './record/record-allocation.ts';
import { recordIds } from './record/record-plan.ts';
import { drawCalendar } from './stages/3-season/calendar/draw-calendar.ts';
import { layNeeds } from './stages/4-needs/estimate-needs.ts';
import { allocateChanged, type StockCase } from './stages/5-allocation/allocate-changed.ts';
import { applyChange } from './stages/5-allocation/apply-change.ts';
import { findSmallestChange } from './stages/5-allocation/find-smallest-change.ts';
import { proposeTransfers } from './stages/5-allocation/propose-transfers.ts';
import { DeliveryDesk } from './stages/6-delivery/delivery-desk.ts';
import { beginDispatch } from './stages/6-delivery/plan-delivery.ts';
import { tripAtHour } from './stages/6-delivery/trip-at-hour.ts';
import {
  type Allocation,
  type Commodity,
  type Decisions,
  type Needs,
  type PlanningTools,
  type Scenario,
  type SeasonCalendar,
  type SmallestChange,
  type StockChange,
  type TransferIdea,
  type TripAtHour,
  type TripQuestion,
  type TripWish,
  withAssumptions,
  type ZoneShares,
} from './vocabulary/index.ts';

export type { Ground } from './ground.ts';

// What a person asks beside a plan. Nothing of it is kept; what is to hold becomes a row of a file or a decision.

/** What is so whoever gets what, for those who play a plan that is already made. */
export function layGroundAlone(sent: Scenario, decisions: Decisions, previous: Ground | null, overlay: PolygonOverlay) {
  const scenario = withAssumptions(sent, decisions);
  const { places, season, needs } = layGround(scenario, decisions, previous, overlay, runner({}));
  return { scenario, places: places.value.result, season: season.value.result, needs: needs.value.result };
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

/**
 * Needs alone: what a changed seed rate asks for, before anything is planned again.
 *
 * @param shares zone shares of a plan of the same land
 */
export function estimateNeedsAlone(sent: Scenario, decisions: Decisions, shares: ZoneShares): Needs {
  return layNeeds(withAssumptions(sent, decisions), shares);
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
