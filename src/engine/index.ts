/** The only door to the engine. Holds no code. */
export { checkPlan } from './checker/check-plan.ts';
export { checkShape } from './checker/check-shape.ts';
export type { LinearAnswer, LinearModel, LinearSolver } from './numerics/linear-solver.ts';
export type { OverlayPolygons, PolygonOverlay, PreparedPolygon } from './numerics/polygon-overlay.ts';
export { rewindPolygons } from './numerics/ring-winding.ts';
export { Sha256 } from './numerics/sha256.ts';
export {
  type AllocationDifference,
  addProblems,
  type CellDifference,
  type CommodityDifference,
  compareAllocations,
  compareDeliveries,
  type DeliveryDesk,
  type DeliveryDifference,
  type InstanceAnswer,
  type InstanceVehicles,
  type LotDifference,
  makePlayResult,
  type PlanningRun,
  type PreparedPlay,
  planSeason,
  playSeason,
  preparePlay,
  type RoutingInstance,
  readScenario,
  replanSeason,
  type ScenarioReading,
  type StageCache,
  solveInstance,
  type Told,
} from './pipeline.ts';
export {
  askTripAtHour,
  calendarOf,
  estimateNeedsAlone,
  openDeliveryDesk,
  openStockDesk,
  type StockDesk,
} from './questions.ts';
export { INOCULATION_PRACTICE } from './reference/inoculation-practice.ts';
export { type LongRun, playHere } from './replay/long-run.ts';
export { openReplay } from './replay/open-replay.ts';
export { openRun, type RunKinds, type RunOrder } from './replay/open-run.ts';
export {
  type RankedUnknowns,
  rankRun,
  type Unknown,
} from './replay/rank-unknowns.ts';
export {
  comparePlans,
  type PlanDifference,
  type ReplayedPlan,
  type ReplayedSeason,
  replaySeasons,
  worstSeasons,
  type ZoneLoss,
} from './replay/replay-seasons.ts';
export { judgeRobustDays } from './replay/robust-days.ts';
export {
  halfWidthShare,
  MAY_BE_NOUGHT,
  type SpreadTotal,
  type SureSpreads,
  spreadRun,
} from './replay/spread-over-draws.ts';
export * from './vocabulary/index.ts';
