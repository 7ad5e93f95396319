import { byLotAndCrop, type CarriedGoods, goodsOfStop, mayBeCoated } from './carried-goods.ts';
import { type CoatingRates, coatingRates } from './coating-amounts.ts';
import { type CropHandover, type HandoverGoods, handoverGoods } from './handover-goods.ts';
import type { PaperCase } from './paper-case.ts';

/** One vehicle that comes, and what it brings to the community. */
export interface Arrival {
  readonly date: string;
  readonly minute: number;
  readonly vehicleId: string;
  readonly goods: readonly CarriedGoods[];
}

/** One product that coats one crop here. */
export interface CropCoating {
  readonly crop: CropHandover['crop'];
  readonly product: CarriedGoods['product'];
  /** Null where the label states no dose. */
  readonly rates: CoatingRates | null;
}

/** A community's handovers as papers tell them: what really comes and may be used, and what of the seed may be coated. */
export interface CommunityTask {
  readonly about: HandoverGoods;
  readonly arrivals: readonly Arrival[];
  /** Coated amounts and shares are of usable packs and of seed that may be coated alone. */
  readonly crops: readonly CropHandover[];
  readonly coatings: readonly CropCoating[];
}

/** Null where the scenario does not know the community. */
export function communityTask(c: PaperCase, communityId: string | null): CommunityTask | null {
  const about = handoverGoods(c.plan, c.scenario, communityId);
  if (about === null) return null;
  const arrivals = arrivalsAt(c, about.community.id);
  const usable = arrivals.flatMap(({ goods }) => goods).filter(({ withheld }) => withheld === null);
  const crops = about.crops.map((crop) => asItComes(crop, usable));
  return { about, arrivals, crops, coatings: crops.flatMap((crop) => coatingsOf(crop, usable)) };
}

function arrivalsAt(c: PaperCase, communityId: string): Arrival[] {
  const { stops, trips } = c.plan.delivery;
  const arrivals = stops.trip.flatMap((trip, stop): Arrival[] => {
    const goods = byLotAndCrop(goodsOfStop(c, stop).filter((one) => one.communityId === communityId));
    if (goods.length === 0) return [];
    return [
      {
        date: trips.date[trip] ?? '',
        minute: stops.startMinute[stop] ?? 0,
        vehicleId: c.plan.ids.vehicles[trips.vehicle[trip] ?? -1] ?? '',
        goods,
      },
    ];
  });
  return arrivals.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.minute - b.minute));
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function asItComes(crop: CropHandover, usable: readonly CarriedGoods[]): CropHandover {
  const own = usable.filter((one) => one.crop === crop.crop);
  const packs = own.filter(({ product }) => product.kind === 'inoculant');
  const coatsKg = sum(packs.map(({ kg, product }) => (product.doseGPerKg ? (kg * 1000) / product.doseGPerKg : 0)));
  const coatableKg = crop.ownSeedKg + sum(own.filter(mayBeCoated).map(({ kg }) => kg));
  const unstated = packs.some(({ product }) => product.doseGPerKg === null);
  const coatedKg = Math.min(crop.coatedKg, unstated ? crop.coatedKg : coatsKg, coatableKg);
  const packsOf = (lotId: string) => sum(packs.filter(({ lot }) => lot.id === lotId).map((one) => one.packs));
  return {
    ...crop,
    coatedKg,
    uncoatedKg: crop.coatedKg + crop.uncoatedKg - coatedKg,
    sharing: crop.sharing.flatMap((share) => {
      const count = packsOf(share.lotId);
      return count > 0 && coatedKg > 0 ? [{ ...share, packs: count }] : [];
    }),
  };
}

function coatingsOf(crop: CropHandover, usable: readonly CarriedGoods[]): CropCoating[] {
  if (crop.coatedKg <= 0) return [];
  const own = usable.filter((one) => one.crop === crop.crop);
  const hasSticker = own.some(({ product }) => product.kind === 'sticker');
  const products = new Map(
    own.flatMap(({ product }) => (product.kind === 'inoculant' ? [[product.id, product] as const] : [])),
  );
  return [...products.values()].map((product) => {
    const sticker = hasSticker ? (crop.rates?.stickerPacksPerKg ?? 0) : 0;
    // Without a sticker in hand, plain water moistens the seed, whatever the plan reckoned with.
    const waterMlPerKg = sticker > 0 ? (crop.rates?.waterMlPerKg ?? product.waterMlPerKg) : product.waterMlPerKg;
    const rates = coatingRates(product, { seedKg: 1, waterL: waterMlPerKg / 1000, stickerPacks: sticker });
    return { crop: crop.crop, product, rates };
  });
}
