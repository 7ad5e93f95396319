import { quantile } from '../../../numerics/quantile.ts';
import { RELEASE_RULE } from '../../../reference/release-rule.ts';
import type { RoadRainRule } from '../../../reference/road-rain.ts';
import { VALUE_STEPS, valueAfterSteps } from '../../../science/value-steps.ts';
import { ROAD_STATES } from '../../../vocabulary/places.ts';
import type { Scenario } from '../../../vocabulary/scenario.ts';
import type { ReleaseRule } from '../../../vocabulary/stage-results/calendar.ts';
import type { SeasonOutlook } from '../../../vocabulary/stage-results/season.ts';
import { dayNumber } from '../../../vocabulary/units.ts';
import { dailyRecord, NO_RECORD } from '../daily-record.ts';
import { roadStateAfter } from '../road-state.ts';
import { planningAsSeason, searchWindow, seasonInPlay } from '../season-in-play.ts';
import type { CellWorth } from './cell-worth.ts';
import { memberRain, releaseDay } from './release-days.ts';
import type { ZoneLand } from './zone-land.ts';

/**
 * The rule "hold the zone's inoculant until so much rain has fallen in three days": in each member the packs go out on the
 * first workday so many days after that rain on which the reference vehicle gets to the zone, by the roads of that member.
 * Before planning begins nothing is handed over. What is handed over after the planning period travels as on its last day.
 */
export function weighRelease(
  scenario: Scenario,
  season: SeasonOutlook,
  land: ZoneLand,
  roads: RoadRainRule,
  worth: CellWorth,
): ReleaseRule {
  const mm = scenario.policy.releaseMmInThreeDays ?? RELEASE_RULE.mm.value;
  const zones = land.parts.length;
  const blank = () => new Float64Array(zones).fill(Number.NaN);
  const leadDays = RELEASE_RULE.leadDays.value;
  const measured = { fallenMm: blank(), firedOn: blank() };
  const rule = {
    mm,
    leadDays,
    ...measured,
    p20: blank(),
    p50: blank(),
    p80: blank(),
    tooLate: blank(),
    never: blank(),
    value: blank(),
  };
  const search = seasonInPlay(scenario) ?? planningAsSeason(scenario);
  const span = searchWindow(search, scenario.seasonYear);
  const records = Array.from(season.stations, (s) =>
    scenario.weather[s] ? dailyRecord(scenario.weather[s]) : NO_RECORD,
  );
  const rains = records.map((record) =>
    season.members.map(({ year }) => memberRain(record, year - scenario.seasonYear)),
  );
  const lastDay = season.firstDay + season.outlookDays - 1;
  const states = season.members.map(
    (_, m) => (day: number) =>
      roadStateAfter(
        rains.flatMap((byMember) => [byMember[m]?.(day - 1) ?? Number.NaN, byMember[m]?.(day) ?? Number.NaN]),
        roads,
      ),
  );
  const left = new Float64Array(VALUE_STEPS.length);
  for (let zone = 0; zone < zones; zone++) {
    const parts = land.parts[zone] ?? [];
    const hectares = parts.reduce((sum, part) => sum + part.hectares, 0);
    if (hectares === 0 || season.members.length === 0) continue;
    const station = season.zoneStation[zone] as number;
    const observed = memberRain(records[station] ?? NO_RECORD, 0);
    rule.fallenMm[zone] = fallenUntil(observed, scenario.asOf);
    rule.firedOn[zone] = releaseDay(observed, span.from, scenario.asOf, mm);
    const fallen = season.members.map((_, m) =>
      releaseDay(rains[station]?.[m] ?? (() => Number.NaN), span.from, dayNumber(lastDay), mm),
    );
    let [value, late] = [0, 0];
    season.members.forEach((_, m) => {
      const day = fallen[m] as number;
      if (Number.isNaN(day)) return;
      const h = handOverDay(season, worth, zone, day, states[m] as (day: number) => number);
      const way = worth.way(zone, Math.min(h, season.planningDays - 1), states[m]?.(season.firstDay + h) ?? 0);
      for (const part of parts) {
        const window = worth.window(part, m);
        const road = worth.roadLog10(zone, Math.min(h, season.planningDays - 1), way.minutes, part.set);
        const sown = valueAfterSteps(part.life, window, h, road, left);
        if (Number.isFinite(road)) value += part.hectares * way.share * (left.at(-1) as number);
        if (sown > window.last) late += part.hectares;
      }
    });
    const all = hectares * season.members.length;
    rule.value[zone] = value / all;
    rule.tooLate[zone] = late / all;
    rule.never[zone] = fallen.filter(Number.isNaN).length / fallen.length;
    [rule.p20, rule.p50, rule.p80].forEach((column, i) => {
      column[zone] = quantile(fallen, [0.2, 0.5, 0.8][i] as number);
    });
  }
  return rule;
}

/** Rain measured over a day and the two before, mm; NaN where none of the three was. */
function fallenUntil(rain: (day: number) => number, day: number): number {
  const known = [day, day - 1, day - 2].map(rain).filter((mm) => !Number.isNaN(mm));
  return known.length === 0 ? Number.NaN : known.reduce((sum, mm) => sum + mm, 0);
}

/** Offset of the first day, from the lead time after the rain on, that is worked and on which the zone is reached at all. */
function handOverDay(
  season: SeasonOutlook,
  worth: CellWorth,
  zone: number,
  fallen: number,
  stateOn: (day: number) => number,
): number {
  const from = Math.max(0, fallen + RELEASE_RULE.leadDays.value - season.firstDay);
  for (let h = from; h < season.outlookDays; h++) {
    if (h < season.planningDays && season.workday[h] !== 1) continue;
    const state = Math.min(ROAD_STATES.length - 1, stateOn(season.firstDay + h));
    if (worth.way(zone, Math.min(h, season.planningDays - 1), state).share > 0) return h;
  }
  return season.outlookDays;
}
