import { HOT_BAND_KELVIN, HOT_LIMIT_CELSIUS } from '../reference/boxes.ts';
import { roadRainRule } from '../reference/road-rain.ts';
import { civilFromDay } from '../vocabulary/calendar.ts';
import { dayNumber } from '../vocabulary/units.ts';
import { at, type CheckedCase, planningDayOf } from './checked-case.ts';
import type { OwnAir } from './own-heat.ts';
import type { OwnReach } from './own-reach.ts';
import type { OwnSeason } from './own-season.ts';
import { inYear, onDay } from './own-weather.ts';

/** What becomes of a stop in a member: the day its goods come (NaN: never), and whether its packs stay on hold. */
export interface OwnVisit {
  readonly day: number;
  readonly isHeld: boolean;
}

/** Days after planning that still count: a sowing window may open that much later. */
export const DAYS_BEYOND = 75;

/** @returns by stop and member */
export function openVisits(c: CheckedCase, season: OwnSeason, reach: OwnReach, air: OwnAir) {
  const { stops, trips } = c.plan.delivery;
  const { memberYears } = c.plan.season;
  const last = c.planningDays + DAYS_BEYOND;
  const states = memberYears.map((year) => roadStates(c, season, year, last));
  const placesOf = trips.vehicle.map((_, trip) => stops.place.filter((_, stop) => stops.trip[stop] === trip));
  const dayIn = (trip: number, member: number): number => {
    const planned = planningDayOf(c, at(trips.date, trip));
    for (let day = planned; day < last; day++) {
      const state = at(at(states, member), day);
      if (day === planned && state <= at(c.plan.season.roadState, day)) return day;
      if (day < c.planningDays && c.plan.season.workday[day] !== 1) continue;
      if (at(placesOf, trip).every((place) => reach.isServed(at(trips.vehicle, trip), place, day, state))) return day;
    }
    return Number.NaN;
  };
  const days = trips.vehicle.map((_, trip) => memberYears.map((_, member) => dayIn(trip, member)));
  return (stop: number, member: number): OwnVisit => {
    const trip = at(stops.trip, stop);
    const day = at(at(days, trip), member);
    const [packC, hotC] = [stops.packMaxC[stop] ?? null, stops.hotBandMaxC[stop] ?? null];
    if (packC === null || hotC === null || Number.isNaN(day)) return { day, isHeld: false };
    const station = at(air.stationOfPlace, at(stops.place, stop));
    const planned = planningDayOf(c, at(trips.date, trip));
    const kelvin = air.memberExtremes(station, member, day).tmaxC - air.extremesOf(station, planned).tmaxC;
    return { day, isHeld: packC + (kelvin * (hotC - packC)) / HOT_BAND_KELVIN.value >= HOT_LIMIT_CELSIUS.value };
  };
}

/** State of the roads on each day of a member: by the wettest station, on the day or the one before. */
function roadStates(c: CheckedCase, season: OwnSeason, year: number, days: number): readonly number[] {
  const rule = roadRainRule(c.scenario.assumptions);
  const rain = (day: number) => {
    const date = c.scenario.planning.from + day;
    const then = inYear(date, civilFromDay(dayNumber(date)).year + year - c.scenario.seasonYear);
    const fallen = season.stations.map((record) => {
      if (!record) return 0;
      const known = onDay(record, 'rainMm', date);
      return (Number.isNaN(known) ? onDay(record, 'rainMm', then) : known) || 0;
    });
    return Math.max(0, ...fallen);
  };
  return Array.from({ length: days }, (_, day) => {
    const wettest = Math.max(rain(day), rain(day - 1));
    return wettest >= rule.closedMm.value ? 2 : Number(wettest >= rule.difficultMm.value);
  });
}
