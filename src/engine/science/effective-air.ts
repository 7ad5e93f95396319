import { AIR_OFFSETS, type Ride } from '../reference/boxes.ts';
import type { Carriage } from '../vocabulary/fleet.ts';
import type { SeasonOutlook } from '../vocabulary/stage-results/season.ts';

/**
 * Air as a box feels it, °C, moving and parked, for every quarter hour: [(weatherPlace * planningDays + day) * 96 + quarter],
 * the mean of the quarter's two ends.
 */
export interface EffectiveAir {
  readonly moving: Float32Array;
  readonly parked: Float32Array;
}

const QUARTERS = 96;

export function tabulateEffectiveAir(season: SeasonOutlook, carriage: Carriage, parksInShade: boolean): EffectiveAir {
  const parked = quarterMeans(season, carriage, parksInShade ? 'shade' : 'parked');
  return { moving: quarterMeans(season, carriage, 'moving'), parked };
}

/** Single precision is a thousandth of what the model errs by, and half the memory. */
function quarterMeans({ airC, sunLoad }: SeasonOutlook, carriage: Carriage, ride: Ride): Float32Array {
  const { fixed, perSun, sky } = AIR_OFFSETS[carriage][ride].value;
  const out = new Float32Array(airC.length);
  for (let day = 0; day < airC.length; day += QUARTERS) {
    const last = day + QUARTERS - 1;
    let from = (airC[day] as number) + fixed + Math.max(0, perSun * (sunLoad[day] as number) - sky);
    for (let i = day; i < last; i++) {
      const to = (airC[i + 1] as number) + fixed + Math.max(0, perSun * (sunLoad[i + 1] as number) - sky);
      out[i] = (from + to) / 2;
      from = to;
    }
    out[last] = from;
  }
  return out;
}
