import type { SurvivalSet } from '../../reference/survival-sets.ts';
import { packLog10PerDay } from '../../science/survival.ts';
import type { SeasonOutlook } from '../../vocabulary/index.ts';

/**
 * log10 of the cells lost in stores, as running totals over the outlook's days so that any wait is two look-ups. One row
 * for each store at each weather place and each survival set that occurs.
 */
export class StoreLosses {
  private readonly season: SeasonOutlook;
  private readonly rows = new Map<string, number>();
  private readonly totals: Float64Array[] = [];

  constructor(season: SeasonOutlook) {
    this.season = season;
  }

  /** Row of a store whose temperature follows from the day's mean air at a weather place. */
  row(station: number, store: string, set: SurvivalSet, celsiusOf: (airMeanC: number) => number): number {
    const key = `${station} ${store} ${set.name} ${set.rateFactor}`;
    const known = this.rows.get(key);
    if (known !== undefined) return known;
    const { outlookDays, tminC, tmaxC } = this.season;
    const total = new Float64Array(outlookDays + 1);
    for (let day = 0; day < outlookDays; day++) {
      const at = station * outlookDays + day;
      const airMeanC = ((tminC[at] as number) + (tmaxC[at] as number)) / 2;
      total[day + 1] = (total[day] as number) + packLog10PerDay(celsiusOf(airMeanC), set);
    }
    this.rows.set(key, this.totals.length);
    return this.totals.push(total) - 1;
  }

  /** log10 lost before a day, offset from the outlook's first; beyond the outlook each day loses as its last one. */
  before(row: number, day: number): number {
    const total = this.totals[row] as Float64Array;
    const end = total.length - 1;
    if (day <= end) return total[day] as number;
    const last = total[end] as number;
    return last + (day - end) * (last - (total[end - 1] as number));
  }
}
