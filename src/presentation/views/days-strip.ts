import { type Plan, parseIsoDate, type Scenario } from '../../engine/index.ts';
import { type PlanningDay, planningDays } from './days-axis.ts';

/** What the season is expected to be like on one planning day, over the whole district. */
export interface StripDay extends PlanningDay {
  /** Chance that fields have been sown or can be, 0 to 1. */
  readonly sownChance: number;
  /** Class of that chance: 1 below 10 %, then 10, 25, 45, 65, 80 % and above. */
  readonly sowClass: number;
  /** Highest maximum of the stations used, °C; null where none is expected. */
  readonly maximumC: number | null;
  /** 1 below 28 °C, then 28, 30, 32, 34, 36 °C and above. */
  readonly heatClass: number | null;
  /** Highest rain of the stations used, mm, where it was measured or is forecast. */
  readonly rainMm: number | null;
  /** 0 passable, 1 difficult, 2 closed. */
  readonly roadState: number;
}

export interface SeasonStrip {
  readonly days: readonly StripDay[];
  /** Last planning day whose air was measured or is forecast, and whether it is a forecast; null where none is. */
  readonly known: { readonly iso: string; readonly offset: number; readonly isForecast: boolean } | null;
  readonly pastSeasons: number;
}

const SOW_CLASSES = [0.1, 0.25, 0.45, 0.65, 0.8] as const;
const HEAT_CLASSES = [28, 30, 32, 34, 36] as const;
const FORECAST = 1;

const classOf = (value: number, bounds: readonly number[]): number =>
  1 + bounds.filter((least) => value >= least).length;

/** The season day by day: measured and forecast first, then past seasons, never blended. */
export function seasonStrip(plan: Plan, scenario: Scenario): SeasonStrip {
  const { season } = plan;
  const rain = knownRain(plan, scenario);
  const days = planningDays(plan).map((day): StripDay => {
    const maximum = highest(acrossStations(plan, season.tmaxC, day.offset));
    const sownChance = season.sownChance[day.offset] ?? 0;
    return {
      ...day,
      sownChance,
      sowClass: classOf(sownChance, SOW_CLASSES),
      maximumC: maximum,
      heatClass: maximum === null ? null : classOf(maximum, HEAT_CLASSES),
      rainMm: rain[day.offset] ?? null,
      roadState: season.roadState[day.offset] ?? 0,
    };
  });
  return { days, known: lastKnown(plan, days), pastSeasons: season.memberYears.length };
}

/** A column's values on one day at the stations themselves, not at places above or below them; one after the other. */
const acrossStations = <T>({ season }: Plan, column: readonly T[], day: number): T[] =>
  season.stations.flatMap((_, station) =>
    season.stationRiseM[station] === 0 ? column.slice(station * season.workday.length + day).slice(0, 1) : [],
  );

function highest(values: readonly number[]): number | null {
  return values.length === 0 ? null : Math.max(...values);
}

function lastKnown(plan: Plan, days: readonly StripDay[]): SeasonStrip['known'] {
  const basisOf = (day: StripDay) => acrossStations(plan, plan.season.airBasis, day.offset);
  const last = days.findLast((day) => {
    const basis = basisOf(day);
    return basis.length > 0 && Math.max(...basis) <= FORECAST;
  });
  return last ? { iso: last.iso, offset: last.offset, isForecast: basisOf(last).includes(FORECAST) } : null;
}

/** Highest rain of each planning day among the stations used, where a row of the weather file says it; mm. */
function knownRain(plan: Plan, scenario: Scenario): readonly (number | null)[] {
  const first = parseIsoDate(plan.scenario.planningFrom) ?? 0;
  const rain: (number | null)[] = plan.season.workday.map(() => null);
  for (const station of scenario.weather) {
    if (!plan.season.stations.includes(station.id)) continue;
    for (let row = station.days.length - 1; row >= 0; row--) {
      const offset = (station.days[row] ?? 0) - first;
      if (offset < 0) break;
      const millimetres = station.rainMm[row] ?? Number.NaN;
      if (offset < rain.length && !Number.isNaN(millimetres)) rain[offset] = Math.max(rain[offset] ?? 0, millimetres);
    }
  }
  return rain;
}
