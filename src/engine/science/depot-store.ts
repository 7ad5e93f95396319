import { exp } from '../numerics/elementary.ts';
import { BOX_LITRES_PER_KG, COOL_STORE_CELSIUS, COOL_STORE_DRIFT_HOURS } from '../reference/boxes.ts';
import type { Depot, Scenario } from '../vocabulary/scenario.ts';
import { storeCelsius } from './survival.ts';

/** How the cool store of a depot is filled when planning begins. */
export interface DepotStock {
  readonly depot: number;
  /** Inoculant that is there, litres. */
  readonly litres: number;
  /** Lots for which the cool store has no room. */
  readonly outside: readonly number[];
}

/**
 * Opening stock of inoculant in each depot that has a cool store, and what does not fit: lots that expire latest stand
 * outside first, since they can bear it longest. A lot counts whole; lots that arrive later are taken to find room.
 */
export function fillCoolStores({ depots, lots, products, planning }: Scenario): DepotStock[] {
  const productOf = new Map(products.map((product) => [product.id, product]));
  return depots.flatMap(({ id, coolStoreLitres }, depot) => {
    if (coolStoreLitres <= 0) return [];
    const present = lots.flatMap((lot, index) => {
      const product = productOf.get(lot.productId);
      const isThere = lot.depotId === id && (lot.availableFrom ?? planning.from) <= planning.from;
      if (!isThere || product?.kind !== 'inoculant') return [];
      const litresPerPack = product.litresPerPack ?? (product.packG / 1000) * BOX_LITRES_PER_KG.value;
      return [{ index, litres: lot.packs * litresPerPack, expires: lot.expires }];
    });
    const litres = present.reduce((sum, lot) => sum + lot.litres, 0);
    const outside: number[] = [];
    let inside = litres;
    for (const lot of present.sort((a, b) => b.expires - a.expires || a.index - b.index)) {
      if (inside <= coolStoreLitres) break;
      inside -= lot.litres;
      outside.push(lot.index);
    }
    return [{ depot, litres, outside }];
  });
}

/** Lots of inoculant that stand outside the cool stores. */
export function lotsOutside(scenario: Scenario): ReadonlySet<number> {
  return new Set(fillCoolStores(scenario).flatMap(({ outside }) => outside));
}

/**
 * Temperature of packs in a depot, °C, by the day's mean air: the cool store's; a store whose temperature is not stated is
 * taken as a refrigerator; without a cool store, shade air; for packs outside a full one, a room's. During the hours without
 * power a cool store counts as warm as it is at their end.
 */
export function depotCelsius(depot: Depot, isOutside: boolean, airMeanC: number): number {
  if (isOutside) return storeCelsius('room', airMeanC);
  const held = depot.coolStoreC ?? (depot.coolStoreLitres > 0 ? COOL_STORE_CELSIUS.value : null);
  if (held === null) return airMeanC;
  const hours = Math.min(24, depot.outageHours);
  const atEnd = airMeanC - (airMeanC - held) * exp(-hours / COOL_STORE_DRIFT_HOURS.value);
  return held + ((Math.max(held, atEnd) - held) * hours) / 24;
}
