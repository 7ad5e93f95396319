import type { LinearSolver } from '../../numerics/linear-solver.ts';
import type { Decisions } from '../../vocabulary/decisions.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Allocation } from '../../vocabulary/stage-results/allocation.ts';
import type { Needs } from '../../vocabulary/stage-results/needs.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import type { StockChange } from '../../vocabulary/stock-change.ts';
import { allocateStock } from './allocate-stock.ts';
import { applyChange } from './apply-change.ts';

/** All that an allocation is made from. */
export interface StockCase {
  readonly scenario: Scenario;
  readonly decisions: Decisions;
  readonly places: Places;
  readonly season: SeasonOutlook;
  readonly needs: Needs;
  readonly solver: LinearSolver;
}

/**
 * The allocation as it would be with something changed, solved again from the start: before delivery, first round. The need
 * stays as it was worked out, even where bought packs would be the most of their kind.
 */
export function allocateChanged(stock: StockCase, change: StockChange | null): Allocation {
  const { scenario, decisions } = change ? applyChange(stock.scenario, stock.decisions, change) : stock;
  const { places, season, needs, solver } = stock;
  return allocateStock(scenario, decisions, places, season, needs, solver, null).result;
}
