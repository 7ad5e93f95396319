import type { Product } from '../vocabulary/supply.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';

/** Hectares that a bag of fertiliser serves at its rate; 0 for other goods, and where no rate is stated. */
export function haOfBag({ kind, packG, rateKgPerHa }: Product): number {
  return kind === 'fertiliser' && rateKgPerHa ? packG / (1000 * rateKgPerHa) : 0;
}

/** The same for a lot. */
export function haOfLot(c: CheckedCase, lot: number): number {
  const product = lotAndProduct(c, lot)?.product;
  return product ? haOfBag(product) : 0;
}

/** Kilograms of seed sown on a hectare of a row of the shares. */
export function seedPerHa(c: CheckedCase, shareRow: number): number {
  const { seedNeedKg, plannedHa } = c.plan.allocation.shares;
  return at(seedNeedKg, shareRow) / at(plannedHa, shareRow);
}

/** Land of a row that has seed, ha: what fertiliser is asked for. */
export function sownHa(c: CheckedCase, shareRow: number): number {
  return at(c.plan.allocation.shares.inoculantNeedSeedKg, shareRow) / seedPerHa(c, shareRow);
}

/** Land that the bags given to a row serve, ha, whole bags counted in full. */
export function bagsGivenHa(c: CheckedCase, shareRow: number): number {
  const { shares, grants } = c.plan.allocation;
  const key = at(shares.community, shareRow) * c.scenario.crops.length + at(shares.crop, shareRow);
  return (c.grantsOf.get(key) ?? []).reduce(
    (sum, grant) => sum + at(grants.packs, grant) * haOfLot(c, at(grants.lot, grant)),
    0,
  );
}

/**
 * Land of a row for which fertiliser was handed over before, ha, as far as that is certain: bags that suit several of the community's
 * crops may stand in any of them and count for none, in `least`, and for each, in `most`.
 */
export function bagsHandedHa(c: CheckedCase, shareRow: number): { readonly least: number; readonly most: number } {
  const { shares } = c.plan.allocation;
  const { id, crops } = at(c.scenario.communities, at(shares.community, shareRow));
  const crop = at(c.scenario.crops, at(shares.crop, shareRow));
  const planned = at(shares.plannedHa, shareRow);
  let [least, most] = [0, 0];
  for (const { communityId, lotId, packs, returnedPacks } of c.scenario.handovers) {
    const lot = communityId === id ? c.scenario.lots.findIndex((one) => one.id === lotId) : -1;
    const product = lot < 0 ? undefined : lotAndProduct(c, lot)?.product;
    if (!product?.crops.includes(crop)) continue;
    const hectares = Math.max(0, packs - returnedPacks) * haOfBag(product);
    most += hectares;
    if (crops.filter((plan) => plan.plannedHa > 0 && product.crops.includes(plan.crop)).length === 1) least += hectares;
  }
  return { least: Math.min(least, planned), most: Math.min(most, planned) };
}
