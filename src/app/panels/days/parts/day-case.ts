import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Plan, Scenario } from '../../../../engine/index.ts';
import { type LeftOut, leftOut } from '../../../../presentation/views/days-left.ts';
import { dayToShow, type PeriodDay, planningPeriod } from '../../../../presentation/views/days-period.ts';
import { type DayLand, dayLand } from '../../../../presentation/views/days-picture.ts';
import { hoursOut, minuteToShow, type VehicleRun, vehicleRuns } from '../../../../presentation/views/days-vehicles.ts';
import { type ZoneSkyline, zoneSkylines } from '../../../../presentation/views/days-zones.ts';
import { rememberLast } from '../../../state/remember-last.ts';
import { useSeason, useView } from '../../../state/use-stores.ts';

/** All of a plan that the view shows whatever the day. */
export interface PlannedDays {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly days: readonly PeriodDay[];
  readonly zones: readonly ZoneSkyline[];
  readonly left: readonly LeftOut[];
}

/** One day of it. */
export interface DayCase extends PlannedDays {
  readonly iso: string;
  readonly runs: readonly VehicleRun[];
  readonly hours: readonly [number, number];
  readonly land: DayLand;
}

const plannedDays = rememberLast((plan: Plan, scenario: Scenario): PlannedDays => {
  const days = planningPeriod(plan, scenario);
  return { plan, scenario, days, zones: zoneSkylines(plan, scenario, days), left: leftOut(plan, scenario) };
});

const dayOf = rememberLast((planned: PlannedDays, iso: string): DayCase => {
  const { plan, scenario, left } = planned;
  const runs = vehicleRuns(plan, scenario, iso);
  return { ...planned, iso, runs, hours: hoursOut(runs), land: dayLand(plan, scenario, runs, left) };
});

/** The day asked for, or the one to show without being asked; the same object while plan and day are the same. */
export function dayCase(plan: Plan, scenario: Scenario, asked: string | null): DayCase {
  const planned = plannedDays(plan, scenario);
  return dayOf(planned, dayToShow(plan, planned.days, asked));
}

/** Null before there is a plan. */
export function useDay(): DayCase | null {
  const plan = useSeason((season) => season.plan);
  const scenario = useSeason((season) => season.scenario);
  const asked = useView((view) => view.day);
  return plan === null || scenario === null ? null : dayCase(plan, scenario, asked);
}

export function useMinute(hours: readonly [number, number]): number {
  return minuteToShow(
    useView((view) => view.hour),
    hours,
  );
}

/** The vehicle that was chosen last, by id: table and chart show the same one. */
const pickedStore = createStore<{ readonly id: string | null }>(() => ({ id: null }));

export const pickVehicle = (id: string): void => pickedStore.setState({ id });

/** The run picked where its vehicle runs that day, else the one whose packs get warmest. */
export function usePicked(runs: readonly VehicleRun[]): VehicleRun | null {
  const id = useStore(pickedStore, (state) => state.id);
  const warmth = (run: VehicleRun) => run.hotBandMaxC ?? -1;
  const warmest = runs.reduce<VehicleRun | null>(
    (best, run) => (best && warmth(best) >= warmth(run) ? best : run),
    null,
  );
  return runs.find((run) => run.id === id) ?? warmest;
}
