import { log10 } from '../../numerics/elementary.ts';
import { CROP_FACTS, cropFact } from '../../reference/crops.ts';
import { INOCULATION_PRACTICE } from '../../reference/inoculation-practice.ts';
import { depotCelsius, lotsOutside } from '../../science/depot-store.ts';
import { reachCurve } from '../../science/reach.ts';
import { cellsPerSeed } from '../../science/seed-rate.ts';
import { storeCelsius, survivalSet } from '../../science/survival.ts';
import type { Depot, Scenario } from '../../vocabulary/scenario.ts';
import type { LotVerdict, ReachCurve } from '../../vocabulary/stage-results/allocation.ts';
import type { Needs } from '../../vocabulary/stage-results/needs.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import type { Lot, Product } from '../../vocabulary/supply.ts';

/** Reach curves of single crops in single zones, each made once however many communities share it. */
export interface ReachCurves {
  /** @param zone -1 outside all zones */
  dry(zone: number, crop: number): ReachCurve;
  inoculant(zone: number, crop: number, lot: number, community: number): ReachCurve;
}

export function prepareReachCurves(
  scenario: Scenario,
  places: Places,
  season: SeasonOutlook,
  needs: Needs,
  products: readonly Product[],
  verdicts: readonly LotVerdict[],
): ReachCurves {
  const made = new Map<string, ReachCurve>();
  const once = (key: string, make: () => ReachCurve): ReachCurve => {
    const curve = made.get(key) ?? make();
    made.set(key, curve);
    return curve;
  };
  const windowOf = (zone: number, crop: number) => {
    const window = (zone < 0 ? scenario.zones.length : zone) * scenario.crops.length + crop;
    const days = season.windows[window];
    if (!days) throw new RangeError(`the season has no sowing window ${window}`);
    return {
      from: scenario.planning.from,
      planningDays: season.planningDays,
      firstDay: days.firstDay,
      lastDay: days.lastDay,
      delayLossPerDay: cropFact(days.crop, 'delayLossPerDay', scenario.assumptions).value,
      delayFreeDays: CROP_FACTS[days.crop].delayFreeDays,
    };
  };
  const meanAir = meanAirByStation(season);
  const airAt = (site: number) => meanAir[season.siteStation[site] ?? 0] ?? new Float64Array(0);
  const outside = lotsOutside(scenario);
  const depotIndex = new Map(scenario.depots.map(({ id }, d) => [id, d]));
  return {
    dry: (zone, crop) => once(`${zone} ${crop}`, () => reachCurve({ ...windowOf(zone, crop), inoculant: null })),
    inoculant(zone, crop, l, community) {
      const store = scenario.communities[community]?.store ?? 'none';
      const site = scenario.depots.length + (places.communityPlace[community] as number);
      return once(`${zone} ${crop} ${l} ${store} ${season.siteStation[site]}`, () => {
        const lot = scenario.lots[l] as Lot;
        const product = products[l] as Product;
        const depot = depotIndex.get(lot.depotId) as number;
        const seedG = 1e6 / (needs.seedsPerKg[crop] as number);
        const perSeed = cellsPerSeed(
          verdicts[l]?.countPerG ?? Number.NaN,
          product.doseGPerKg ?? Number.NaN,
          seedG,
          INOCULATION_PRACTICE.adhesion.value,
        );
        return reachCurve({
          ...windowOf(zone, crop),
          inoculant: {
            log10PerSeed: log10(perSeed),
            survival: survivalSet(product, scenario.crops[crop] ?? 'soybean'),
            depotCelsius: airAt(depot)
              .subarray(0, season.planningDays)
              .map((celsius) => depotCelsius(scenario.depots[depot] as Depot, outside.has(l), celsius)),
            communityCelsius: airAt(site).map((celsius) => storeCelsius(store, celsius)),
            floorCellsPerSeed: scenario.policy.cellsPerSeedFloor,
          },
        });
      });
    },
  };
}

/** Middle of the day's expected extremes at each weather place, °C per outlook day. */
function meanAirByStation({ tminC, tmaxC, outlookDays }: SeasonOutlook): Float64Array[] {
  const middle = tminC.map((low, i) => (low + (tmaxC[i] as number)) / 2);
  return Array.from({ length: middle.length / outlookDays }, (_, station) =>
    middle.subarray(station * outlookDays, (station + 1) * outlookDays),
  );
}
