import { exp, log } from '../numerics/elementary.ts';
import { COOL_STORE_CELSIUS, HOT_BAND_KELVIN } from '../reference/boxes.ts';
import { CROP_FACTS } from '../reference/crops.ts';
import { LAPSE_K_PER_KM } from '../reference/solar.ts';
import { FAST_GROWER_FACTOR, LIQUID_FACTOR, SURVIVAL_SETS, type SurvivalSet } from '../reference/survival-sets.ts';
import { civilFromDay } from '../vocabulary/calendar.ts';
import type { Crop } from '../vocabulary/crops.ts';
import type { Product } from '../vocabulary/supply.ts';
import { dayNumber } from '../vocabulary/units.ts';
import { at, type CheckedCase } from './checked-case.ts';
import { type AirTable, airAround, airOfDay, shadeAir } from './own-air.ts';
import { lossOver, OwnBox } from './own-box.ts';
import { type OwnSeason, weatherPlaces } from './own-season.ts';
import { atHeight, type Extremes, expectedExtremes, inYear, onDay } from './own-weather.ts';

/** Air of every station and day, made when asked for and kept. Days are planning days; they may lie beyond the last. */
export interface OwnAir {
  readonly tableOf: (station: number, day: number) => AirTable;
  readonly extremesOf: (station: number, day: number) => Extremes;
  /** The same as the member's year had it, where this season is not yet known. */
  readonly memberExtremes: (station: number, member: number, day: number) => MemberExtremes;
  readonly stationOfDepot: readonly number[];
  readonly stationOfPlace: readonly number[];
}

/** Where no record tells (assumed, as in the season): a hot day of the seasonal tropics. */
const ASSUMED: Extremes = { tminC: 20, tmaxC: 34, hotTmaxC: 34 };

export interface MemberExtremes {
  readonly meanC: number;
  readonly tmaxC: number;
}

export function openAir(c: CheckedCase, season: OwnSeason): OwnAir {
  const { planning, asOf, utcOffsetMinutes, depots } = c.scenario;
  const extremes = new Map<string, Extremes>();
  const tables = new Map<string, AirTable>();
  const sites = weatherPlaces(c, season);
  const extremesOf = (station: number, day: number) => {
    const key = `${station} ${day}`;
    const record = season.stations[station];
    const known = extremes.get(key);
    if (known) return known;
    const atStation = record ? expectedExtremes(record, asOf, planning.from + day) : null;
    const made = atStation ? atHeight(atStation, at(c.plan.season.stationRiseM, station)) : ASSUMED;
    extremes.set(key, made);
    return made;
  };
  const past = new Map<number, MemberExtremes>();
  const memberExtremes = (station: number, member: number, day: number): MemberExtremes => {
    const key = (station * c.plan.season.memberYears.length + member) * 4096 + day;
    const known = past.get(key);
    if (known) return known;
    const date = planning.from + day;
    const record = season.stations[station];
    const yearsOff = at(c.plan.season.memberYears, member) - c.scenario.seasonYear;
    const cooler = (at(c.plan.season.stationRiseM, station) / 1000) * LAPSE_K_PER_KM.value;
    const on = (when: number) => ({
      low: record ? onDay(record, 'tminC', when) : Number.NaN,
      high: record ? onDay(record, 'tmaxC', when) : Number.NaN,
    });
    const now = on(date);
    const then = on(inYear(date, civilFromDay(dayNumber(date)).year + yearsOff));
    const isOwn = !(now.low <= now.high) && then.low <= then.high;
    const expected = extremesOf(station, day);
    const made = isOwn
      ? { meanC: (then.low + then.high) / 2 - cooler, tmaxC: then.high - cooler }
      : { meanC: (expected.tminC + expected.tmaxC) / 2, tmaxC: expected.tmaxC };
    past.set(key, made);
    return made;
  };
  return {
    extremesOf,
    memberExtremes,
    tableOf: (station, day) => {
      const key = `${station} ${day}`;
      const { tminC, tmaxC } = extremesOf(station, day);
      const position = season.stationPositions[station] ?? depots[0]?.position ?? [0, 0];
      const known = tables.get(key) ?? airOfDay(planning.from + day, position, utcOffsetMinutes, tminC, tmaxC);
      tables.set(key, known);
      return known;
    },
    stationOfDepot: sites.slice(0, depots.length),
    stationOfPlace: sites.slice(depots.length),
  };
}

/** Survival of rhizobia in a pack: cautious unless the label calls the carrier sterile; faster for fast growers and liquids. */
export function ownSurvival(product: Product, crop: Crop): SurvivalSet {
  const base = product.carrierSterile === true ? SURVIVAL_SETS.default.value : SURVIVAL_SETS.cautious.value;
  const strain = CROP_FACTS[crop].strain === 'fast' ? FAST_GROWER_FACTOR.value : 1;
  return { ...base, rateFactor: strain * (product.carrier === 'liquid' ? LIQUID_FACTOR.value : 1) };
}

export interface RideStop {
  readonly place: number;
  readonly arrive: number;
  readonly start: number;
  readonly depart: number;
  /** Inoculant handed over here, kg. */
  readonly handedKg: number;
}

export interface Ride {
  readonly vehicle: number;
  readonly day: number;
  readonly leave: number;
  readonly iceKg: number;
  readonly inoculantKg: number;
  readonly stops: readonly RideStop[];
}

/** What the packs have met by one stop: at the start and the end of the service, and since the depot. */
export interface RideState {
  readonly startC: number;
  readonly departC: number;
  /** Hottest up to the start and up to the end of the service. */
  readonly hottestAtStart: number;
  readonly hottest: number;
  readonly hotBand: number;
  /** log10 lost per survival set asked for, hours above each limit asked for. */
  readonly loss: readonly number[];
  readonly hoursAbove: readonly number[];
  readonly met: OwnExposure;
}

/** What the packs still aboard have met since the depot. */
export interface OwnExposure {
  readonly meanKineticC: number;
  readonly degreeHours30: number;
  readonly hoursAbove30: number;
  readonly hoursAbove35: number;
  readonly hoursAbove40: number;
}

/** Activation energy over the gas constant of the pharmacopoeia, K (USP <1160>). */
const KINETIC_KELVIN = 10_000;

/** Running sums of the measures, step by step. */
class Meter {
  private minutes = 0;
  private kinetic = 0;
  private degreeMinutes = 0;
  private readonly above = [0, 0, 0];

  add(celsius: number, minutes: number): void {
    this.minutes += minutes;
    this.kinetic += minutes * exp(-KINETIC_KELVIN / (celsius + 273.15));
    this.degreeMinutes += minutes * Math.max(0, celsius - 30);
    [30, 35, 40].forEach((limit, i) => {
      if (celsius > limit) this.above[i] = at(this.above, i) + minutes;
    });
  }

  read(): OwnExposure {
    return {
      meanKineticC: KINETIC_KELVIN / -log(this.kinetic / this.minutes) - 273.15,
      degreeHours30: this.degreeMinutes / 60,
      hoursAbove30: at(this.above, 0) / 60,
      hoursAbove35: at(this.above, 1) / 60,
      hoursAbove40: at(this.above, 2) / 60,
    };
  }
}

/** Runs the packs of a trip, and a twin in air 2 K hotter, from the depot to their last hand-over. */
export function runRide(
  c: CheckedCase,
  air: OwnAir,
  ride: Ride,
  sets: readonly SurvivalSet[],
  limits: readonly number[],
): readonly RideState[] {
  const vehicle = at(c.scenario.vehicles, ride.vehicle);
  const depot = at(c.depotOfVehicle, ride.vehicle);
  const { coolStoreC, coolStoreLitres } = at(c.scenario.depots, depot);
  const held = coolStoreC ?? (coolStoreLitres > 0 ? COOL_STORE_CELSIUS.value : null);
  const shade = shadeAir(air.tableOf(at(air.stationOfDepot, depot), ride.day), ride.leave);
  const hot = HOT_BAND_KELVIN.value;
  const box = new OwnBox(vehicle, ride.inoculantKg, held ?? shade, ride.iceKg);
  const twin = new OwnBox(vehicle, ride.inoculantKg, held ?? shade + hot, ride.iceKg);
  const loss = sets.map(() => 0);
  const hours = limits.map(() => 0);
  const meter = new Meter();
  const count = (celsius: number, minutes: number) => {
    meter.add(celsius, minutes);
    sets.forEach((set, i) => {
      loss[i] = at(loss, i) + lossOver(celsius, minutes, set);
    });
    limits.forEach((limit, i) => {
      if (celsius > limit) hours[i] = at(hours, i) + minutes / 60;
    });
  };
  let minute = ride.leave;
  return ride.stops.map((stop) => {
    const table = air.tableOf(at(air.stationOfPlace, stop.place), ride.day);
    const moving = (m: number) => airAround(table, vehicle.carriage, 'moving', m);
    const parked = (m: number) => airAround(table, vehicle.carriage, vehicle.parksInShade ? 'shade' : 'parked', m);
    twin.run(minute, stop.arrive, (m) => moving(m) + hot);
    twin.run(stop.arrive, stop.depart, (m) => parked(m) + hot);
    box.run(minute, stop.arrive, moving, count);
    box.run(stop.arrive, stop.start, parked, count);
    const [startC, hottestAtStart] = [box.celsius, box.hottest];
    box.run(stop.start, stop.depart, parked, count);
    minute = stop.depart;
    const state = {
      startC,
      departC: box.celsius,
      hottestAtStart,
      hottest: box.hottest,
      hotBand: twin.hottest,
      loss: [...loss],
      hoursAbove: [...hours],
      met: meter.read(),
    };
    box.packsKg = Math.max(0, box.packsKg - stop.handedKg);
    twin.packsKg = Math.max(0, twin.packsKg - stop.handedKg);
    return state;
  });
}
