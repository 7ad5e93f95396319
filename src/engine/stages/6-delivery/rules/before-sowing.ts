import { quantile } from '../../../numerics/quantile.ts';
import type { Allocation, Consignment } from '../../../vocabulary/stage-results/allocation.ts';
import type { Load } from '../../../vocabulary/stage-results/delivery.ts';
import type { Places } from '../../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../../vocabulary/stage-results/season.ts';

/**
 * Fertiliser is put in at sowing: it has to be there before the land is usually sown (the median of the seasons with an onset, in
 * the first zone and crop of the load), or by the day on which growers get what they wait for, whichever is later.
 *
 * @returns per load of fertiliser the last planning day before its land is usually sown; -Infinity for other goods
 */
export function daysBeforeSowing(
  season: SeasonOutlook,
  { shares }: Pick<Places, 'shares'>,
  { consignments, grants }: Allocation,
  loads: readonly Load[],
): Float64Array {
  const { windows, zoneStation, firstDay } = season;
  const zones = zoneStation.length;
  const crops = windows.length / zones;
  const usualOf = windows.map((window) => {
    const known = window.firstDay.filter((day) => !Number.isNaN(day));
    return known.length > 0 ? quantile(known, 0.5) - firstDay : Number.POSITIVE_INFINITY;
  });
  const zonesOf = new Map<number, number[]>();
  shares.community.forEach((community, row) => {
    const zone = shares.zone[row] as number;
    zonesOf.set(community, [...(zonesOf.get(community) ?? []), zone < 0 ? zones - 1 : zone]);
  });
  return Float64Array.from(loads, (load) => {
    const { group, community } = consignments[load.consignment] as Consignment;
    if (group !== 'fertiliser') return Number.NEGATIVE_INFINITY;
    const own = (zonesOf.get(community) ?? []).flatMap((zone) =>
      load.grants.map((grant) => usualOf[zone * crops + (grants.crop[grant] as number)] ?? Number.POSITIVE_INFINITY),
    );
    return Math.ceil(Math.min(...own)) - 1;
  });
}
