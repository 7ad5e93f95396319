import { quantile } from '../../numerics/quantile.ts';
import type { OnsetFinding } from '../../science/onset.ts';
import type { OnsetStatus, SeasonMember, ZoneOnset } from '../../vocabulary/stage-results/season.ts';
import type { PastSeason } from './members.ts';

/**
 * When the rains come at each zone's weather place. The share of false starts counts every past season, whatever the
 * members are: it is a property of the place.
 */
export function zoneOnsets(
  zoneStation: ArrayLike<number>,
  members: readonly SeasonMember[],
  past: readonly PastSeason[],
  thisSeason: readonly OnsetFinding[],
): ZoneOnset[] {
  return Array.from(zoneStation, (place) => {
    const days = members.map(({ onset }) => onset[place] as number);
    const falseStarts = past.filter(({ falseStart }) => falseStart[place] === 1).length;
    return {
      status: onsetStatus(thisSeason[place]?.status ?? 'none', past.length),
      p20: quantile(days, 0.2),
      p50: quantile(days, 0.5),
      p80: quantile(days, 0.8),
      falseStartShare: past.length === 0 ? Number.NaN : falseStarts / past.length,
      pastSeasons: past.length,
    };
  });
}

function onsetStatus(found: OnsetFinding['status'], pastSeasonCount: number): OnsetStatus {
  if (found !== 'none') return found;
  return pastSeasonCount === 0 ? 'no data' : 'expected';
}
