import type { SurvivalSet } from '../../reference/survival-sets.ts';
import { packLog10PerDay } from '../../science/survival.ts';
import type { SeasonOutlook } from '../../vocabulary/index.ts';
import type { SeasonWeather } from './season-weather.ts';

/** log10 of the cells lost in stores by row, each a running total over the outlook's days, [member * (days + 1) + day]. */
export interface StoreTotals {
  readonly days: number;
  readonly rows: readonly Float64Array[];
}

/**
 * Gathers the losses of stores, so that any wait is two look-ups. One row for each store at each weather place and each
 * survival set that occurs.
 */
export class StoreLosses {
  private readonly members: number;
  private readonly days: number;
  private readonly places: number;
  private readonly meanC: Float64Array;
  private readonly rows = new Map<string, number>();
  private readonly totals: Float64Array[] = [];

  constructor({ members, outlookDays, stations }: SeasonOutlook, { meanC }: SeasonWeather) {
    this.members = members.length;
    this.days = outlookDays;
    this.places = stations.length;
    this.meanC = meanC;
  }

  /** Row of a store whose temperature follows from the day's mean air at a weather place. */
  row(place: number, store: string, set: SurvivalSet, celsiusOf: (airMeanC: number) => number): number {
    const key = `${place} ${store} ${set.name} ${set.rateFactor}`;
    const known = this.rows.get(key);
    if (known !== undefined) return known;
    const total = new Float64Array(this.members * (this.days + 1));
    for (let member = 0; member < this.members; member++)
      for (let day = 0; day < this.days; day++) {
        const airMeanC = this.meanC[(member * this.places + place) * this.days + day] as number;
        const at = member * (this.days + 1) + day;
        total[at + 1] = (total[at] as number) + packLog10PerDay(celsiusOf(airMeanC), set);
      }
    this.rows.set(key, this.totals.length);
    return this.totals.push(total) - 1;
  }

  totalsByRow(): StoreTotals {
    return { days: this.days, rows: this.totals };
  }
}

/** log10 lost before a day of a member, offset from the outlook's first; beyond the outlook each day loses as its last one. */
export function lostBefore({ days, rows }: StoreTotals, row: number, member: number, day: number): number {
  const total = rows[row] as Float64Array;
  const start = member * (days + 1);
  if (day <= days) return total[start + Math.max(0, day)] as number;
  const last = total[start + days] as number;
  return last + (day - days) * (last - (total[start + days - 1] as number));
}
