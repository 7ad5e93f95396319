import { geodesicKm } from '../../numerics/geodesic-length.ts';
import { effectiveAirC } from '../../science/box.ts';
import { airCelsius, type SunTimes, sunLoad, sunTimes } from '../../science/sun-and-air.ts';
import { parseIsoDate } from '../../vocabulary/calendar.ts';
import type { Carriage } from '../../vocabulary/fleet.ts';
import type { Position } from '../../vocabulary/places.ts';
import type { Plan } from '../../vocabulary/plan.ts';
import type { Depot, Scenario } from '../../vocabulary/scenario.ts';
import { dayNumber } from '../../vocabulary/units.ts';

const QUARTERS = 96;

/** Sun and air of a plan's days, from the extremes that stand in the plan. */
export interface PlanAir {
  /** Planning day of an ISO date; null where the plan has no such day. */
  readonly dayOf: (iso: string) => number | null;
  readonly stationOfPlace: (place: number) => number;
  readonly stationOfDepot: (depot: Depot) => number;
  readonly sun: (station: number, day: number) => SunTimes;
  /** Shade air at the beginning of each quarter hour, °C. */
  readonly shade: (station: number, day: number) => readonly number[];
  /** Air as the box feels it, °C, the mean of each quarter hour's two ends. */
  readonly atBox: (station: number, day: number, carriage: Carriage, moving: boolean) => readonly number[];
}

export function openPlanAir(scenario: Scenario, plan: Plan): PlanAir {
  const { season, places } = plan;
  const days = season.workday.length;
  const { from } = scenario.planning;
  const known = new Map<string, readonly number[]>();
  const kept = (key: string, make: () => readonly number[]) => {
    const found = known.get(key) ?? make();
    known.set(key, found);
    return found;
  };
  const positions = season.stations.map((id) => scenario.weather.find((one) => one.id === id)?.position ?? null);
  const nearest = (position: Position) => nearestOf(positions, season.stationRiseM, position);
  const where = (station: number): Position => positions[station] ?? scenario.depots[0]?.position ?? [0, 0];
  const extremes = (station: number, day: number): readonly [number, number] => [
    season.tminC[station * days + day] ?? 0,
    season.tmaxC[station * days + day] ?? 0,
  ];
  const sun = (station: number, day: number) => {
    const [lon, lat] = where(station);
    return sunTimes(dayNumber(from + day), lat, lon, scenario.utcOffsetMinutes);
  };
  const quarters = (make: (minute: number) => number) => Array.from({ length: QUARTERS }, (_, i) => make(i * 15));
  const shade = (station: number, day: number) =>
    kept(`shade ${station} ${day}`, () => {
      const { sunriseMinute, sunsetMinute } = sun(station, day);
      const [tmin, tmax] = extremes(station, day);
      return quarters((minute) => airCelsius(tmin, tmax, sunriseMinute, sunsetMinute, minute));
    });
  const load = (station: number, day: number) =>
    kept(`sun ${station} ${day}`, () => {
      const [lon, lat] = where(station);
      const [tmin, tmax] = extremes(station, day);
      return quarters((minute) =>
        sunLoad(dayNumber(from + day), lat, lon, scenario.utcOffsetMinutes, tmin, tmax, minute),
      );
    });
  return {
    sun,
    shade,
    dayOf: (iso) => {
      const day = (parseIsoDate(iso) ?? Number.NaN) - from;
      return day >= 0 && day < days ? day : null;
    },
    stationOfPlace: (place) => nearest([places.placeLon[place] ?? 0, places.placeLat[place] ?? 0]),
    stationOfDepot: ({ position }) => nearest(position),
    atBox: (station, day, carriage, moving) =>
      kept(`box ${station} ${day} ${carriage} ${moving}`, () => {
        const [air, sunny] = [shade(station, day), load(station, day)];
        const felt = air.map((celsius, i) => effectiveAirC(celsius, sunny[i] ?? 0, carriage, moving));
        return felt.map((celsius, i) => (celsius + (felt[i + 1] ?? celsius)) / 2);
      }),
  };
}

/**
 * The nearest station; of the heights at which its air is taken the lowest, which is the warmest. 0 where no station is known.
 */
function nearestOf(positions: readonly (Position | null)[], riseM: readonly number[], position: Position): number {
  let [nearest, km] = [0, Number.POSITIVE_INFINITY];
  positions.forEach((station, i) => {
    const away = station ? geodesicKm(position, station) : Number.POSITIVE_INFINITY;
    const isLower = away === km && (riseM[i] ?? 0) < (riseM[nearest] ?? 0);
    if (away < km || isLower) [nearest, km] = [i, away];
  });
  return nearest;
}
