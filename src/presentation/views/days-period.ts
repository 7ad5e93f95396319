import { dayNumber, isoDate, type Plan, parseIsoDate, type Scenario } from '../../engine/index.ts';

/** One planning day of the whole district. */
export interface PeriodDay {
  /** Days from the first planning day. */
  readonly offset: number;
  readonly iso: string;
  readonly dayOfMonth: number;
  /** False on Sundays and other days without work: a gap between columns. */
  readonly works: boolean;
  /** 0 to 1, over all planned hectares. */
  readonly sownChance: number;
  /** Class of `--sow-1` … `--sow-6`. */
  readonly sowClass: number;
  /** Highest expected maximum of the stations used; null where none is expected. */
  readonly maximumC: number | null;
  /** Class of `--heat-1` … `--heat-6`. */
  readonly heatClass: number;
  /** Highest rain of the stations used, where it was measured or is forecast; null elsewhere. */
  readonly rainMm: number | null;
  /** 0 passable, 1 difficult, 2 closed. */
  readonly road: number;
  /** Whether the air is measured or forecast at every station used; elsewhere it comes from past seasons. */
  readonly isKnown: boolean;
}

/** Lower bounds of the classes above the first: chance in parts of one, air in °C. */
const SOW_BOUNDS = [0.1, 0.25, 0.45, 0.65, 0.8];
const HEAT_BOUNDS = [28, 30, 32, 34, 36];
const FORECAST = 1;

const classOf = (value: number, bounds: readonly number[]): number =>
  1 + bounds.filter((bound) => value >= bound).length;

/** The planning days in order, with what is known or expected of each. */
export function planningPeriod(plan: Plan, scenario: Scenario): PeriodDay[] {
  const { season } = plan;
  const first = parseIsoDate(plan.scenario.planningFrom) ?? 0;
  const count = season.workday.length;
  const atStations = (column: readonly number[], offset: number) =>
    season.stations.flatMap((_, station) => column[station * count + offset] ?? []);
  return season.workday.map((works, offset) => {
    const iso = isoDate(dayNumber(first + offset));
    const maxima = atStations(season.tmaxC, offset);
    const maximumC = maxima.length === 0 ? null : Math.max(...maxima);
    const basis = atStations(season.airBasis, offset);
    const sownChance = season.sownChance[offset] ?? 0;
    return {
      offset,
      iso,
      dayOfMonth: Number(iso.slice(8)),
      works: works === 1,
      sownChance,
      sowClass: classOf(sownChance, SOW_BOUNDS),
      maximumC,
      heatClass: classOf(maximumC ?? 0, HEAT_BOUNDS),
      rainMm: highestRain(plan, scenario, first + offset),
      road: season.roadState[offset] ?? 0,
      isKnown: basis.length > 0 && basis.every((one) => one <= FORECAST),
    };
  });
}

function highestRain({ season }: Plan, { weather }: Scenario, day: number): number | null {
  const rain = weather
    .filter(({ id }) => season.stations.includes(id))
    .map(({ days, rainMm }) => rainMm[days.indexOf(dayNumber(day))] ?? Number.NaN)
    .filter((millimetres) => !Number.isNaN(millimetres));
  return rain.length === 0 ? null : Math.max(...rain);
}

/** The day to show: the one asked for where work is done on it, else the first delivery, else the first workday. */
export function dayToShow(plan: Plan, days: readonly PeriodDay[], asked: string | null): string {
  const workdays = days.filter(({ works }) => works).map(({ iso }) => iso);
  if (asked !== null && workdays.includes(asked)) return asked;
  return [...plan.delivery.trips.date].sort()[0] ?? workdays[0] ?? plan.scenario.planningFrom;
}
