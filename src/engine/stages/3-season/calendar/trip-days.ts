import { COOL_STORE_CELSIUS, HOT_BAND_KELVIN, HOT_LIMIT_CELSIUS } from '../../../reference/boxes.ts';
import type { SurvivalSet } from '../../../reference/survival-sets.ts';
import { tabulateEffectiveAir } from '../../../science/effective-air.ts';
import { newSingleTripHeat, runSingleTrip, type SingleTripHeat } from '../../../science/reference-trip.ts';
import { serviceMinutesOf, type TripHours, tripHours } from '../../../science/trip-hours.ts';
import type { Depot, Scenario } from '../../../vocabulary/scenario.ts';
import type { ReferenceTrip } from '../../../vocabulary/stage-results/calendar.ts';
import type { SeasonOutlook } from '../../../vocabulary/stage-results/season.ts';
import { vehicleOf } from './choose-trip.ts';

const QUARTER = 15;
const QUARTERS = 96;
const LIMIT = HOT_LIMIT_CELSIUS.value;
const HOT = HOT_BAND_KELVIN.value;

/** The reference trip from a depot on a day: when it leaves, what it does to the packs. */
export interface TripDays {
  leaveMinute(depot: number, day: number): number;
  /** Overwrites and returns one and the same object. */
  run(depot: number, station: number, day: number, driveMinutes: number): SingleTripHeat;
  /** See SeasonCalendar.latestLeaveMinute. */
  latestLeave(depot: number, station: number, day: number, driveMinutes: number): number;
}

export function prepareTripDays(
  scenario: Scenario,
  season: SeasonOutlook,
  trip: ReferenceTrip,
  sets: readonly SurvivalSet[],
): TripDays {
  const vehicle = vehicleOf(scenario, trip);
  const service = vehicle ? serviceMinutesOf(vehicle) : 0;
  const air = tabulateEffectiveAir(season, trip.carriage, trip.parksInShade);
  const heat = newSingleTripHeat(sets.length);
  const rowOf = (station: number, day: number) => (station * season.planningDays + day) * QUARTERS;
  const hours = dayHours(scenario, season, trip);
  const leaveMinute = (depot: number, day: number) => trip.leaveMinute ?? hours(depot, day).earliestLeave;
  const start = (depot: number, day: number, minute: number): readonly [number, number] => {
    const { coolStoreC, coolStoreLitres } = scenario.depots[depot] as Depot;
    const held = coolStoreC ?? (coolStoreLitres > 0 ? COOL_STORE_CELSIUS.value : null);
    if (held !== null) return [held, held];
    const quarter = Math.min(QUARTERS - 1, Math.max(0, Math.floor(minute / QUARTER)));
    const shade = season.airC[rowOf(season.siteStation[depot] as number, day) + quarter] as number;
    return [shade, shade + HOT];
  };
  const runAt = (leave: number, depot: number, station: number, day: number, driveMinutes: number, of = sets) => {
    const [startC, hotStartC] = start(depot, day, leave);
    const { packsKg, iceKg, coolantC } = trip;
    const uaWPerK = trip.uaWPerK ?? Number.NaN;
    const single = {
      leaveMinute: leave,
      driveMinutes,
      serviceMinutes: service,
      packsKg,
      startC,
      hotStartC,
      iceKg,
      coolantC,
      uaWPerK,
    };
    runSingleTrip(single, air, rowOf(station, day), of, heat);
    return heat;
  };
  const isAlwaysCool = (depot: number, station: number, day: number) => {
    const row = rowOf(station, day);
    const shadeRow = rowOf(season.siteStation[depot] as number, day);
    for (let q = 0; q < QUARTERS; q++) {
      const most = Math.max(
        air.moving[row + q] as number,
        air.parked[row + q] as number,
        season.airC[shadeRow + q] as number,
      );
      if (most + HOT >= LIMIT) return false;
    }
    return true;
  };
  return {
    leaveMinute,
    run: (depot, station, day, driveMinutes) => runAt(leaveMinute(depot, day), depot, station, day, driveMinutes),
    latestLeave(depot, station, day, driveMinutes) {
      const { earliestLeave, latestBack } = hours(depot, day);
      const last = Math.floor((latestBack - 2 * driveMinutes - service) / QUARTER) * QUARTER;
      const first = Math.ceil(earliestLeave / QUARTER) * QUARTER;
      if (!(last >= first)) return Number.NaN;
      if (isAlwaysCool(depot, station, day)) return last;
      let latest = Number.NaN;
      for (let leave = first; leave <= last; leave += QUARTER) {
        if (!(runAt(leave, depot, station, day, driveMinutes, []).hotBandMaxC < LIMIT)) break;
        latest = leave;
      }
      return latest;
    },
  };
}

/** When the reference vehicle may leave a depot on a day, and by when it must be back. */
function dayHours(scenario: Scenario, season: SeasonOutlook, trip: ReferenceTrip) {
  const vehicle = vehicleOf(scenario, trip);
  return (depot: number, day: number): TripHours => {
    const sun = (season.siteStation[depot] as number) * season.planningDays + day;
    const [rise, set] = [season.sunriseMinute[sun] as number, season.sunsetMinute[sun] as number];
    return vehicle
      ? tripHours(vehicle, scenario.depots[depot] as Depot, rise, set, scenario.planning.roadHours)
      : { earliestLeave: rise, latestBack: set };
  };
}

/** What a day leaves for driving from a depot and back, whole quarter hours; the hand-over is taken off. */
export function roomForDriving(scenario: Scenario, season: SeasonOutlook, trip: ReferenceTrip) {
  const hours = dayHours(scenario, season, trip);
  const vehicle = vehicleOf(scenario, trip);
  const service = vehicle ? serviceMinutesOf(vehicle) : 0;
  return (depot: number, day: number): number => {
    const { earliestLeave, latestBack } = hours(depot, day);
    const room = latestBack - (trip.leaveMinute ?? earliestLeave) - service;
    return Math.floor(room / QUARTER) * QUARTER;
  };
}
