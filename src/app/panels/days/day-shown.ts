import type { Plan, Scenario } from '../../../engine/index.ts';
import { shownDay } from '../../../presentation/views/days-axis.ts';
import { hoursOfDay, shownHour, type VehicleDay, vehiclesOfDay } from '../../../presentation/views/days-fleet.ts';
import { dayHeat } from '../../../presentation/views/days-heat.ts';
import { type NotServed, notServed } from '../../../presentation/views/days-unserved.ts';
import { dayGround, dayPicture } from '../../../presentation/views/days-view.ts';
import { EMPTY_PICTURE, type MapPicture } from '../../../presentation/views/map-view.ts';
import { rememberLast } from '../../state/remember-last.ts';
import type { SeasonState } from '../../state/season-state.ts';
import { useSeason, useView } from '../../state/use-stores.ts';
import type { ViewState } from '../../state/view-store.ts';
import { useChosenVehicle } from './chosen-vehicle.ts';

/** The day and the hour on show, with what runs then. */
export interface DayShown {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly day: string;
  readonly vehicles: readonly VehicleDay[];
  readonly hours: { readonly from: number; readonly to: number };
  readonly hour: number;
  readonly notServed: readonly NotServed[];
}

const vehicles = rememberLast(vehiclesOfDay);
const left = rememberLast(notServed);
const ground = rememberLast(dayGround);
const picture = rememberLast(dayPicture);
export const heatOf = rememberLast(dayHeat);

function dayShown(
  plan: Plan | null,
  scenario: Scenario | null,
  { day: askedDay, hour: askedHour }: Pick<ViewState, 'day' | 'hour'>,
): DayShown | null {
  if (plan === null || scenario === null) return null;
  const day = shownDay(plan, askedDay);
  const running = vehicles(plan, scenario, day);
  const hours = hoursOfDay(running);
  return {
    plan,
    scenario,
    day,
    vehicles: running,
    hours,
    hour: shownHour(askedHour, hours),
    notServed: left(plan, scenario),
  };
}

/** Null before there is a plan. */
export function useDayShown(): DayShown | null {
  const plan = useSeason((season) => season.plan);
  const scenario = useSeason((season) => season.scenario);
  const day = useView((view) => view.day);
  const hour = useView((view) => view.hour);
  return dayShown(plan, scenario, { day, hour });
}

/** The vehicle on show: the one chosen where it runs that day, else the one whose packs get warmest. */
export function useShownVehicle(shown: DayShown | null): VehicleDay | null {
  const { id } = useChosenVehicle();
  const running = shown?.vehicles ?? [];
  const chosen = running.find((vehicle) => vehicle.id === id);
  const warmest = [...running].sort((a, b) => (b.packMaxC ?? -1) - (a.packMaxC ?? -1))[0];
  return chosen ?? warmest ?? null;
}

/** What the view puts on the map. */
export function dayOnMap({ plan, scenario }: SeasonState, view: ViewState): MapPicture {
  const shown = dayShown(plan, scenario, view);
  if (shown === null) return EMPTY_PICTURE;
  const still = ground(shown.plan, shown.scenario, shown.vehicles, shown.notServed);
  return picture(shown.plan, shown.scenario, shown.vehicles, still, shown.hour);
}
