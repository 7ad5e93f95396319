import { type OnsetDefinition, PLANTING_DEKAD, SEASON_END } from '../reference/onset-definitions.ts';

export interface OnsetFinding {
  /** `unconfirmed`: found, but the days after it that could still spoil it are not all known. */
  readonly status: 'confirmed' | 'unconfirmed' | 'none';
  /** Index into the rain series, by the definition's date convention; NaN where none was found. */
  readonly day: number;
  /** Last day of the window that qualified; NaN where none did. */
  readonly windowEnd: number;
  /** Earlier dates whose every qualifying window ran dry, each once, in order. */
  readonly falseStarts: readonly number[];
}

/**
 * Finds the onset of planting rains in a daily series.
 *
 * A missing day (NaN) is never rain: a window that holds one does not qualify, and it does not break a dry run. The
 * reference code takes a look-ahead cut short as a failure; here it gives `unconfirmed`, unless the days already known
 * hold a whole dry run, which no later rain can mend.
 *
 * @param rain mm per day
 * @param from first day a window may begin on, index into `rain`
 * @param until last day a window may end on
 * @param lastKnown last day observed or forecast
 */
export function detectOnset(
  rain: ArrayLike<number>,
  from: number,
  until: number,
  lastKnown: number,
  definition: OnsetDefinition,
): OnsetFinding {
  const { windowDays, searchDays, dateConvention } = definition;
  const falseStarts: number[] = [];
  for (let end = from + windowDays - 1; end <= until; end++) {
    const firstWet = firstWetDayOfWindow(rain, end, definition);
    if (firstWet < 0) continue;
    const day = dateConvention === 'window-end' ? end : firstWet;
    if (runsDry(rain, end + 1, Math.min(end + searchDays, lastKnown), definition)) {
      if (falseStarts.at(-1) !== day) falseStarts.push(day);
      continue;
    }
    // The same first wet day may fail with one window and hold with the next: then it was no false start.
    if (falseStarts.at(-1) === day) falseStarts.pop();
    return { status: end + searchDays <= lastKnown ? 'confirmed' : 'unconfirmed', day, windowEnd: end, falseStarts };
  }
  return { status: 'none', day: Number.NaN, windowEnd: Number.NaN, falseStarts };
}

/** First wet day of the window that ends on `end`, or its first day where no wet day is asked for; -1: does not qualify. */
function firstWetDayOfWindow(rain: ArrayLike<number>, end: number, definition: OnsetDefinition): number {
  const { windowDays, totalMm, totalRule, wetDayMm, minWetDays } = definition;
  const start = end - windowDays + 1;
  let [total, wetDays, firstWet] = [0, 0, start];
  for (let day = start; day <= end; day++) {
    const mm = rain[day] as number;
    total += mm;
    if (mm > wetDayMm && wetDays++ === 0) firstWet = day;
  }
  // Written so that a total of NaN fails.
  const enough = totalRule === 'at-least' ? total >= totalMm : total > totalMm;
  return enough && wetDays >= minWetDays ? firstWet : -1;
}

function runsDry(rain: ArrayLike<number>, from: number, until: number, definition: OnsetDefinition): boolean {
  if (definition.dryRunDays === 0) return false;
  let run = 0;
  for (let day = from; day <= until; day++) {
    run = (rain[day] as number) > definition.wetDayMm ? 0 : run + 1;
    if (run === definition.dryRunDays) return true;
  }
  return false;
}

/**
 * Index of the first dekad with enough rain in itself and in the next two together; -1 where there is none.
 *
 * @param dekadsMm rain per dekad
 */
export function plantingDekad(dekadsMm: ArrayLike<number>): number {
  for (let dekad = 0; dekad + 2 < dekadsMm.length; dekad++) {
    const following = (dekadsMm[dekad + 1] as number) + (dekadsMm[dekad + 2] as number);
    if ((dekadsMm[dekad] as number) >= PLANTING_DEKAD.dekadMm && following >= PLANTING_DEKAD.followingMm) return dekad;
  }
  return -1;
}

/** Water in the soil store at the end of a day, mm; a missing day brings no rain. */
export function storeAfterDay(
  storeMm: number,
  rainMm: number,
  rule: { readonly capacityMm: number; readonly useMmPerDay: number } = SEASON_END,
): number {
  const filled = storeMm + (Number.isNaN(rainMm) ? 0 : rainMm) - rule.useMmPerDay;
  return Math.max(0, Math.min(rule.capacityMm, filled));
}

/** Rain is told in tenths of a millimetre: what sums of it leave of nothing. */
const ROUNDING_MM = 1e-6;

/**
 * First day from `earliest` to `latest` on which the soil store is empty; NaN where it never is. The store begins empty.
 *
 * @param rain mm per day
 * @param from day the store begins on, index into `rain`
 */
export function detectSeasonEnd(rain: ArrayLike<number>, from: number, earliest: number, latest: number): number {
  let storeMm = 0;
  for (let day = from; day <= latest; day++) {
    storeMm = storeAfterDay(storeMm, rain[day] as number);
    if (day >= earliest && storeMm <= SEASON_END.emptyMm + ROUNDING_MM) return day;
  }
  return Number.NaN;
}
