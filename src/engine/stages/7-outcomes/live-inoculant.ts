import { log10 } from '../../numerics/elementary.ts';
import { INOCULATION_PRACTICE } from '../../reference/inoculation-practice.ts';
import { COATED_SEED_WAIT } from '../../reference/survival-sets.ts';
import { depotCelsius } from '../../science/depot-store.ts';
import { cellsPerSeed } from '../../science/seed-rate.ts';
import { onSeedLog10Loss, storeCelsius, survivalSet } from '../../science/survival.ts';
import type { Crop, Places, Scenario, SeasonOutlook } from '../../vocabulary/index.ts';
import type { HandedGoods } from './handed-goods.ts';
import type { PlayParts } from './prepare-play.ts';
import type { StoreLosses } from './store-losses.ts';

/** log10 lost between coating and sowing in the morning's batch, the same for all. */
export const ON_SEED_LOG10 = onSeedLog10Loss(COATED_SEED_WAIT.value.hours, COATED_SEED_WAIT.value.celsius);

/** What an inoculant lot brings to a community's seed, before it is known when that is sown. */
export interface LiveInoculant {
  /** log10 rhizobia each seed would carry if coated on the first planning day; NaN where nobody states a count or dose. */
  readonly log10PerSeed: number;
  readonly roadLog10: number;
  /** The stores of the depot and of the community, rows of the losses. */
  readonly depotRow: number;
  readonly communityRow: number;
}

export interface InoculantWay {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly season: SeasonOutlook;
  /** Verdict of each lot of the scenario. */
  readonly verdicts: PlayParts['allocation']['lots'];
  readonly losses: StoreLosses;
  /** Lots for which the depots' cool stores have no room. */
  readonly outside: ReadonlySet<number>;
}

/**
 * Follows the packs of one hand-over: count at planning.from (tested and brought forward, else the label's) times dose over seeds per kg, the
 * depot's store, the road, and the store in which the community keeps them until it sows.
 */
export function followInoculant(
  { scenario, places, season, verdicts, losses, outside }: InoculantWay,
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
  const countPerG = verdicts[goods.lot]?.countPerG ?? Number.NaN;
  const doseGPerKg = product.doseGPerKg ?? Number.NaN;
  const perSeed = cellsPerSeed(countPerG, doseGPerKg, 1e6 / seedsPerKg, INOCULATION_PRACTICE.adhesion.value);
  const isOutside = outside.has(goods.lot);
  const depotRow = losses.row(season.siteStation[depotSite] ?? 0, `depot ${depotSite} ${isOutside}`, set, (airMeanC) =>
    depotCelsius(depot, isOutside, airMeanC),
  );
  const store = scenario.communities[community]?.store ?? 'none';
  const site = scenario.depots.length + (places.communityPlace[community] ?? 0);
  return {
    log10PerSeed: log10(perSeed),
    roadLog10: goods.roadLog10,
    depotRow,
    communityRow: losses.row(season.siteStation[site] ?? 0, `store ${store}`, set, (airMeanC) =>
      storeCelsius(store, airMeanC),
    ),
  };
}
