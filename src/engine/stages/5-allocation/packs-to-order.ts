/** A product that could be bought, with what one pack is or coats in kg of seed. */
export interface PackOffer {
  readonly product: number;
  readonly kg: number;
  /** Null where no price is known. */
  readonly price: number | null;
  /** Day it would be there if ordered today. */
  readonly arrives: number;
}

interface PackCount {
  readonly product: number;
  readonly packs: number;
  readonly kg: number;
}

/**
 * Whole packs that cover a need as sharing out will hand them on: as many of the largest as fit, and so down; the rest in the
 * smallest. A larger pack that costs more for a kilogram than the smallest is left out.
 *
 * @param offers largest first; of one size the first counts
 */
export function wholePacksFor(needKg: number, offers: readonly PackOffer[]): PackCount[] {
  const sizes = offers.filter(({ kg }, i) => offers.findIndex((other) => other.kg === kg) === i);
  const smallest = sizes.at(-1);
  if (smallest === undefined) return [];
  const isDear = ({ kg, price }: PackOffer) =>
    price !== null && smallest.price !== null && price / kg > smallest.price / smallest.kg;
  let rest = needKg;
  return sizes.flatMap((size) => {
    if (size !== smallest && isDear(size)) return [];
    const packs = size === smallest ? Math.ceil(rest / size.kg - 1e-9) : Math.floor(rest / size.kg + 1e-9);
    rest -= packs * size.kg;
    return packs > 0 ? [{ product: size.product, packs, kg: size.kg }] : [];
  });
}
