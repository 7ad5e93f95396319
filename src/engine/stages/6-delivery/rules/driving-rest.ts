import type { Policy } from '../../../vocabulary/scenario.ts';

/** Rest that a crew is owed, as the programme states it. */
export interface DrivingRest {
  /** Most minutes of driving from one rest to the next; Infinity where no rule is stated. */
  readonly afterMinutes: number;
  readonly minutes: number;
}

export function restOf({ restAfterHours, restMinutes }: Policy): DrivingRest {
  return { afterMinutes: restMinutes > 0 ? restAfterHours * 60 : Number.POSITIVE_INFINITY, minutes: restMinutes };
}

const SLACK_MINUTES = 1e-6;

/**
 * Whether the crew rests before it drives on: the next leg would take it beyond the most minutes of driving. Nobody rests within a leg, so
 * it rests where it stands; unloading, training and loading are work and count neither as driving nor as rest.
 */
export function needsRest({ afterMinutes }: DrivingRest, drivenMinutes: number, legMinutes: number): boolean {
  return drivenMinutes > 0 && drivenMinutes + legMinutes > afterMinutes + SLACK_MINUTES;
}

/** Whether a leg can be driven without a rest within it. */
export function isDrivable({ afterMinutes }: DrivingRest, legMinutes: number): boolean {
  return legMinutes <= afterMinutes + SLACK_MINUTES;
}
