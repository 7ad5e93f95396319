import type { Plan, Scenario } from '../../engine/index.ts';
import type { LeftOut } from './days-left.ts';
import { marksAt, routesOf } from './days-paths.ts';
import type { VehicleRun } from './days-vehicles.ts';
import { depotSymbols, type MapPicture, zoneLabels } from './map-view.ts';

/** What of a day's map stays while its hours go by. */
export type DayLand = Omit<MapPicture, 'symbols'>;

/** Land served that day lifted from the ground, land never served cross-hatched, the routes over it. */
export function dayLand(
  plan: Plan,
  scenario: Scenario,
  runs: readonly VehicleRun[],
  left: readonly LeftOut[],
): DayLand {
  const served = new Set(runs.flatMap(({ stops }) => stops.flatMap(({ communities }) => communities)));
  const missed = new Set(left.flatMap(({ communities }) => communities));
  return {
    fills: scenario.communities.map((_, community) => (served.has(community) ? 'sheet' : null)),
    hatches: scenario.communities.map((_, community) => (missed.has(community) ? 'nothing' : null)),
    lines: routesOf(plan, scenario, runs),
    labels: zoneLabels(scenario, () => null),
  };
}

/** The day's map at one minute. */
export const dayPictureAt = (
  plan: Plan,
  scenario: Scenario,
  runs: readonly VehicleRun[],
  land: DayLand,
  minute: number,
): MapPicture => ({ ...land, symbols: [...depotSymbols(scenario), ...marksAt(plan, scenario, runs, minute)] });

/** The day in figures: hectares of the goods that are handed over. */
export function dayLoad({ delivery, allocation }: Plan, runs: readonly VehicleRun[]) {
  const stops = runs.flatMap((run) => run.stops);
  const loads = stops.flatMap(({ row }) => delivery.stops.loads[row] ?? []);
  const isInoculant = (load: number) => allocation.consignments.group[delivery.loads.consignment[load] ?? -1] !== 'dry';
  const hectares = loads.filter(isInoculant).reduce((sum, load) => sum + (delivery.loads.hectares[load] ?? 0), 0);
  return { vehicles: runs.length, stops: stops.length, inoculantHa: hectares };
}
