import type { PolygonOverlay } from '../numerics/polygon-overlay.ts';
import { type PlayRule, type PreparedPlay, preparePlay } from '../pipeline.ts';
import { type Ground, layGroundAlone } from '../questions.ts';
import type { Decisions, Plan, Scenario } from '../vocabulary/index.ts';
import { readPlan } from './read-plan.ts';

/** A plan document, ready to be played in the seasons of its scenario's weather record. */
export interface Replay {
  readonly years: readonly number[];
  /** Why the seasons are what they are: names of zones in the order of the plan, the last for outside all zones. */
  readonly zoneNames: readonly (string | null)[];
  readonly play: (rule: PlayRule) => PreparedPlay;
}

/**
 * Opens a plan for playing. The plan must belong to the scenario and the decisions (the checker says whether it does); seasons are
 * read from the weather record, deliveries from the plan.
 *
 * @param previous stages of a plan of the same scenario, so that they are not run again; null: none is at hand
 */
export function openReplay(
  sent: Scenario,
  decisions: Decisions,
  plan: Plan,
  previous: Ground | null,
  overlay: PolygonOverlay,
): Replay {
  const ground = layGroundAlone(sent, decisions, previous, overlay);
  const made = readPlan(plan);
  const prepared = new Map<PlayRule, PreparedPlay>();
  return {
    years: ground.season.members.map(({ year }) => year),
    zoneNames: [...ground.scenario.zones.map(({ name }) => name), null],
    play: (rule) => {
      const play = prepared.get(rule) ?? preparePlay({ ...ground, ...made }, rule);
      prepared.set(rule, play);
      return play;
    },
  };
}
