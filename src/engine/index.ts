/** The only door to the engine. Holds no code. */
export { checkPlan } from './checker/check-plan.ts';
export type { LinearAnswer, LinearModel, LinearSolver } from './numerics/linear-solver.ts';
export type { OverlayPolygons, PolygonOverlay, PreparedPolygon } from './numerics/polygon-overlay.ts';
export { rewindPolygons } from './numerics/ring-winding.ts';
export { Sha256 } from './numerics/sha256.ts';
export {
  type AllocationDifference,
  addProblems,
  type CellDifference,
  type CommodityDifference,
  calendarOf,
  compareAllocations,
  estimateNeedsAlone,
  type LotDifference,
  latestLeaves,
  makePlayResult,
  openStockDesk,
  planSeason,
  playSeason,
  preparePlay,
  readScenario,
  type ScenarioReading,
  type StageCache,
  type StockDesk,
  type Told,
} from './pipeline.ts';
export { INOCULATION_PRACTICE } from './reference/inoculation-practice.ts';
export * from './vocabulary/index.ts';
