import type { FigureProvenance } from '../../vocabulary/index.ts';
import { figure, given } from './figure-entries.ts';

/** Sums of what stands elsewhere in the plan, by zone and in all. */
export function describeSums(): FigureProvenance[] {
  const planned = given('planned hectares', 'figure:needs.plannedHa', 'ha', 'given');
  const seedHa = given('hectares with seed', 'figure:outcomes.crops.seedHa', 'ha', 'derived');
  const inoculatedHa = given('hectares inoculated', 'figure:outcomes.crops.inoculatedHa', 'ha', 'derived');
  const reachedHa = given('hectares reached', 'figure:outcomes.crops.reachedHa', 'ha', 'assumed');
  const nitrogenKg = given('nitrogen fixed', 'figure:outcomes.crops.nitrogenKg', 'kg', 'assumed');
  const handed = given('packs handed over', 'figure:delivery.stops', 'packs', 'derived');
  const shares = given('shares of communities in zones', 'figure:places.shares.share', '1', 'derived');
  const farmers = given('farmers, where counted', 'file:communities.geojson:farmers', 'people', 'given');
  const zones = (name: string, unit: string, formula: string, inputs: Parameters<typeof figure>[3]) =>
    figure(`outcomes.zones.${name}`, unit, formula, [...inputs, shares]);
  return [
    zones('communities', '1', 'communities that have most of their land in the zone', []),
    zones('farmers', 'people', 'sum of farmers * share of the community in the zone', [farmers]),
    zones('plannedHa', 'ha', 'sum over the zone', [planned]),
    zones('seedKg', 'kg', 'seed handed over, divided as the land is', [handed]),
    zones('inoculantPacks', 'packs', 'packs of inoculant handed over, divided as the land is', [handed]),
    zones('shareMet', '1', 'hectares inoculated / hectares planned', [inoculatedHa, planned]),
    zones('reachedHa', 'ha', 'sum over the zone, mean over seasons', [reachedHa]),
    zones('nitrogenKg', 'kg', 'p10, p50, p90 over seasons and draws of the sum over the zone', [nitrogenKg]),
    figure('outcomes.headline.plannedHa', 'ha', 'sum over communities and crops', [planned]),
    figure('outcomes.headline.seedHa', 'ha', 'sum over communities and crops', [seedHa]),
    figure('outcomes.headline.inoculatedHa', 'ha', 'sum over communities and crops', [inoculatedHa]),
    figure('outcomes.headline.farmers', 'people', 'sum over communities that plan land', [farmers, planned]),
    figure('outcomes.headline.communitiesReached', '1', 'communities that are handed any goods', [handed]),
  ];
}
