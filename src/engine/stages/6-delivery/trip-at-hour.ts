import { COOL_STORE_CELSIUS, HOT_BAND_KELVIN } from '../../reference/boxes.ts';
import { type Box, boxUaWPerK, fillBox, minutesAbove, newBox, stepBox, takeFromBox } from '../../science/box.ts';
import { type EffectiveAir, tabulateEffectiveAir } from '../../science/effective-air.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { TripAtHour, TripCurve, TripQuestion } from '../../vocabulary/stage-results/delivery.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';

const QUARTERS = 96;
const QUARTER_MINUTES = 15;
const HOT = HOT_BAND_KELVIN.value;

type Columns = { readonly [Name in keyof TripCurve]: number[] };

/**
 * A planned trip left at another hour: the same driving, rests and service, each stop waiting for its place to open, and the packs in
 * the air of those hours. It is told whatever rule it breaks, so that a person may see what a late start does.
 */
export function tripAtHour(scenario: Scenario, season: SeasonOutlook, ask: TripQuestion): TripAtHour {
  const vehicle = scenario.vehicles[ask.vehicle] as Scenario['vehicles'][number];
  const air = tabulateEffectiveAir(season, vehicle.carriage, vehicle.parksInShade);
  const startC = startOf(scenario, season, ask);
  const [box, twin] = startC.map((celsius) => packed(scenario, ask, celsius)) as [Box, Box];
  const curve: Columns = { minute: [], packC: [], hotBandC: [], boxAirC: [], shadeC: [] };
  const felt = { packMaxC: startC[0], hotBandMaxC: startC[1], minutesAbove: 0 };
  let minute = ask.leaveMinute;
  const lastCold = ask.stops.findLastIndex(({ inoculantKg }) => inoculantKg > 0);
  write(curve, minute, box, twin, airAt(season, air, ask, 0, minute, true));
  for (const [s, stop] of ask.stops.entries()) {
    const arrive = minute + stop.legMinutes;
    const depart = Math.max(arrive + stop.restMinutes, stop.opensMinute) + stop.serviceMinutes;
    if (s <= lastCold) {
      for (const [from, to, isMoving] of [
        [minute, arrive, true],
        [arrive, depart, false],
      ] as const) {
        ride(season, air, ask, s, from, to, isMoving, box, twin, felt, curve);
      }
    }
    takeFromBox(box, stop.inoculantKg);
    takeFromBox(twin, stop.inoculantKg);
    minute = depart;
  }
  return {
    leaveMinute: ask.leaveMinute,
    returnMinute: minute + ask.returnLegMinutes,
    curve,
    packMaxC: felt.packMaxC,
    hotBandMaxC: felt.hotBandMaxC,
    hoursAboveStorage: ask.storageLimitC === null ? null : felt.minutesAbove / 60,
  };
}

/** Packs before they meet the ice: as the depot keeps them, else as the air is; and the same in the hot band. */
function startOf(scenario: Scenario, season: SeasonOutlook, ask: TripQuestion): readonly [number, number] {
  const vehicle = scenario.vehicles[ask.vehicle] as Scenario['vehicles'][number];
  const depotSite = scenario.depots.findIndex(({ id }) => id === vehicle.depotId);
  const depot = scenario.depots[depotSite];
  const held = depot?.coolStoreC ?? ((depot?.coolStoreLitres ?? 0) > 0 ? COOL_STORE_CELSIUS.value : null);
  const shade = season.airC[rowOf(season, depotSite, ask.day) + quarterOf(ask.leaveMinute)] as number;
  return [held ?? shade, held ?? shade + HOT];
}

function packed(scenario: Scenario, ask: TripQuestion, celsius: number): Box {
  const vehicle = scenario.vehicles[ask.vehicle] as Scenario['vehicles'][number];
  const kg = ask.stops.reduce((sum, stop) => sum + stop.inoculantKg, 0);
  const box = newBox();
  fillBox(box, kg, celsius, ask.iceKg, boxUaWPerK(vehicle.coolLitres, vehicle.coolUaWPerK), vehicle.coolantC);
  return box;
}

interface Felt {
  packMaxC: number;
  hotBandMaxC: number;
  minutesAbove: number;
}

function ride(
  season: SeasonOutlook,
  air: EffectiveAir,
  ask: TripQuestion,
  stop: number,
  from: number,
  to: number,
  isMoving: boolean,
  box: Box,
  twin: Box,
  felt: Felt,
  curve: Columns,
): void {
  let minute = from;
  while (minute < to) {
    const next = Math.min(to, (Math.floor(minute / QUARTER_MINUTES) + 1) * QUARTER_MINUTES);
    const now = airAt(season, air, ask, stop, minute, isMoving);
    stepBox(twin, now.boxAirC + HOT, next - minute);
    stepBox(box, now.boxAirC, next - minute);
    felt.packMaxC = Math.max(felt.packMaxC, box.celsius);
    felt.hotBandMaxC = Math.max(felt.hotBandMaxC, twin.celsius);
    if (ask.storageLimitC !== null) felt.minutesAbove += minutesAbove(box, ask.storageLimitC);
    write(curve, next, box, twin, now);
    minute = next;
  }
}

function airAt(
  season: SeasonOutlook,
  air: EffectiveAir,
  ask: TripQuestion,
  stop: number,
  minute: number,
  isMoving: boolean,
) {
  const at = rowOf(season, ask.stops[stop]?.site ?? 0, ask.day) + quarterOf(minute);
  return { boxAirC: (isMoving ? air.moving : air.parked)[at] as number, shadeC: season.airC[at] as number };
}

function write(curve: Columns, minute: number, box: Box, twin: Box, now: { boxAirC: number; shadeC: number }): void {
  curve.minute.push(minute);
  curve.packC.push(box.celsius);
  curve.hotBandC.push(twin.celsius);
  curve.boxAirC.push(now.boxAirC);
  curve.shadeC.push(now.shadeC);
}

const rowOf = ({ siteStation, planningDays }: SeasonOutlook, site: number, day: number): number =>
  ((siteStation[site] as number) * planningDays + day) * QUARTERS;
const quarterOf = (minute: number): number => Math.max(0, Math.min(QUARTERS - 1, Math.floor(minute / QUARTER_MINUTES)));
