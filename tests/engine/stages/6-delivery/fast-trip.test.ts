import { describe, expect, test } from 'vitest';
import { RandomStream } from '../../../../src/engine/numerics/random-stream.ts';
import { SURVIVAL_SETS } from '../../../../src/engine/reference/survival-sets.ts';
import { effectiveAirC } from '../../../../src/engine/science/box.ts';
import { tabulateEffectiveAir } from '../../../../src/engine/science/effective-air.ts';
import { airCelsius, sunLoad, sunTimes } from '../../../../src/engine/science/sun-and-air.ts';
import { packLog10PerDay } from '../../../../src/engine/science/survival.ts';
import { quarterHourAir } from '../../../../src/engine/stages/3-season/quarter-hour-air.ts';
import type { DispatchTask } from '../../../../src/engine/stages/6-delivery/dispatch-task.ts';
import { heatTrip, newTripHeat } from '../../../../src/engine/stages/6-delivery/heat-trip.ts';
import { newTripClock, type TripClock } from '../../../../src/engine/stages/6-delivery/time-trip.ts';
import type { Slot } from '../../../../src/engine/stages/6-delivery/vehicle-day-slots.ts';
import { CARRIAGES, type Carriage, dayNumber, type SeasonOutlook } from '../../../../src/engine/vocabulary/index.ts';

/**
 * The form in which the search runs trips, air constant over each quarter hour, against the full form: air and sun at
 * every moment, the heat balance by midpoint steps of half a minute, shared with no code of the stage.
 */
interface Trip {
  readonly day: number;
  readonly lat: number;
  readonly lon: number;
  readonly tminC: number;
  readonly tmaxC: number;
  readonly carriage: Carriage;
  /** Null: cartons. */
  readonly ua: number | null;
  readonly iceKg: number;
  readonly startC: number;
  readonly leave: number;
  readonly stops: readonly { readonly arrive: number; readonly depart: number; readonly kg: number }[];
}

const OFFSET = 120;
const SET = SURVIVAL_SETS.default.value;

function randomTrip(next: () => number): Trip {
  const between = (low: number, high: number) => low + next() * (high - low);
  const tminC = between(8, 30);
  const lat = between(-25, 25);
  const boxed = next() < 0.7;
  const leave = between(330, 840);
  let minute = leave;
  const stops = Array.from({ length: 1 + Math.floor(next() * 6) }, () => {
    const arrive = minute + between(5, 90);
    minute = arrive + between(10, 60);
    return { arrive, depart: minute, kg: between(0.3, 5) };
  });
  return {
    day: 20000 + Math.floor(next() * 365),
    lat,
    lon: between(20, 40),
    tminC,
    tmaxC: tminC + between(4, 18),
    carriage: CARRIAGES[Math.floor(next() * CARRIAGES.length)] as Carriage,
    ua: boxed ? between(0.2, 0.7) : null,
    iceKg: boxed && next() < 0.6 ? between(0.2, 3) : 0,
    startC: between(2, 25),
    leave,
    stops,
  };
}

/** Peak up to each stop's hand-over, loss at each, hottest of the hot band over all. */
interface Ridden {
  readonly peakC: readonly number[];
  readonly log10Loss: readonly number[];
}

function fast(trip: Trip): Ridden | null {
  const extremes = {
    tminC: Float64Array.of(trip.tminC),
    tmaxC: Float64Array.of(trip.tmaxC),
  } as Parameters<typeof quarterHourAir>[1];
  const air = quarterHourAir([[trip.lon, trip.lat]], extremes, dayNumber(trip.day), 1, 1, OFFSET);
  const season = { ...air, planningDays: 1 } as unknown as SeasonOutlook;
  const slot = {
    air: tabulateEffectiveAir(season, trip.carriage, false),
    shadeAirC: air.airC,
    round: { station: new Int32Array(8) },
    planningDays: 1,
    day: 0,
    packStartC: trip.startC,
    uaWPerK: trip.ua ?? Number.NaN,
    coolantC: 0,
  } as unknown as Slot;
  const reach = { lossBreaks: Float64Array.of(0, 4), value: Float64Array.of(1, 0), inTime: Float64Array.of(1) };
  const task = {
    loads: trip.stops.map(({ kg }, place) => ({
      inoculantKg: kg,
      place,
      survival: 0,
      storageLimit: -1,
      worth: 1,
      reach,
    })),
    survivalRates: [(celsius: number) => packLog10PerDay(celsius, SET)],
    storageLimits: [],
    mostStorageHours: null,
    labelHourShare: 0,
  } as unknown as DispatchTask;
  const clock: TripClock = newTripClock(8);
  clock.leaveMinute = trip.leave;
  clock.stops = trip.stops.length;
  clock.inoculantKg = trip.stops.reduce((sum, { kg }) => sum + kg, 0);
  trip.stops.forEach(({ arrive, depart }, s) => {
    clock.place[s] = 0;
    clock.firstLoad[s] = s;
    clock.arriveMinute[s] = arrive;
    clock.departMinute[s] = depart;
  });
  clock.firstLoad[trip.stops.length] = trip.stops.length;
  const heat = newTripHeat(8, 1, 0);
  const loads = trip.stops.map((_, s) => s);
  if (!heatTrip(task, slot, loads, trip.iceKg, clock, heat)) return null;
  return {
    peakC: loads.map((s) => heat.packMaxC[s] as number),
    log10Loss: loads.map((s) => heat.log10Loss[s] as number),
  };
}

function full(trip: Trip): Ridden {
  const sun = sunTimes(dayNumber(trip.day), trip.lat, trip.lon, OFFSET);
  const felt = (minute: number, moving: boolean) => {
    const shade = airCelsius(trip.tminC, trip.tmaxC, sun.sunriseMinute, sun.sunsetMinute, minute);
    const load = sunLoad(dayNumber(trip.day), trip.lat, trip.lon, OFFSET, trip.tminC, trip.tmaxC, minute);
    return effectiveAirC(shade, load, trip.carriage, moving ? 'moving' : 'parked');
  };
  let packs = trip.stops.reduce((sum, { kg }) => sum + kg, 0);
  const stored = (packs * 2700 + 1500) * trip.startC;
  let ice = trip.iceKg;
  let water = Math.min(ice, stored / 333_550);
  ice -= water;
  let celsius = (stored - water * 333_550) / (packs * 2700 + 1500 + water * 4186);
  let [peak, loss, minute] = [trip.startC, 0, trip.leave];
  const slope = (c: number, air: number) =>
    trip.ua === null ? (air - c) / (1.875 * 3600) : (trip.ua * (air - c)) / (packs * 2700 + 1500 + water * 4186);
  const run = (to: number, moving: boolean) => {
    const steps = Math.max(1, Math.ceil((to - minute) * 2));
    const minutes = (to - minute) / steps;
    for (let i = 0; i < steps; i++) {
      const air = felt(minute + minutes / 2, moving);
      const before = celsius;
      if (ice > 0) {
        const melted = Math.min(ice, ((trip.ua as number) * Math.max(0, air) * minutes * 60) / 333_550);
        ice -= melted;
        water += melted;
      } else {
        const middle = celsius + slope(celsius, air) * minutes * 30;
        celsius += slope(middle, air) * minutes * 60;
      }
      loss += (minutes / 1440) * 10 ** (((before + celsius) / 2 - 40) / 18) * (1 / 28);
      peak = Math.max(peak, celsius);
      minute += minutes;
    }
    minute = to;
  };
  const ridden = { peakC: [] as number[], log10Loss: [] as number[] };
  for (const { arrive, depart, kg } of trip.stops) {
    run(arrive, true);
    run(depart, false);
    ridden.peakC.push(peak);
    ridden.log10Loss.push(loss);
    packs -= kg;
  }
  return ridden;
}

describe('the form in which the search runs trips against the full form', () => {
  test('1,000 random trips, with and without ice and boxes: peak within 0.5 K, loss within 5 percent and 1e-5', () => {
    const stream = new RandomStream(4);
    const next = () => stream.nextUint32() / 2 ** 32;
    let [trips, iced, refused, worstC, worstShare] = [0, 0, 0, 0, 0];
    while (trips < 1000) {
      const trip = randomTrip(next);
      const quick = fast(trip);
      if (quick === null) {
        refused++;
        continue;
      }
      trips++;
      if (trip.iceKg > 0) iced++;
      const exact = full(trip);
      quick.peakC.forEach((peakC, s) => {
        const [dueC, due] = [exact.peakC[s] as number, exact.log10Loss[s] as number];
        const loss = quick.log10Loss[s] as number;
        worstC = Math.max(worstC, Math.abs(peakC - dueC));
        worstShare = Math.max(worstShare, (Math.abs(loss - due) - 1e-5) / due);
        expect(Math.abs(peakC - dueC), JSON.stringify(trip)).toBeLessThan(0.5);
        expect(Math.abs(loss - due), JSON.stringify(trip)).toBeLessThan(0.05 * due + 1e-5);
      });
    }
    console.info(
      `worst of 1,000 trips, ${iced} with ice (${refused} more refused by the hot band): peak ${worstC.toFixed(3)} K, loss ${(worstShare * 100).toFixed(2)} percent beyond 1e-5`,
    );
    expect(iced).toBeGreaterThan(200);
    expect(trips - iced).toBeGreaterThan(200);
  });

  test('the hot band refuses what the full form would bring to 40 °C, give or take half a kelvin', () => {
    const stream = new RandomStream(5);
    let refused = 0;
    for (let i = 0; i < 1500 && refused < 60; i++) {
      const trip = randomTrip(() => stream.nextUint32() / 2 ** 32);
      if (fast(trip) !== null) continue;
      refused++;
      const hotter = full({ ...trip, tminC: trip.tminC + 2, tmaxC: trip.tmaxC + 2 });
      expect(Math.max(...hotter.peakC)).toBeGreaterThan(39.5);
    }
    expect(refused).toBeGreaterThan(20);
  });
});
