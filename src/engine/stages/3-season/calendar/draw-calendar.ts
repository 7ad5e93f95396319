import { roadRainRule } from '../../../reference/road-rain.ts';
import { hoursAbove } from '../../../science/exposure.ts';
import { airCelsius } from '../../../science/sun-and-air.ts';
import { communityLog10, VALUE_STEPS, valueAfterSteps } from '../../../science/value-steps.ts';
import { ROAD_STATES } from '../../../vocabulary/places.ts';
import type { Scenario } from '../../../vocabulary/scenario.ts';
import type { SeasonCalendar, TripWish } from '../../../vocabulary/stage-results/calendar.ts';
import type { Needs } from '../../../vocabulary/stage-results/needs.ts';
import type { Places } from '../../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../../vocabulary/stage-results/season.ts';
import { type CellWorth, prepareCellWorth } from './cell-worth.ts';
import { chooseTrip } from './choose-trip.ts';
import { prepareTripDays, roomForDriving, type TripDays } from './trip-days.ts';
import { weighRelease } from './weigh-release.ts';
import { type LandPart, layZoneLand } from './zone-land.ts';
import { findZoneWays, type ZoneWays } from './zone-ways.ts';

const QUARTERS = 96;
const STATES = ROAD_STATES.length;

/**
 * What handing each zone its inoculant on each planning day is worth, by one reference trip: the chance of being in time,
 * the road on which the rain lets it drive, the heat on the way and the wait in the stores, taken apart. Every zone gets
 * the reference pack of each of its crops, whether or not stock is there: which day suits a zone, not what it is given.
 */
export function drawCalendar(
  scenario: Scenario,
  places: Places,
  season: SeasonOutlook,
  needs: Needs,
  wish: TripWish = {},
): SeasonCalendar {
  const trip = chooseTrip(scenario, places, wish);
  const ways = findZoneWays(scenario, places, needs, trip, roomForDriving(scenario, season, trip));
  const land = layZoneLand(scenario, places, season, needs, ways.depot);
  const trips = prepareTripDays(scenario, season, trip, land.sets);
  const worth = prepareCellWorth(season, ways, trips, land.sets.length);
  const zones = land.parts.length;
  const calendar = blankCalendar(zones, season, trip, ways);
  for (let zone = 0; zone < zones; zone++) {
    const parts = land.parts[zone] ?? [];
    calendar.plannedHa[zone] = parts.reduce((sum, part) => sum + part.hectares, 0);
    if (calendar.plannedHa[zone] === 0) continue;
    for (let day = 0; day < season.planningDays; day++) {
      weighCell(calendar, season, worth, parts, zone, day);
      writeTrip(calendar, season, ways, trips, zone, day);
    }
    calendar.bestDay[zone] = bestWorkday(calendar, zone);
  }
  const release = weighRelease(scenario, season, land, roadRainRule(scenario.assumptions), worth);
  return { ...calendar, release };
}

type Columns = Omit<SeasonCalendar, 'release'>;

function blankCalendar(zones: number, season: SeasonOutlook, trip: SeasonCalendar['trip'], ways: ZoneWays): Columns {
  const cells = () => new Float64Array(zones * season.planningDays).fill(Number.NaN);
  return {
    trip,
    firstDay: season.firstDay,
    planningDays: season.planningDays,
    plannedHa: new Float64Array(zones),
    depot: ways.depot,
    value: cells(),
    lost: {
      noRoad: cells(),
      tooHot: cells(),
      late: cells(),
      asBought: cells(),
      depotStore: cells(),
      road: cells(),
      communityStore: cells(),
      onSeed: cells(),
    },
    log10Lost: { depotStore: cells(), road: cells(), communityStore: cells(), onSeed: cells() },
    bestDay: new Int32Array(zones).fill(-1),
    driveMinutes: cells(),
    leaveMinute: cells(),
    packMaxC: cells(),
    hotBandMaxC: cells(),
    latestLeaveMinute: cells(),
    sownChance: cells(),
    maximumC: cells(),
    hoursAbove30: cells(),
    hoursAbove35: cells(),
    hoursAbove40: cells(),
    hotDayMaximumC: cells(),
    hotDayHoursAbove40: cells(),
    workday: season.workday,
    roadStateChance: season.roadStateChance,
  };
}

/** Value kept and lost in one cell: over road states by their chance, members, and the zone's land by hectares. */
function weighCell(
  calendar: Columns,
  season: SeasonOutlook,
  worth: CellWorth,
  parts: readonly LandPart[],
  zone: number,
  day: number,
): void {
  const cell = zone * season.planningDays + day;
  const members = season.members.length;
  const hectares = calendar.plannedHa[zone] as number;
  const left = new Float64Array(VALUE_STEPS.length);
  const sums = { noRoad: 0, tooHot: 0, sown: 0, depot: 0, road: 0, community: 0, onSeed: 0 };
  const steps = new Float64Array(VALUE_STEPS.length + 1);
  for (let state = 0; state < STATES; state++) {
    const chance = season.roadStateChance[day * STATES + state] as number;
    if (chance === 0) continue;
    const { share, minutes } = worth.way(zone, day, state);
    sums.noRoad += chance * (1 - share);
    for (const part of parts) {
      const weight = (chance * share * part.hectares) / hectares;
      if (weight === 0) continue;
      const road = worth.roadLog10(zone, day, minutes, part.set);
      if (road === Number.POSITIVE_INFINITY) {
        sums.tooHot += weight;
        continue;
      }
      steps[0] = (steps[0] as number) + weight;
      for (let m = 0; m < members; m++) {
        const sown = valueAfterSteps(part.life, worth.window(part, m), day, road, left);
        for (let k = 0; k < left.length; k++)
          steps[k + 1] = (steps[k + 1] as number) + (weight * (left[k] as number)) / members;
        if (Number.isNaN(sown)) continue;
        sums.sown += weight;
        sums.depot += weight * (part.life.depot[day] as number);
        sums.road += weight * road;
        sums.community += weight * communityLog10(part.life, day, sown);
        sums.onSeed += weight * part.life.onSeedLog10;
      }
    }
  }
  const { lost, log10Lost } = calendar;
  lost.noRoad[cell] = sums.noRoad;
  lost.tooHot[cell] = sums.tooHot;
  VALUE_STEPS.forEach((step, k) => {
    // Never below nought: what sums leave of nothing.
    lost[step][cell] = Math.max(0, (steps[k] as number) - (steps[k + 1] as number));
  });
  calendar.value[cell] = steps.at(-1) as number;
  log10Lost.depotStore[cell] = sums.depot / sums.sown;
  log10Lost.road[cell] = sums.road / sums.sown;
  log10Lost.communityStore[cell] = sums.community / sums.sown;
  log10Lost.onSeed[cell] = sums.onSeed / sums.sown;
  const sownChance = parts.reduce((sum, { hectares: ha, window }) => sum + ha * (window.sownChance[day] as number), 0);
  calendar.sownChance[cell] = sownChance / hectares;
}

/** Air of the day, and the reference trip on the road state planned for it. */
function writeTrip(
  calendar: Columns,
  season: SeasonOutlook,
  ways: ZoneWays,
  trips: TripDays,
  zone: number,
  day: number,
): void {
  const cell = zone * season.planningDays + day;
  const station = season.zoneStation[zone] as number;
  const from = (station * season.planningDays + day) * QUARTERS;
  const air = season.airC.subarray(from, from + QUARTERS);
  calendar.maximumC[cell] = season.tmaxC[station * season.outlookDays + day] as number;
  calendar.hotDayMaximumC[cell] = season.hotTmaxC[station * season.outlookDays + day] as number;
  calendar.hotDayHoursAbove40[cell] = hoursAbove(hotDayAir(season, station, day), 0.25, 40);
  calendar.hoursAbove30[cell] = hoursAbove(air, 0.25, 30);
  calendar.hoursAbove35[cell] = hoursAbove(air, 0.25, 35);
  calendar.hoursAbove40[cell] = hoursAbove(air, 0.25, 40);
  const { minutes } = ways.on(zone, day, season.roadState[day] as number);
  if (Number.isNaN(minutes)) return;
  const depot = ways.depot[zone] as number;
  calendar.driveMinutes[cell] = minutes;
  calendar.leaveMinute[cell] = trips.leaveMinute(depot, day);
  const heat = trips.run(depot, station, day, minutes);
  calendar.packMaxC[cell] = heat.packMaxC;
  calendar.hotBandMaxC[cell] = heat.hotBandMaxC;
  calendar.latestLeaveMinute[cell] = trips.latestLeave(depot, station, day, minutes);
}

/** Shade air of a day as hot as one in ten, every quarter hour. */
function hotDayAir(season: SeasonOutlook, station: number, day: number): Float64Array {
  const [low, high] = [season.hotTminC, season.hotTmaxC].map((c) => c[station * season.outlookDays + day] as number);
  const sun = station * season.planningDays + day;
  const [rise, set] = [season.sunriseMinute[sun] as number, season.sunsetMinute[sun] as number];
  return Float64Array.from({ length: QUARTERS }, (_, q) =>
    airCelsius(low as number, high as number, rise, set, q * 15),
  );
}

function bestWorkday({ value, planningDays, workday }: Columns, zone: number): number {
  let [best, most] = [-1, 0];
  for (let day = 0; day < planningDays; day++) {
    const kept = value[zone * planningDays + day] as number;
    if (workday[day] === 1 && kept > most) [best, most] = [day, kept];
  }
  return best;
}
