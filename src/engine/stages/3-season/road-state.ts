import type { RoadRainRule } from '../../reference/road-rain.ts';
import { civilFromDay, dayOfMonthDay } from '../../vocabulary/calendar.ts';
import { ROAD_STATES } from '../../vocabulary/places.ts';
import type { SeasonMember } from '../../vocabulary/stage-results/season.ts';
import { type DayNumber, dayNumber } from '../../vocabulary/units.ts';
import { type DailyRecord, valueOn } from './daily-record.ts';

/** A state is planned with where it, or a worse one, is at least this likely (assumed). */
const LIKELY = 0.5;

const STATES = ROAD_STATES.length;

export interface RoadOutlook {
  /** Per planning day, index into ROAD_STATES. */
  readonly state: Int8Array;
  /** [day * 3 + state] */
  readonly chance: Float64Array;
  /** Planning days whose rain nothing tells: no record, no forecast, no past season. */
  readonly unknownDays: number;
}

/**
 * Road state of the district by planning day: the worst over the weather places. Where a place has the rain of the day
 * (observed or forecast), that decides, with chance 1. Beyond, the chance of a state is the share of member seasons whose
 * own year had it on the same calendar day.
 */
export function roadOutlook(
  records: readonly DailyRecord[],
  members: readonly SeasonMember[],
  seasonYear: number,
  firstDay: DayNumber,
  planningDays: number,
  rule: RoadRainRule,
): RoadOutlook {
  const state = new Int8Array(planningDays);
  const chance = new Float64Array(planningDays * STATES);
  let unknownDays = 0;
  for (let offset = 0; offset < planningDays; offset++) {
    const day = dayNumber(firstDay + offset);
    const days = isRainKnown(records, day) ? [day] : members.map(({ year }) => inYear(day, year - seasonYear));
    if (!days.some((each) => isRainKnown(records, each))) unknownDays++;
    const seasonsIn = [0, 0, 0];
    for (const each of days) {
      const worst = worstState(records, each, rule);
      seasonsIn[worst] = (seasonsIn[worst] as number) + 1;
    }
    chance.set(
      seasonsIn.map((seasons) => seasons / days.length),
      offset * STATES,
    );
    state[offset] = likelyState(seasonsIn, days.length);
  }
  return { state, chance, unknownDays };
}

function isRainKnown(records: readonly DailyRecord[], day: number): boolean {
  return records.some((record) => !Number.isNaN(valueOn(record, 'rainMm', day)));
}

/** The same calendar day so many years off. */
function inYear(day: DayNumber, yearsOff: number): DayNumber {
  const { year, month, day: dayOfMonth } = civilFromDay(day);
  return dayOfMonthDay(year + yearsOff, { month, day: dayOfMonth });
}

function worstState(records: readonly DailyRecord[], day: DayNumber, rule: RoadRainRule): number {
  return roadStateAfter(
    records.flatMap((record) => [valueOn(record, 'rainMm', day), valueOn(record, 'rainMm', day - 1)]),
    rule,
  );
}

/** State after the wettest of several rains, mm. Rain that was not recorded (NaN) closes no road. */
export function roadStateAfter(rains: readonly number[], rule: RoadRainRule): number {
  let worst = 0;
  for (const rainMm of rains) {
    if (rainMm >= rule.closedMm.value) return 2;
    if (rainMm >= rule.difficultMm.value) worst = 1;
  }
  return worst;
}

function likelyState(seasonsIn: readonly number[], seasons: number): number {
  let orWorse = 0;
  for (let state = STATES - 1; state > 0; state--) {
    orWorse += seasonsIn[state] as number;
    if (orWorse >= LIKELY * seasons) return state;
  }
  return 0;
}
