import { contentHash } from './numerics/content-hash.ts';
import type { PolygonOverlay } from './numerics/polygon-overlay.ts';
import { locatePlaces } from './stages/2-places/locate-places.ts';
import { outlookSeason } from './stages/3-season/outlook-season.ts';
import { estimateNeeds } from './stages/4-needs/estimate-needs.ts';
import type { Decisions, Needs, Places, PlanHooks, Scenario, SeasonOutlook, StageResult } from './vocabulary/index.ts';

export const ENGINE_VERSION = '0.1.0';

/** Results of stages 2 to 4 under the hash of their inputs. */
export interface Ground {
  readonly places: Kept<StageResult<Places>>;
  readonly season: Kept<StageResult<SeasonOutlook>>;
  readonly needs: Kept<StageResult<Needs>>;
}

export interface Kept<T> {
  readonly hash: string;
  readonly value: T;
}

export type Run = <T>(stage: string, inputs: readonly string[], kept: Kept<T> | undefined, work: () => T) => Kept<T>;

/** Runs a stage, or takes its kept result where the inputs are the same. */
export function runner(hooks: PlanHooks): Run {
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
export function layGround(
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
