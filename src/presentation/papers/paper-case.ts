import { type Decision, isoDate, type Plan, parseIsoDate, type Scenario } from '../../engine/index.ts';
import { localNumber } from '../local-number.ts';
import { hourText, weekdayOf } from '../views/days-axis.ts';
import { type VehicleDay, vehiclesOfDay } from '../views/days-fleet.ts';
import { dateText } from '../views/frame-view.ts';
import { type PaperWords, paperWords } from '../wording/paper-words.ts';
import type { Words } from '../wording/words.ts';

/** All that papers are made from. */
export interface PaperCase {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly decisions: readonly Decision[];
  /** Latest minute at which each trip of the plan may leave. */
  readonly latestLeave: readonly number[];
  readonly words: Words;
  readonly said: PaperWords;
}

export function paperCase(plan: Plan, scenario: Scenario, decisions: readonly Decision[], words: Words): PaperCase {
  return {
    plan,
    scenario,
    decisions,
    words,
    said: paperWords(words),
    latestLeave: plan.delivery.trips.latestLeaveMinute,
  };
}

/** Days on which a vehicle runs, in order. */
export const daysOfPlan = ({ plan }: PaperCase): string[] => [...new Set(plan.delivery.trips.date)].sort();

export const vehicleDays = ({ plan, scenario }: PaperCase, date: string): readonly VehicleDay[] =>
  vehiclesOfDay(plan, scenario, date);

/** `Tue 24 Nov 2026`. */
export const dayText = ({ said, words }: PaperCase, iso: string): string =>
  said.road.day(words.weekdays[weekdayOf(iso)] ?? '', dateText(iso, words));

export function number({ words }: PaperCase, value: number, decimals = 0): string {
  return localNumber(value, words, decimals);
}

/** No decimals where none are needed: `5`, `2.5`. */
export const shortNumber = (c: PaperCase, value: number, most = 1): string => {
  const decimals = Array.from({ length: most + 1 }, (_, i) => i).find(
    (i) => Math.abs(value - Number(value.toFixed(i))) < 1e-9,
  );
  return number(c, value, decimals ?? most);
};

/** Latest leaving hour of a trip, rounded down, but never before the hour it is told to leave at. */
export function leaveByText({ plan, latestLeave }: PaperCase, trip: number): string {
  const planned = Math.round(plan.delivery.trips.leaveMinute[trip] ?? 0);
  return hourText(Math.max(planned, Math.floor(latestLeave[trip] ?? planned)));
}

/** What overrides a sheet, and the plan it is of: seven digits of its hashes tell plans apart. */
export function footOf(c: PaperCase): readonly [string, string] {
  const { plan, said, words } = c;
  const asOf = dateText(plan.scenario.asOf, words);
  const mark = `${plan.scenarioSha256.slice(0, 4)}-${plan.decisionsSha256.slice(0, 3)}-${plan.seed}`;
  return [said.road.labelWins, said.road.ofPlan(plan.scenario.name, asOf, mark)];
}

/** Days from one date to another. */
export const daysBetween = (from: string, to: string): number => (parseIsoDate(to) ?? 0) - (parseIsoDate(from) ?? 0);

export function dayBefore(iso: string, days: number): string {
  const day = parseIsoDate(iso);
  return day === null ? iso : isoDate((day - days) as typeof day);
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
