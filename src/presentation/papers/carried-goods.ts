import { type Crop, isoDate, type Lot, type Product } from '../../engine/index.ts';
import type { PaperCase } from './paper-case.ts';

/** Why packs that a plan names may not be handed over. */
export type Withheld = 'expired' | 'on-hold' | 'heated';

/** Packs or bags of one lot, for one crop of one community, on one vehicle. */
export interface CarriedGoods {
  readonly lot: Lot;
  readonly product: Product;
  readonly crop: Crop;
  readonly communityId: string;
  readonly packs: number;
  readonly kg: number;
  /** ISO date of the last day. */
  readonly expires: string;
  readonly withheld: Withheld | null;
}

/** What is handed over at a stop, seed first, in the order of communities and lots. */
export function goodsOfStop(c: PaperCase, stop: number): CarriedGoods[] {
  const { delivery, allocation, ids } = c.plan;
  const goods = (delivery.stops.loads[stop] ?? []).flatMap((load) => {
    const community = allocation.consignments.community[delivery.loads.consignment[load] ?? -1] ?? -1;
    return (delivery.loads.grants[load] ?? []).flatMap((grant, i): CarriedGoods[] => {
      const packs = delivery.loads.packs[load]?.[i] ?? 0;
      const lot = c.scenario.lots.find(({ id }) => id === ids.lots[allocation.grants.lot[grant] ?? -1]);
      const product = lot && c.scenario.products.find(({ id }) => id === lot.productId);
      const crop = ids.crops[allocation.grants.crop[grant] ?? -1];
      if (lot === undefined || product === undefined || crop === undefined || packs === 0) return [];
      return [
        {
          lot,
          product,
          crop,
          communityId: ids.communities[community] ?? '',
          packs,
          kg: (packs * product.packG) / 1000,
          expires: isoDate(lot.expires),
          withheld: whyWithheld(c, lot, product, stop),
        },
      ];
    });
  });
  return goods.sort((a, b) => kindRank(a) - kindRank(b));
}

const orderOf = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const kindRank = ({ product }: CarriedGoods): number =>
  product.kind === 'inoculant' ? 2 : product.kind === 'fertiliser' ? 1 : 0;

/** °C at which packs go on hold, whatever the plan reckoned of them. */
const BREACH_CELSIUS = 40;

/** A sheet asks again what the plan has asked: a lot may have been put on hold, or a plan may be an old one. */
function whyWithheld(c: PaperCase, lot: Lot, product: Product, stop: number): Withheld | null {
  const { stops, trips } = c.plan.delivery;
  const date = trips.date[stops.trip[stop] ?? -1] ?? '';
  const cleared = c.decisions.some((one) => one.kind === 'flag-cleared' && one.lotId === lot.id);
  if (isoDate(lot.expires) < date) return 'expired';
  if (lot.status !== 'cleared' && !cleared) return 'on-hold';
  const hottest = product.kind === 'inoculant' ? (stops.packMaxC[stop] ?? 0) : 0;
  return hottest >= BREACH_CELSIUS ? 'heated' : null;
}

/** Goods of one lot together: seed first, then by product and lot. */
export const byLot = (goods: readonly CarriedGoods[]): CarriedGoods[] =>
  together(goods, ({ lot }) => lot.id).sort(
    (a, b) => kindRank(a) - kindRank(b) || orderOf(a.product.id, b.product.id) || orderOf(a.lot.id, b.lot.id),
  );

/** Goods of one lot for one crop counted together, however many loads they came in. */
export const byLotAndCrop = (goods: readonly CarriedGoods[]): CarriedGoods[] =>
  together(goods, ({ lot, crop }) => `${lot.id} ${crop}`);

function together(goods: readonly CarriedGoods[], keyOf: (one: CarriedGoods) => string): CarriedGoods[] {
  const sums = new Map<string, CarriedGoods>();
  for (const one of goods) {
    const known = sums.get(keyOf(one));
    sums.set(keyOf(one), known ? { ...known, packs: known.packs + one.packs, kg: known.kg + one.kg } : one);
  }
  return [...sums.values()];
}

export const isTreated = ({ product }: { readonly product: Product }): boolean =>
  product.kind === 'seed' && product.treatedSeed;

/** Seed that may be coated: not treated, or its label allows inoculant on the dressing. */
export const mayBeCoated = ({ product }: { readonly product: Product }): boolean =>
  product.kind === 'seed' && (!product.treatedSeed || product.inoculantAllowed === true);

/** Whether packs of inoculant are among the goods: then there is a box to keep cool. */
export const hasInoculant = (goods: readonly CarriedGoods[]): boolean =>
  goods.some(({ product }) => product.kind === 'inoculant');

export const countPacks = (goods: readonly CarriedGoods[], kind: Product['kind']): number =>
  goods.reduce((sum, one) => sum + (one.product.kind === kind ? one.packs : 0), 0);
