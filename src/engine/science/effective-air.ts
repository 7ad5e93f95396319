import type { Carriage } from '../vocabulary/fleet.ts';
import type { SeasonOutlook } from '../vocabulary/stage-results/season.ts';
import { effectiveAirC } from './box.ts';

/**
 * Air as a box feels it, °C, moving and parked, for every quarter hour: [(weatherPlace * planningDays + day) * 96 + quarter],
 * the mean of the quarter's two ends.
 */
export interface EffectiveAir {
  readonly moving: Float64Array;
  readonly parked: Float64Array;
}

const QUARTERS = 96;

export function tabulateEffectiveAir(season: SeasonOutlook, carriage: Carriage): EffectiveAir {
  return { moving: quarterMeans(season, carriage, true), parked: quarterMeans(season, carriage, false) };
}

function quarterMeans(season: SeasonOutlook, carriage: Carriage, moving: boolean): Float64Array {
  const { airC, sunLoad } = season;
  const out = new Float64Array(airC.length);
  for (let i = 0; i < airC.length; i++) {
    const end = i % QUARTERS === QUARTERS - 1 ? i : i + 1;
    const from = effectiveAirC(airC[i] as number, sunLoad[i] as number, carriage, moving);
    const to = effectiveAirC(airC[end] as number, sunLoad[end] as number, carriage, moving);
    out[i] = (from + to) / 2;
  }
  return out;
}
