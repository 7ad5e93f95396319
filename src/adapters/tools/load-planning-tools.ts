import type { LinearSolver, PlanningTools, PolygonOverlay } from '../../engine/index.ts';
import { loadGeosOverlay } from '../geometry/geos-overlay.ts';
import { loadHighsSolver } from '../solver/load-highs-solver.ts';

/** Starts the tools that planning calls: HiGHS for linear programs, GEOS for polygons. */
export async function loadPlanningTools(): Promise<PlanningTools<LinearSolver, PolygonOverlay>> {
  const [solver, overlay] = await Promise.all([loadHighsSolver(), loadGeosOverlay()]);
  return { solver, overlay };
}
