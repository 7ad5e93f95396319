import type { LinearSolver } from '../numerics/linear-solver.ts';
import type { PolygonOverlay } from '../numerics/polygon-overlay.ts';
import { quantile } from '../numerics/quantile.ts';
import { makePlayResult, planSeason, playSeason, preparePlay, type StageCache } from '../pipeline.ts';
import type {
  Decisions,
  PlanningTools,
  Scenario,
  SearchSettings,
  SeasonOutlook,
  SowingWindow,
} from '../vocabulary/index.ts';

/** What a plan gives in a season that it was not chosen on. */
export interface JudgedSeason {
  readonly year: number;
  /** Hectares reached, and hectares by their value, of a plan chosen on every other season of the list. */
  readonly onListHa: number;
  readonly onListValueHa: number;
  /** The same of a plan chosen on the median one of the other seasons. */
  readonly onMedianHa: number;
  readonly onMedianValueHa: number;
}

/**
 * Leaves one season out at a time: plans on the others, once on all of them and once on their median one, and plays both plans
 * in the season left out. Nothing but the list of seasons behind the reach curves differs between the two.
 *
 * @param years seasons to judge in; all where left out
 */
export function judgeRobustDays(
  scenario: Scenario,
  decisions: Decisions,
  settings: SearchSettings,
  tools: PlanningTools<LinearSolver, PolygonOverlay>,
  years?: readonly number[],
): JudgedSeason[] {
  let kept: StageCache | null = null;
  const reach = (choose: (season: SeasonOutlook) => readonly number[], year: number) => {
    const { stages } = planSeason(scenario, decisions, kept, settings, tools, {
      seasonsBehind: (season) => keepMembers(season, choose(season)),
    });
    kept = stages;
    return playedIn(scenario, stages, year);
  };
  const first = planSeason(scenario, decisions, null, settings, tools).stages;
  kept = first;
  const all = first.season.value.result.members.map(({ year }) => year);
  return (years ?? all).map((year): JudgedSeason => {
    const others = ({ members }: SeasonOutlook) => [...members.keys()].filter((m) => members[m]?.year !== year);
    const onList = reach(others, year);
    const onMedian = reach((season) => [medianMember(season, others(season))], year);
    return {
      year,
      onListHa: onList.reachedHa,
      onListValueHa: onList.valueHa,
      onMedianHa: onMedian.reachedHa,
      onMedianValueHa: onMedian.valueHa,
    };
  });
}

function playedIn(scenario: Scenario, stages: StageCache, year: number) {
  const season = stages.season.value.result;
  const prepared = preparePlay({
    scenario,
    places: stages.places.value.result,
    season,
    needs: stages.needs.value.result,
    allocation: stages.supply.value.allocation.result,
    delivery: stages.supply.value.delivery.result,
  });
  const result = makePlayResult(prepared);
  const member = season.members.findIndex((one) => one.year === year);
  playSeason(prepared, member, new Float64Array(prepared.drawWidth), result);
  return { reachedHa: result.reachedHa, valueHa: result.valueHa };
}

/** The outlook with some of its members alone: what the reach curves are then drawn over. */
export function keepMembers(season: SeasonOutlook, kept: readonly number[]): SeasonOutlook {
  const pick = (column: Float64Array) => Float64Array.from(kept, (member) => column[member] as number);
  const windows = season.windows.map((window): SowingWindow => {
    const firstDay = pick(window.firstDay);
    const begun = (day: number) => firstDay.filter((first) => first <= season.firstDay + day).length;
    return {
      ...window,
      firstDay,
      lastDay: pick(window.lastDay),
      sownChance: window.sownChance.map((_, day) => begun(day) / Math.max(1, kept.length)),
    };
  });
  return { ...season, members: kept.flatMap((member) => season.members[member] ?? []), windows };
}

/** Of some members, the one whose sowing begins nearest to the middle: mean first day over the windows, the earlier year of equals. */
function medianMember({ windows, members }: SeasonOutlook, among: readonly number[]): number {
  const meanFirst = among.map((member) => {
    const days = windows.map(({ firstDay }) => firstDay[member] as number).filter((day) => !Number.isNaN(day));
    return days.length > 0 ? days.reduce((sum, day) => sum + day, 0) / days.length : Number.POSITIVE_INFINITY;
  });
  const middle = quantile(
    meanFirst.filter((day) => Number.isFinite(day)),
    0.5,
  );
  const order = [...among.keys()].sort(
    (i, j) =>
      Math.abs((meanFirst[i] as number) - middle) - Math.abs((meanFirst[j] as number) - middle) ||
      (members[among[i] as number]?.year ?? 0) - (members[among[j] as number]?.year ?? 0),
  );
  return among[order[0] ?? 0] ?? 0;
}
