import { log10 } from '../../numerics/elementary.ts';
import { COOL_STORE_CELSIUS } from '../../reference/boxes.ts';
import { INOCULATION_PRACTICE } from '../../reference/inoculation-practice.ts';
import { COATED_SEED_WAIT } from '../../reference/survival-sets.ts';
import { cellsPerSeed } from '../../science/seed-rate.ts';
import { onSeedLog10Loss, storeCelsius, survivalSet } from '../../science/survival.ts';
import type { Crop, Depot, Places, Scenario, SeasonOutlook } from '../../vocabulary/index.ts';
import type { HandedGoods } from './handed-goods.ts';
import type { StoreLosses } from './store-losses.ts';

/** log10 lost between coating and sowing in the morning's batch, the same for all. */
export const ON_SEED_LOG10 = onSeedLog10Loss(COATED_SEED_WAIT.value.hours, COATED_SEED_WAIT.value.celsius);

/** What an inoculant lot brings to a community's seed, before it is known when that is sown. */
export interface LiveInoculant {
  /** log10 rhizobia each seed would carry if coated on the first planning day; NaN where nobody states a count or dose. */
  readonly log10PerSeed: number;
  /** log10 lost in the depot's store from the first planning day to the day of delivery. */
  readonly storeLog10: number;
  readonly roadLog10: number;
  /** The community's store, a row of the losses. */
  readonly communityRow: number;
}

export interface InoculantWay {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly season: SeasonOutlook;
  readonly losses: StoreLosses;
}

/**
 * Follows the packs of one hand-over: count at planning.from (tested, else the label's) times dose over seeds per kg, the
 * depot's store, the road, and the store in which the community keeps them until it sows.
 */
export function followInoculant(
  { scenario, places, season, losses }: InoculantWay,
  goods: HandedGoods,
  community: number,
  crop: Crop,
  seedsPerKg: number,
): LiveInoculant {
  const lot = scenario.lots[goods.lot];
  const product = scenario.products.find(({ id }) => id === lot?.productId);
  const depotSite = scenario.depots.findIndex(({ id }) => id === lot?.depotId);
  const depot = scenario.depots[depotSite];
  if (!lot || !product || !depot) throw new RangeError(`lot ${goods.lot} was handed over without a product or a depot`);

  const set = survivalSet(product, crop);
  const countPerG = lot.testedCountPerG ?? product.countPerG ?? Number.NaN;
  const doseGPerKg = product.doseGPerKg ?? Number.NaN;
  const perSeed = cellsPerSeed(countPerG, doseGPerKg, 1e6 / seedsPerKg, INOCULATION_PRACTICE.adhesion.value);
  const inDepot = losses.row(season.siteStation[depotSite] ?? 0, `depot ${depotSite}`, set, (airMeanC) =>
    depotCelsius(depot, airMeanC),
  );
  const store = scenario.communities[community]?.store ?? 'none';
  const site = scenario.depots.length + (places.communityPlace[community] ?? 0);
  return {
    log10PerSeed: log10(perSeed),
    storeLog10: losses.before(inDepot, goods.day),
    roadLog10: goods.roadLog10,
    communityRow: losses.row(season.siteStation[site] ?? 0, `store ${store}`, set, (airMeanC) =>
      storeCelsius(store, airMeanC),
    ),
  };
}

/** The cool store's temperature; a store without one named is a refrigerator; without a cool store, shade air. */
function depotCelsius(depot: Depot, airMeanC: number): number {
  return depot.coolStoreC ?? (depot.coolStoreLitres > 0 ? COOL_STORE_CELSIUS.value : airMeanC);
}
