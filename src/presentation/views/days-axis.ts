import { clockText, dayNumber, isoDate, isoWeekday, type Plan, parseIsoDate } from '../../engine/index.ts';

/** A day of the planning period, as a column of the calendar. */
export interface PlanningDay {
  /** Days from the first planning day. */
  readonly offset: number;
  readonly iso: string;
  readonly dayOfMonth: number;
  /** 0 Monday to 6 Sunday. */
  readonly weekday: number;
  /** Vehicles may run: a workday and no holiday. The others are a gap between columns. */
  readonly works: boolean;
}

/** All planning days, in order. */
export function planningDays({ scenario, season }: Plan): PlanningDay[] {
  const first = parseIsoDate(scenario.planningFrom);
  if (first === null) return [];
  return season.workday.map((works, offset) => {
    const day = dayNumber(first + offset);
    const iso = isoDate(day);
    return { offset, iso, dayOfMonth: Number(iso.slice(8)), weekday: isoWeekday(day) - 1, works: works === 1 };
  });
}

/** The day that the view shows: the one asked for where it may be driven, else the first with a delivery, else the first. */
export function shownDay(plan: Plan, asked: string | null): string {
  const days = planningDays(plan).filter(({ works }) => works);
  if (days.some(({ iso }) => iso === asked)) return asked ?? '';
  const [first] = [...plan.delivery.trips.date].sort();
  return first ?? days[0]?.iso ?? plan.scenario.planningFrom;
}

/** A column of strip and calendar: a day, or the gap that days without driving leave. */
export type CalendarColumn =
  | { readonly kind: 'day'; readonly day: PlanningDay }
  /** The last day of the gap. */
  | { readonly kind: 'gap'; readonly day: PlanningDay };

/** Columns of the days; days without driving that follow each other are one gap. */
export function calendarColumns(days: readonly PlanningDay[]): CalendarColumn[] {
  return days.flatMap((day, i): CalendarColumn[] => {
    if (day.works) return [{ kind: 'day', day }];
    const next = days[i + 1];
    return next && !next.works ? [] : [{ kind: 'gap', day }];
  });
}

/** `06:35`, the nearest minute. */
export const hourText = (minutes: number): string => clockText(Math.round(minutes));

/** 0 Monday to 6 Sunday. */
export const weekdayOf = (iso: string): number => isoWeekday(parseIsoDate(iso) ?? dayNumber(0)) - 1;
