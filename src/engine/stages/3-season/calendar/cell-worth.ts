import { HOT_LIMIT_CELSIUS } from '../../../reference/boxes.ts';
import type { SeasonWindow } from '../../../science/value-steps.ts';
import type { SeasonOutlook } from '../../../vocabulary/stage-results/season.ts';
import type { TripDays } from './trip-days.ts';
import type { LandPart } from './zone-land.ts';
import type { ZoneWay, ZoneWays } from './zone-ways.ts';

/** What the calendar and the release rule both ask of a zone on a day. Days are offsets from the first planning day. */
export interface CellWorth {
  way(zone: number, day: number, roadState: number): ZoneWay;
  /** log10 lost on the road by one survival set; Infinity where the hot band reaches 40 °C or there is no way. */
  roadLog10(zone: number, day: number, driveMinutes: number, set: number): number;
  window(part: LandPart, member: number): SeasonWindow;
}

export function prepareCellWorth(season: SeasonOutlook, ways: ZoneWays, trips: TripDays, sets: number): CellWorth {
  const known = new Map<string, Float64Array>();
  return {
    way: (zone, day, roadState) => ways.on(zone, day, roadState),
    roadLog10(zone, day, driveMinutes, set) {
      if (Number.isNaN(driveMinutes)) return Number.POSITIVE_INFINITY;
      const depot = ways.depot[zone] as number;
      const station = season.zoneStation[zone] as number;
      const key = `${depot} ${station} ${day} ${driveMinutes}`;
      const found = known.get(key);
      if (found) return found[set] as number;
      const { hotBandMaxC, log10Loss } = trips.run(depot, station, day, driveMinutes);
      const kept = hotBandMaxC < HOT_LIMIT_CELSIUS.value ? log10Loss.slice() : new Float64Array(sets).fill(Infinity);
      known.set(key, kept);
      return kept[set] as number;
    },
    window: ({ window, delayLossPerDay, delayFreeDays }, member) => ({
      first: (window.firstDay[member] as number) - season.firstDay,
      last: (window.lastDay[member] as number) - season.firstDay,
      delayLossPerDay,
      delayFreeDays,
    }),
  };
}
